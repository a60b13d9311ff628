"""Hay by the bale: what is lost on the way to the mouth, and how long the bales last."""

from math import ceil, prod

from msgspec import Struct

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Source, equation, example

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


_NEEDS = Source("agproud.com/articles/58069, hay needs of a cow of 1350 lb worked through, loss by loss")
_BALES = Source("agproud.com/articles/58069, the same hay for 120 days in bales of 880 and of 1267 lb")
_CATTLE_SITE = Source(
    "thecattlesite.com/articles/3154, how much forage a beef cow eats a day: 24 lb dry are 27 lb of hay"
)
_SOUTHEAST = Source("progressivecattle.com, forage intake in beef cattle: 22 lb dry are 24.7 lb of hay")
_FEEDERS = Source("extension.illinois.edu/beef-cattle/bale-feeder-design, waste of a bale of 1200 lb at four feeders")
EATEN_LB, HELD_LB = 33.75, 5148.7


@equation(
    "hay to give", "what is eaten / dry part / part kept in storage / part kept at feeding", "kg", _NEEDS,
    example(37.5, 0.05, _NEEDS, eaten=EATEN_LB, dry_percent=90), example(
        40.76, 0.005, _NEEDS, eaten=EATEN_LB, dry_percent=90, stored_loss_percent=8),
    example(42.9, 0.05, _NEEDS, eaten=EATEN_LB, dry_percent=90, stored_loss_percent=8, fed_loss_percent=5),
    example(27, 0.5, _CATTLE_SITE, eaten=24, dry_percent=88), example(24.7, 0.05, _SOUTHEAST, eaten=22, dry_percent=89),
)  # fmt: skip
def to_give(
    eaten: float, dry_percent: float = 100.0, stored_loss_percent: float = 0.0, fed_loss_percent: float = 0.0
) -> float:
    """What must be there so that so much is eaten: losses multiply. Any unit, out as in.

    eaten: dry matter where dry_percent is told. Raises ValueError below zero, and where nothing is kept.
    """
    at_least_zero(eaten=eaten)
    kept = {"dry_percent": dry_percent, "stored_loss_percent": 100 - stored_loss_percent,
            "fed_loss_percent": 100 - fed_loss_percent}  # fmt: skip
    for name, percent in kept.items():
        if not 0 < percent <= 100:
            raise ValueError(f"{name} leaves {percent:g} %; it must be above 0 and at most 100")
    return eaten / prod(percent / 100 for percent in kept.values())


@equation(
    "bales", "hay / weight of a bale", "bales", _BALES,
    example(5.85, 0.005, _BALES, hay=HELD_LB, bale=880), example(4.06, 0.005, _BALES, hay=HELD_LB, bale=1267),
)  # fmt: skip
def in_bales(hay: float, bale: float) -> float:
    """How many bales so much hay is. Both in one unit. Raises ValueError for a bale of no weight."""
    at_least_zero(hay=hay, bale=bale)
    if bale == 0:
        raise ValueError("bale is 0; it must weigh something")
    return hay / bale


@equation(
    "hay that is lost", "hay x part lost", "kg", _FEEDERS,
    *(example(lost, within, _FEEDERS, hay=1200, loss_percent=percent)
      for percent, lost, within in ((5.3, 63.6, 0.05), (13.0, 156, 0.5), (20.5, 246, 0.5), (21.0, 252, 0.5))),
)  # fmt: skip
def lost(hay: float, loss_percent: float) -> float:
    """What of so much hay never reaches a mouth. Any unit, out as in. Raises ValueError below zero."""
    at_least_zero(hay=hay, loss_percent=loss_percent)
    return hay * loss_percent / 100


def bales_last(bales: float, bale: float, loss_percent: float, a_day: float, days: int) -> Bales:
    """How long bales last, and how many lack for so many days.

    bale: the weight of one; a_day: what is eaten a day, in the same unit. loss_percent: of the hay, 0 to below 100.
    days of the answer None: nothing is eaten. Raises ValueError outside of these, and for a bale of no weight.
    """
    at_least_zero(bales=bales, loss_percent=loss_percent, a_day=a_day, days=days)
    bales_a_day = in_bales(to_give(a_day, fed_loss_percent=loss_percent), bale)
    need = ceil(days * bales_a_day - WHOLE)
    lasts = int(bales / bales_a_day + WHOLE) if bales_a_day else None
    return Bales(lasts, need, max(ceil(need - bales - WHOLE), 0))
