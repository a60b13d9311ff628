"""What growing cattle gain on a feed, how rich a feed must be for a wanted gain, and what builds it. [a day]

Weights are as she stands on the scale; the equations were made for 0.96 of that.
"""

from collections.abc import Callable
from math import pow as power

from store.husbandry.bounds import above_zero, at_least_zero, percent
from store.husbandry.needs.feed_energy import gain_mcal_per_kg, upkeep_mcal_per_kg
from store.husbandry.needs.size import upkeep_kg
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import ARITHMETIC, Printed, Source, Sure, equation, example

BOOK = "Nutrient Requirements of Beef Cattle, 7th edition (1996, update 2000)"
TABLE = Source(
    f"{BOOK}, table of growing cattle of 550 lb, finished at 1000 lb; gains lie up to 1.2 % from it (5 % on the "
    "poorest feed), what they eat 1.5 %, protein 1.1 %, minerals 3 % and rounding, TDN for a gain 0.45", Sure.MEMORY,
)  # fmt: skip
DAIRY = Source("Nutrient Requirements of Dairy Cattle, 7th edition (2001), chapter 1, heifers not in calf", Sure.MEMORY)
GAIN = Source(
    "discovery.researcher.life, Evaluating the difference between formulated dietary net energy values, abstract"
)
NET = Source(
    "studylib.net/doc/5622359, NEm and NEg, yearling steer of 715 lb, finished at 1300 lb; its table has 5.89 Mcal for "
    "upkeep and 6.94 for 3.99 lb, 0.01 from this"
)
SHRUNK, FINISHED_KG = 0.96, 478.0
POOREST_TDN, RICHEST_TDN = 40.0, 90.0
STEER_KG, FINISH_KG = 550 * KG_PER_LB, 1000 * KG_PER_LB


def _eats(weight_kg: float, tdn_percent: float, less: float) -> float:
    at_least_zero(weight_kg=weight_kg)
    net = upkeep_mcal_per_kg(tdn_percent)
    return upkeep_kg(weight_kg) * max(0.2435 * net - 0.0466 * net**2 - less, 0.0) / net


@equation(
    "can eat", "weight^0.75 x (0.2435 x NEm - 0.0466 x NEm^2 - 0.1128) / NEm, NEm by TDN of the feed", "kg", DAIRY,
    example(7.1, 0.06, Source(f"{DAIRY.words}, sample heifer of 300 kg on feed of 1.40 Mcal; 0.06 below", Sure.MEMORY),
            weight_kg=300, tdn_percent=62.72), weight_kg=(100, 600), tdn_percent=(48, 80),
)  # fmt: skip
def heifer_eats_kg(weight_kg: float, tdn_percent: float) -> float:
    """A growing dairy heifer. [kg of dry matter] Raises ValueError below zero, and for TDN that is not 30 to 100 %."""
    return _eats(weight_kg, tdn_percent, 0.1128)


@equation(
    "can eat", "weight^0.75 x (0.2435 x NEm - 0.0466 x NEm^2 - 0.0869) / NEm, NEm by TDN of the feed", "kg",
    Source(f"{BOOK}, chapter 7, yearlings", Sure.MEMORY),
    *(example(lb * KG_PER_LB, 0.015 * lb * KG_PER_LB, TABLE, weight_kg=STEER_KG, tdn_percent=tdn)
      for tdn, lb in ((50, 15.2), (60, 16.1), (70, 15.7), (80, 14.8), (90, 13.7))),
    weight_kg=(150, 600), tdn_percent=(48, 90),
)  # fmt: skip
def steer_eats_kg(weight_kg: float, tdn_percent: float) -> float:
    """A steer, or a beef heifer. [kg of dry matter] Raises ValueError below zero, and for TDN not 30 to 100 %."""
    return _eats(weight_kg, tdn_percent, 0.0869)


def as_finished_kg(weight_kg: float, mature_kg: float) -> float:
    """Her weight as that of an animal finished at 478 kg, equally fat. [kg]"""
    at_least_zero(weight_kg=weight_kg)
    above_zero(mature_kg=mature_kg)
    return SHRUNK * weight_kg * FINISHED_KG / mature_kg


@equation(
    "energy for upkeep", "0.077 x (0.96 x weight)^0.75", "Mcal",
    Source("Lofgreen and Garrett 1968, as J. Anim. Sci. 2008, 86:2680 has it (jas.fass.org)"),
    example(5.89, 0.01, NET, weight_kg=715 * KG_PER_LB / SHRUNK), weight_kg=(100, 600),
)  # fmt: skip
def upkeep_mcal(weight_kg: float) -> float:
    """Net energy for upkeep (NEm) of growing cattle. [Mcal] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg)
    return 0.077 * upkeep_kg(SHRUNK * weight_kg)


def _left_for_gain_mcal(weight_kg: float, dry_matter_kg: float, tdn_percent: float) -> float:
    """Energy for gain beyond upkeep; below zero she loses weight. [Mcal]"""
    at_least_zero(dry_matter_kg=dry_matter_kg)
    upkeep = upkeep_mcal(weight_kg) / upkeep_mcal_per_kg(tdn_percent)
    return (dry_matter_kg - upkeep) * gain_mcal_per_kg(tdn_percent)


def _printed_gain(tdn: float, eaten_lb: float, gain_lb: float, within: float) -> Printed:
    return example(gain_lb * KG_PER_LB, within * gain_lb * KG_PER_LB, TABLE, weight_kg=STEER_KG, mature_kg=FINISH_KG,
                   dry_matter_kg=eaten_lb * KG_PER_LB, tdn_percent=tdn)  # fmt: skip


@equation(
    "gain", "13.91 x energy for gain^0.9116 x (0.96 x weight x 478 / weight when finished)^-0.6837", "kg a day", GAIN,
    example(3.99 * KG_PER_LB, 0.02 * KG_PER_LB, NET, left_mcal=6.94, weight_kg=715 * KG_PER_LB / SHRUNK,
            mature_kg=1300 * KG_PER_LB), weight_kg=(100, 600), mature_kg=(350, 800),
)  # fmt: skip
def gained_kg_day(left_mcal: float, weight_kg: float, mature_kg: float) -> float:
    """What the net energy for gain (NEg) beyond upkeep makes of it. [kg a day] Raises ValueError below zero."""
    at_least_zero(left_mcal=left_mcal)
    finished = as_finished_kg(weight_kg, mature_kg)
    return 13.91 * power(left_mcal, 0.9116) * power(finished, -0.6837) if finished else 0.0


@equation(
    "gain", "13.91 x (energy left for gain)^0.9116 x (0.96 x weight x 478 / weight when finished)^-0.6837", "kg a day",
    GAIN,
    _printed_gain(50, 15.2, 0.64, 0.05), _printed_gain(60, 16.1, 1.77, 0.012), _printed_gain(70, 15.7, 2.68, 0.012),
    _printed_gain(80, 14.8, 3.34, 0.012), _printed_gain(90, 13.7, 3.75, 0.012),
    weight_kg=(100, 600), tdn_percent=(45, 90), mature_kg=(350, 800),
)  # fmt: skip
def gain_kg_day(weight_kg: float, dry_matter_kg: float, tdn_percent: float, mature_kg: float) -> float:
    """What she gains on so much of such a feed; 0 where it is no more than upkeep, and then she may lose. [kg a day]

    mature_kg: her weight when finished or full-grown. Raises ValueError below zero, and for TDN not 30 to 100 %.
    """
    left = _left_for_gain_mcal(weight_kg, dry_matter_kg, tdn_percent)
    return gained_kg_day(max(left, 0.0), weight_kg, mature_kg)


def gain_takes_mcal(weight_kg: float, gain_kg_day: float, mature_kg: float) -> float:
    """The energy for gain that a gain takes: the equation of gain, turned round. [Mcal]"""
    at_least_zero(gain_kg_day=gain_kg_day)
    return power(gain_kg_day * power(as_finished_kg(weight_kg, mature_kg), 0.6837) / 13.91, 1 / 0.9116)


def _rich_enough(
    eats: Callable[[float, float], float], weight_kg: float, gain_kg_day: float, mature_kg: float
) -> float:
    """TDN at which what she eats of it leaves just enough for the gain, by halving. [% of dry matter]"""
    takes = gain_takes_mcal(weight_kg, gain_kg_day, mature_kg)
    low, high = POOREST_TDN, RICHEST_TDN
    if _left_for_gain_mcal(weight_kg, eats(weight_kg, high), high) < takes:
        raise ValueError(f"gain_kg_day is {gain_kg_day}; no feed makes {weight_kg:g} kg gain so much")
    while high - low > 1e-9:
        middle = (low + high) / 2
        enough = _left_for_gain_mcal(weight_kg, eats(weight_kg, middle), middle) >= takes
        low, high = (low, middle) if enough else (middle, high)
    return high


@equation(
    "TDN of a feed that makes the gain", "the equation of gain turned round, she eats as much as she can",
    "% of dry matter", Source(f"{BOOK}, chapter 3, and {DAIRY.words}", Sure.MEMORY),
    weight_kg=(100, 600), gain_kg_day=(0, 1.2), mature_kg=(350, 800),
)  # fmt: skip
def heifer_tdn_percent(weight_kg: float, gain_kg_day: float, mature_kg: float) -> float:
    """For a dairy heifer. [% of dry matter] Raises ValueError below zero, and for a gain that no feed makes."""
    return _rich_enough(heifer_eats_kg, weight_kg, gain_kg_day, mature_kg)


@equation(
    "TDN of a feed that makes the gain", "the equation of gain turned round, it eats as much as it can",
    "% of dry matter", Source(f"{BOOK}, chapters 3 and 7", Sure.MEMORY),
    *(example(tdn, 0.45, TABLE, weight_kg=STEER_KG, gain_kg_day=lb * KG_PER_LB, mature_kg=FINISH_KG)
      for tdn, lb in ((50, 0.64), (60, 1.77), (70, 2.68))),
    weight_kg=(100, 600), gain_kg_day=(0, 1.7), mature_kg=(350, 800),
)  # fmt: skip
def steer_tdn_percent(weight_kg: float, gain_kg_day: float, mature_kg: float) -> float:
    """For a steer, or a beef heifer. [% of dry matter] Raises ValueError below zero, for a gain that no feed makes."""
    return _rich_enough(steer_eats_kg, weight_kg, gain_kg_day, mature_kg)


@equation("TDN", "dry matter x TDN of it / 100", "kg", ARITHMETIC)
def tdn_kg(dry_matter_kg: float, tdn_percent: float) -> float:
    """As kilograms. [kg] Raises ValueError below zero, and for TDN that is not 0 to 100 %."""
    at_least_zero(dry_matter_kg=dry_matter_kg)
    percent(tdn_percent=tdn_percent)
    return dry_matter_kg * tdn_percent / 100
