"""Hay by the bale: what is lost on the way to the mouth, and how long the bales last."""

from math import ceil, prod

from msgspec import Struct

from store.husbandry.bounds import at_least_zero

WHOLE = 1e-9
"""A bale more for less than this is a rounding."""


class FeederLoss(Struct, frozen=True):
    """How much of the hay is lost at a kind of feeder. [%] of: what the percentage is told of."""

    feeder: str
    percent: float
    of: str
    source: str


_BUSKIRK = "Buskirk et al. 2003, second cut stored in a barn; extension.illinois.edu/beef-cattle/bale-feeder-design"
_OKLAHOMA = "Oklahoma State University trial; extension.illinois.edu/beef-cattle/bale-feeder-design"
_KANSAS = "Kansas State University, krex.k-state.edu/handle/2097/6266"
_NO_FEEDER = "Bell and Martz 1973; extension.okstate.edu/fact-sheets/hay-feeder-design-effect-on-hay-waste.html"
LOSS_BY_FEEDER = (
    FeederLoss("cone feeder", 3.5, "hay that disappears", _BUSKIRK),
    FeederLoss("ring feeder", 6.1, "hay that disappears", _BUSKIRK),
    FeederLoss("trailer feeder", 11.4, "hay that disappears", _BUSKIRK),
    FeederLoss("cradle feeder", 14.6, "hay that disappears", _BUSKIRK),
    FeederLoss("cone feeder", 5.3, "bale", _OKLAHOMA),
    FeederLoss("sheeted ring feeder", 13.0, "bale", _OKLAHOMA),
    FeederLoss("ring feeder", 20.5, "bale", _OKLAHOMA),
    FeederLoss("plastic ring feeder", 21.0, "bale", _OKLAHOMA),
    FeederLoss("unrolled on the ground, wheat hay", 23.0, "bale", _KANSAS),
    FeederLoss("shredded on the ground, wheat hay", 13.0, "bale", _KANSAS),
    FeederLoss("shredded in a bunk, wheat hay", 8.0, "bale", _KANSAS),
    FeederLoss("unrolled on the ground, sudan hay", 22.0, "bale", _KANSAS),
    FeederLoss("shredded on the ground, sudan hay", 16.0, "bale", _KANSAS),
    FeederLoss("shredded in a bunk, sudan hay", 11.0, "bale", _KANSAS),
    FeederLoss("no feeder", 45.0, "bale", _NO_FEEDER),
)
"""Two trials of one kind of feeder differ threefold: hay, weather and how full it is count too. Weigh what is left."""


def least_and_most_lost(feeder: str) -> tuple[float, float]:
    """What the trials of a kind of feeder found lost. [%] Raises ValueError for a feeder that is in none."""
    found = [each.percent for each in LOSS_BY_FEEDER if each.feeder == feeder]
    if not found:
        raise ValueError(f"feeder is {feeder}; it must be one of LOSS_BY_FEEDER")
    return min(found), max(found)


class Bales(Struct, frozen=True):
    """How long bales last. days: whole days. need: whole bales for all the days asked, short: those that lack."""

    days: int | None
    need: int
    short: int


def to_give(need: float, *kept: float) -> float:
    """What must be there so that so much is eaten. Any unit, out as in.

    kept: after each loss the part that is kept, above 0 to 1 (dry matter, storage, feeder): losses multiply.
    Source: agproud.com/articles/58069, hay needs worked through. Raises ValueError outside of that.
    """
    at_least_zero(need=need)
    for part in kept:
        if not 0 < part <= 1:
            raise ValueError(f"kept is {part}; it must be above 0 and at most 1")
    return need / prod(kept)


def bales_last(bales: float, bale: float, loss_percent: float, a_day: float, days: int) -> Bales:
    """How long bales last, and how many lack for so many days.

    bale: the weight of one; a_day: what is eaten a day, in the same unit. loss_percent: of the hay, 0 to below 100.
    days of the answer None: nothing is eaten. Raises ValueError outside of these, and for a bale of no weight.
    """
    at_least_zero(bales=bales, bale=bale, loss_percent=loss_percent, a_day=a_day, days=days)
    if bale == 0:
        raise ValueError("bale is 0; it must weigh something")
    given = to_give(a_day, 1 - loss_percent / 100)
    need = ceil(days * given / bale - WHOLE)
    lasts = int(bales * bale / given + WHOLE) if given else None
    return Bales(lasts, need, max(ceil(need - bales - WHOLE), 0))
