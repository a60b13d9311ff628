"""Whether a weight can be hers: by what she weighed before, by her girth, or by what is usual of her kind."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date, datetime
from typing import Any, TypeAlias

from msgspec import Struct

from store.book.words import Species, Stage, Units
from store.husbandry.body.girth import weight_by_girth_kg
from store.husbandry.body.growth import likely_kg
from store.husbandry.dates.ages import days_between, months
from store.husbandry.slip import meant_kg, slip
from store.round.measured import IF_RIGHT
from store.round.saying import exact

GROWING = (Stage.CALF, Stage.HEIFER, Stage.STEER, Stage.BULL, Stage.OTHER)
GAIN_MOST_KG_DAY = 2.0
"""No growing animal gains more for long. [kg a day] Common practice."""
LEAST_PART, MOST_PART = 0.75, 1.25
"""Of the weight before; what is in her rumen, a calving and a hard winter make less than that. Common practice."""
USUAL_PARTS, AGE_PARTS, GROWING_PARTS, BULL_PARTS = (0.55, 1.6), (0.5, 1.6), (0.04, 1.3), (0.04, 2.0)
"""Of a usual weight of the grown; of what is likely at its age; of its grown weight, of one that grows and of a bull,
where nobody knows its age: more and less than this is asked about. Common practice."""
SECONDS_A_DAY = 86400


class Expected(Struct, frozen=True):
    """About what she should weigh, in words whose it is, and between what it is not asked about. [kg]"""

    kg: float
    whose: str
    least_kg: float
    most_kg: float

    def holds(self, kg: float) -> bool:
        """Whether a weight can well be hers."""
        return self.least_kg <= kg <= self.most_kg


Kind: TypeAlias = Callable[[datetime], Expected | None]
"""What is usual of its kind at its age of then; None: nobody knows."""


class Weight(Struct, frozen=True):
    """What the scale said at a moment. [kg]"""

    at: datetime
    kg: float


class Scaled(Struct, frozen=True):
    """Her weights, oldest first. doubted: the newest, where it can hardly be hers by those that can."""

    likely: tuple[Weight, ...] = ()
    doubted: Weight | None = None


def by_before(before_kg: float, days: float, stage: Stage) -> Expected:
    """By her last weight, so many days ago."""
    grown_kg = GAIN_MOST_KG_DAY * days if stage in GROWING else 0.0
    return Expected(before_kg, "before", LEAST_PART * before_kg, MOST_PART * before_kg + grown_kg)


def by_girth(girth_cm: float | None) -> Expected | None:
    """By the tape, where that is made for her size."""
    least_cm, most_cm = weight_by_girth_kg.ranges["girth_cm"]
    if girth_cm is None or not least_cm <= girth_cm <= most_cm:
        return None
    return _part(weight_by_girth_kg(girth_cm), "by her girth", USUAL_PARTS)


def by_kind(row: Mapping[str, Any], mature_kg: float, day: date) -> Expected | None:
    """What cattle of her grown weight weigh, those that grow at their age of that day; None for other animals."""
    if row["species"] is not Species.CATTLE:
        return None
    if row["stage"] not in GROWING:
        return _part(mature_kg, "usual", USUAL_PARTS)
    bull, born = row["stage"] is Stage.BULL, row["born_on"]
    if bull or not born or born > day:
        return _part(mature_kg, "grown", BULL_PARTS if bull else GROWING_PARTS)
    found = _part(likely_kg(months(days_between(born, day)), mature_kg), "at this age about", AGE_PARTS)
    return Expected(found.kg, found.whose, found.least_kg, min(found.most_kg, GROWING_PARTS[1] * mature_kg))


def _part(kg: float, whose: str, parts: tuple[float, float]) -> Expected:
    return Expected(kg, whose, parts[0] * kg, parts[1] * kg)


def expected(before: Weight | None, at: datetime, stage: Stage, kind: Kind) -> Expected | None:
    """By the weight before, else by her kind."""
    return by_before(before.kg, (at - before.at).total_seconds() / SECONDS_A_DAY, stage) if before else kind(at)


def scaled(weights: Sequence[Weight], stage: Stage, kind: Kind) -> Scaled:
    """Her weights without those that can hardly have been hers: neither by those before, nor by the one behind."""
    found = Scaled()
    for each in weights:
        found = _with(found, each, stage, kind)
    return found


def _with(found: Scaled, each: Weight, stage: Stage, kind: Kind) -> Scaled:
    if found.doubted and agrees(found.doubted, each, stage):
        return Scaled((*found.likely, found.doubted, each))
    wanted = expected(found.likely[-1] if found.likely else None, each.at, stage, kind)
    return Scaled(found.likely, each) if wanted and not wanted.holds(each.kg) else Scaled((*found.likely, each))


def agrees(doubted: Weight | None, each: Weight, stage: Stage) -> bool:
    """Whether a weight bears out the doubtful one before it."""
    wanted = expected(doubted, each.at, stage, lambda _: None)
    return wanted is not None and wanted.holds(each.kg)


def doubt(found_kg: float, expected: Expected, units: Units) -> str:
    """What to ask where a weight cannot well be hers; empty where it can.

    `1350.00 kg; before 612.00 kg. Were pounds typed as kilograms? That would be 612.35 kg.`
    """
    if expected.holds(found_kg):
        return ""
    likely = slip(found_kg, expected.least_kg, expected.most_kg)
    named = f" Were {likely}? That would be {exact(meant_kg(found_kg, likely), units)}." if likely else ""
    return f"That is {exact(found_kg, units)}; {expected.whose} {exact(expected.kg, units)}.{named} {IF_RIGHT}"
