"""What a calf took of its cow, by two ways that know nothing of each other. Neither is a measurement.

By the pail: what she made while the calf was away says what she makes when it is with her. By the calf: what it gained
says what it drank. Each has its band, and the gap between the two is told.
"""

from store.husbandry.bounds import above_zero, at_least_zero
from store.husbandry.milk.udder import ESTIMATE_MOST_H, HOURS_A_DAY
from store.husbandry.why import ARITHMETIC, Source, Sure, equation, example

REMOVED = (0.85, 0.9)
"""How much of what is in her a milking takes: 10 to 20 % stay behind, more where she lets down badly. From memory."""
KG_PER_KG = (8.0, 14.0)
"""Milk for a kilogram of gain, of a calf up to ten weeks that eats little else; printed from 10 to 12."""
MILK_FOR_GAIN_KG = 10.9
"""The same as it is printed of calves that suck by night."""
MOST_OF_WEIGHT = 0.25
"""More than this of its weight a day no calf drinks: what is beyond it she held back. Assumed; 12 kg by a Holstein of
nine weeks, the most that is printed of a suckling calf, is 15 % or so."""

BALANCE = Source("worked from how an udder fills; the calf is taken to keep her empty by day", Sure.ASSUMED)
PER_GAIN = Source(
    "Froberg et al. 2008 (publications.slu.se, 20628): 286 kg milk for 26.2 kg gain in 8 weeks, little other feed"
)
PER_GAIN_FREE = Source("Wormsbecher et al. 2015, J. Dairy Sci. 98 Suppl. 2:563: 0.10 kg gain per kg milk, 7 weeks")
PER_GAIN_HOUSED = Source("Milk-fed calves 1 (scilit.com, 4ef2a538...): housed, 81 g gain for each kg more of milk")
SUCKLED = Source(
    "Tesorero et al. 2001, Livest. Res. Rural Dev. 13(1) (lrrd.org/lrrd13/1/teso131.htm): saleable, total and what the "
    "calf took; its total is rounded by itself"
)


@equation("she makes an hour", "pail / part removed / hours at full rate", "kg", BALANCE, removed=(0.7, 1.0))
def makes_kg_h(milk_kg: float, removed: float, full_h: float) -> float:
    """At full rate. [kg/h] removed: the part of what was in her that the milking took, above 0 to 1.

    Raises ValueError outside of that, below zero, and for no hours.
    """
    at_least_zero(milk_kg=milk_kg)
    above_zero(removed=removed, full_h=full_h)
    if removed > 1:
        raise ValueError(f"removed is {removed}; it must be at most 1")
    return milk_kg / removed / full_h


@equation("she makes in 24 hours", "rate x (hours at full rate apart + 24 - hours apart)", "kg", BALANCE)
def makes_kg(rate_kg_h: float, full_h: float, apart_h: float) -> float:
    """Apart by night she slows as she fills; by day the calf keeps her empty, at full rate. [kg]

    Raises ValueError below zero, and for more than 24 h apart.
    """
    at_least_zero(rate_kg_h=rate_kg_h, full_h=full_h, apart_h=apart_h)
    if apart_h > ESTIMATE_MOST_H:
        raise ValueError(f"apart_h is {apart_h}; no estimate past {ESTIMATE_MOST_H:g} h")
    return rate_kg_h * (full_h + HOURS_A_DAY - apart_h)


@equation(
    "she made and the pail has not", "made in 24 hours - pails of the day", "kg", BALANCE,
    example(2.9, 0.11, SUCKLED, made_kg=9.8, pails_kg=7.0), example(2.5, 0.05, SUCKLED, made_kg=11.4, pails_kg=8.9),
    example(1.7, 0.11, SUCKLED, made_kg=9.9, pails_kg=8.1),
)  # fmt: skip
def not_in_the_pail_kg(made_kg: float, pails_kg: float) -> float:
    """What the calf took, with what she held back. [kg] None of it below zero; raises ValueError for input below it."""
    at_least_zero(made_kg=made_kg, pails_kg=pails_kg)
    return max(made_kg - pails_kg, 0.0)


@equation("she held back", "what is not in the pail - the most that a calf drinks", "kg", BALANCE)
def held_back_kg(missing_kg: float, most_kg: float) -> float:
    """What no calf can have drunk. [kg] None of it below zero; raises ValueError for input below it."""
    at_least_zero(missing_kg=missing_kg, most_kg=most_kg)
    return max(missing_kg - most_kg, 0.0)


@equation("no calf drinks more", "weight of the calf x 0.25", "kg", Source("the most that is printed", Sure.ASSUMED))
def drinks_at_most_kg(calf_kg: float) -> float:
    """In a day. [kg] Raises ValueError below zero."""
    at_least_zero(calf_kg=calf_kg)
    return MOST_OF_WEIGHT * calf_kg


@equation(
    "the calf's milk by its gain", "kg milk for 1 kg of gain x gain a day", "kg", PER_GAIN,
    example(286, 0.7, PER_GAIN, milk_for_gain=10.9, gain_kg_day=26.2),
    example(1.0, 0.05, PER_GAIN_FREE, milk_for_gain=10.0, gain_kg_day=0.10),
    example(1.0, 0.005, PER_GAIN_HOUSED, milk_for_gain=12.3, gain_kg_day=0.081),
    milk_for_gain=(3.6, 20.0), gain_kg_day=(0.2, 1.4),
)  # fmt: skip
def drunk_for_gain_kg(milk_for_gain: float, gain_kg_day: float) -> float:
    """What a calf drank that gained so much. [kg] Not valid once it eats much else. Raises ValueError below zero."""
    at_least_zero(milk_for_gain=milk_for_gain, gain_kg_day=gain_kg_day)
    return milk_for_gain * gain_kg_day


@equation("the gap", "the greater - the smaller", "kg", ARITHMETIC)
def gap_kg(one: float, other: float) -> float:
    """How far two estimates lie apart: what neither of them knows. [kg]"""
    return abs(one - other)
