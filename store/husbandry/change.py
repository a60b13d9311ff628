"""A change of what is fed, from now to new in steps: how far one step may go, how many there are, what each gives.

Several feeds go together, in equal parts of each of their ways: so a meal whose cap holds at both ends never breaks it
between them, and forage comes down no faster than what takes its place goes up. [kg a head and meal]
"""

from collections.abc import Callable, Sequence
from itertools import pairwise
from math import ceil, floor

from msgspec import Struct

from store.husbandry.bounds import at_least_zero
from store.husbandry.measures import QUARTERS
from store.husbandry.why import Source, Sure, equation, example

STEP_PERCENT = 25.0
"""The most of one step until the farm sets its own: a change in four steps. [%] Common practice."""
STEP_DAYS = 1
"""From one step to the next, until the farm sets its own. [d] Common practice."""
NEW_DAYS = 10
"""On this day, or later, a feed that is new to them is given in full first: for a new forage or by-product 7 to 14 days
are usual, from memory. [d]"""
WEIGHED_LEAST_KG = 0.1
"""Less at one step is not weighed out in a feed room. [kg] Common practice."""
ROUNDING_KG = 1e-9
"""Parts of a way are not exact."""
TRIES = 2
"""How many times more steps than needed are tried before whole quarters are given up."""

RISE = Source(
    "University of Minnesota, Feeding the Dairy Herd, read in a copy: about 1 lb of grain more a day after calving"
)
COW_RISE_KG_DAY = 0.45
YOUNG_RISE_KG_DAY = 0.25
"""For calves and heifers 0.1 to 0.25, from memory. [kg a day, of all that is no forage]"""
YOUNG_RISE = Source("0.1 to 0.25 kg of grain more a day for calves and heifers", Sure.MEMORY)
EVEN = Source("equal parts of the way; plain arithmetic", Sure.PRACTICE)
SHARED = Source("each meal as its own rise is of all that rise; plain arithmetic", Sure.PRACTICE)
WHEAT_PART = Source(
    "Russo et al., wheat adaptation (findanexpert.unimelb.edu.au/scholarlywork/1339954): from none to 40 % of the "
    "dry matter in six increments of 6.7 % over 6 or 11 days, or in three of 13.3 %"
)
WHEAT_KG = Source(
    "Ellinbank, 8 kg wheat in increments of 2.7 or 1.3 kg did no harm on lucerne cubes (sgst.com.au/2015/11/"
    "dairy-cow-diets): that forage buffers; no reason for larger steps"
)


@equation(
    "the most of one step", "percent of what is given now; where nothing is, of what it comes to", "kg",
    Source("a quarter of the meal at one step", Sure.PRACTICE), percent=(1.0, 100.0),
)  # fmt: skip
def step_of_percent_kg(now_kg: float, wanted_kg: float, percent: float) -> float:
    """How far one step of a meal may go, up or down. [kg] 100 %: a feed may be taken away at once.

    Raises ValueError below zero, or for no percent at all.
    """
    at_least_zero(now_kg=now_kg, wanted_kg=wanted_kg, percent=percent)
    if percent == 0:
        raise ValueError("percent is 0; a step goes somewhere")
    return (now_kg or wanted_kg) * percent / 100


@equation("a meal's part of the rise", "the most more a day x its own rise / what rises of all", "kg", SHARED)
def share_of_rise_kg(most_kg: float, own_kg: float, all_kg: float) -> float:
    """How far one step of a meal may go where all that rise share the most of a day. [kg]

    Raises ValueError below zero, or where a part is more than all.
    """
    at_least_zero(most_kg=most_kg, own_kg=own_kg)
    if not 0 < own_kg <= all_kg + ROUNDING_KG:
        raise ValueError(f"own_kg is {own_kg}; it must be above 0 and at most all_kg, {all_kg}")
    return most_kg * own_kg / all_kg


@equation(
    "steps needed", "the whole way / the most of one step, rounded up", "steps", EVEN,
    example(6.0, 0.0, WHEAT_PART, now_kg=0.0, wanted_kg=40.0, step_kg=6.7),
    example(3.0, 0.0, WHEAT_KG, now_kg=0.0, wanted_kg=8.0, step_kg=2.7),
)  # fmt: skip
def steps_needed(now_kg: float, wanted_kg: float, step_kg: float) -> float:
    """The least number of steps. Raises ValueError below zero, or for a step that goes nowhere."""
    at_least_zero(now_kg=now_kg, wanted_kg=wanted_kg)
    if not step_kg > 0:
        raise ValueError(f"step_kg is {step_kg}; it must be above 0")
    return float(ceil(abs(wanted_kg - now_kg) / step_kg - ROUNDING_KG))


@equation(
    "given at a step", "now + (new - now) x step / steps", "kg", EVEN,
    example(6.7, 0.05, WHEAT_PART, now_kg=0.0, wanted_kg=40.0, step=1.0, steps=6.0),
    example(13.3, 0.05, WHEAT_PART, now_kg=0.0, wanted_kg=40.0, step=1.0, steps=3.0),
    example(2.7, 0.05, WHEAT_KG, now_kg=0.0, wanted_kg=8.0, step=1.0, steps=3.0),
    example(1.3, 0.05, WHEAT_KG, now_kg=0.0, wanted_kg=8.0, step=1.0, steps=6.0),
)  # fmt: skip
def given_at_kg(now_kg: float, wanted_kg: float, step: float, steps: float) -> float:
    """What is given from a step on, before it is told in measures. [kg] Raises ValueError for a step that is none."""
    at_least_zero(now_kg=now_kg, wanted_kg=wanted_kg)
    if not 0 <= step <= steps or steps == 0:
        raise ValueError(f"step is {step}; it must be 0 to {steps}, and steps above 0")
    return wanted_kg if step == steps else now_kg + (wanted_kg - now_kg) * step / steps


@equation(
    "the day of the last step", "(steps - 1) x days from one to the next + 1", "d", EVEN,
    example(6.0, 0.0, WHEAT_PART, steps=6.0, step_days=1.0),
    example(11.0, 0.0, WHEAT_PART, steps=6.0, step_days=2.0),
)  # fmt: skip
def last_day(steps: float, step_days: float) -> float:
    """On which day, from 1, the new amount is given first. Raises ValueError for less than one step or day."""
    if steps < 1 or step_days < 1:
        raise ValueError(f"steps is {steps}, step_days is {step_days}; both must be 1 or more")
    return (steps - 1) * step_days + 1


@equation("days for a rise", "the most more at one step / the most more a day, rounded up", "d", EVEN)
def days_for_rise(rise_kg: float, most_kg: float) -> float:
    """From one step to the next, so that no more comes in a day. [d] Raises ValueError below zero or for no rise."""
    return steps_needed(0.0, rise_kg, most_kg)


def days_for_new(steps: int) -> int:
    """From one step to the next, so that the last is on the tenth day or later. [d] Raises ValueError for no step."""
    if steps < 1:
        raise ValueError(f"steps is {steps}; it must be 1 or more")
    return ceil((NEW_DAYS - 1) / (steps - 1)) if steps > 1 else STEP_DAYS


class Way(Struct, frozen=True):
    """One feed of one meal, from now to new. [kg a head]

    step_kg: the most of one step. quarter_kg: a quarter of its measure; None: it is told by weight.
    """

    now_kg: float
    wanted_kg: float
    step_kg: float
    quarter_kg: float | None = None

    @property
    def in_quarters(self) -> bool:
        """Whether its steps are told in whole quarters: where a step may be as large as one."""
        return self.quarter_kg is not None and self.quarter_kg <= self.step_kg + ROUNDING_KG


def least_step_kg(holds_kg: float | None) -> float:
    """The smallest step that the bench can tell: a quarter of the measure; by weight 0.1 kg. [kg] Common practice."""
    return holds_kg / QUARTERS if holds_kg else WEIGHED_LEAST_KG


Steps = tuple[tuple[float, ...], ...]
"""By step: what is given of each way. [kg]"""


def no_cap(_found: Steps) -> bool:
    """All steps are allowed."""
    return True


def together(ways: Sequence[Way], fits: Callable[[Steps], bool] = no_cap) -> Steps:
    """All ways in the fewest steps in which none goes too far, in quarters of the measures where that can be.

    fits: whether these steps are allowed; equal parts of the ways are taken where no others are. The last step is
    exactly what is wanted. Nothing to change is no step.
    """
    least = max((int(steps_needed(way.now_kg, way.wanted_kg, way.step_kg)) for way in ways), default=0)
    for steps in range(least, TRIES * least + QUARTERS if least else 0):
        for nearest in (True, False):
            found = tuple(tuple(_told_kg(way, step, steps, nearest) for way in ways) for step in range(1, steps + 1))
            if _is_safe(ways, found) and fits(found):
                return found
    return tuple(
        tuple(given_at_kg(way.now_kg, way.wanted_kg, step, least) for way in ways) for step in range(1, least + 1)
    )


def _told_kg(way: Way, step: int, steps: int, nearest: bool) -> float:
    """A quarter by a part of the way: the nearest, or the last one before it; never back behind its beginning."""
    kg = given_at_kg(way.now_kg, way.wanted_kg, step, steps)
    if step == steps or not way.in_quarters or way.quarter_kg is None:
        return kg
    quarters = kg / way.quarter_kg
    before = floor(quarters + ROUNDING_KG) if way.now_kg < way.wanted_kg else ceil(quarters - ROUNDING_KG)
    low, high = sorted((way.now_kg, way.wanted_kg))
    return min(max((round(quarters) if nearest else before) * way.quarter_kg, low), high)


def _is_safe(ways: Sequence[Way], found: Steps) -> bool:
    begin = tuple(way.now_kg for way in ways)
    return all(
        abs(kg - was_kg) <= way.step_kg + ROUNDING_KG
        for before, given in pairwise((begin, *found))
        for way, was_kg, kg in zip(ways, before, given, strict=True)
    )
