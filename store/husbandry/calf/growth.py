"""What a calf on milk gains of what it drinks and eats, and how its gain stands to that."""

from math import pow as power

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, Sure, equation, example

BOOK = "Nutrient Requirements of Dairy Cattle, 7th edition (2001), chapter 10"
FLORIDA = Source(
    "edis.ifas.ufl.edu AN263, figure 1: 2.1 Mcal for a calf of 100 lb; the book has 13 % less, and they disagree"
)
SUCKLED = Source(
    "Froberg et al. 2008, publications.slu.se id 20628: 286 kg of milk of 3.5 MJ in 8 weeks, 26.2 kg gained; a middle "
    "weight of 53 kg taken, the book's gain is a tenth more"
)
STARTER_MCAL = 3.0
"""Metabolizable energy of a kilogram of calf starter, as it lies. From memory."""


@equation(
    "energy to keep alive", "0.086 x weight^0.75 / 0.825", "Mcal for a calf", Source(BOOK, Sure.MEMORY),
    example(2.1, 0.3, FLORIDA, weight_kg=100 * KG_PER_LB), weight_kg=(25, 120),
)  # fmt: skip
def upkeep_mcal(weight_kg: float) -> float:
    """Metabolizable energy, in mild air. [Mcal a day] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg)
    return 0.086 * power(weight_kg, 0.75) / 0.825


@equation(
    "energy it gets", "milk x energy in a kilogram of it + 3.0 x starter", "Mcal for a calf",
    Source("plain arithmetic; starter 3.0 Mcal a kilogram", Sure.MEMORY),
)  # fmt: skip
def gets_mcal(milk_kg: float, mcal_per_kg: float, starter_kg: float) -> float:
    """Metabolizable energy of milk and starter. [Mcal a day] Raises ValueError below zero."""
    at_least_zero(milk_kg=milk_kg, mcal_per_kg=mcal_per_kg, starter_kg=starter_kg)
    return milk_kg * mcal_per_kg + STARTER_MCAL * starter_kg


@equation(
    "gain to expect", "(0.69 x (energy it gets - energy to keep alive) / (0.84 x weight^0.355))^(1 / 1.2)", "kg a day",
    Source(BOOK, Sure.MEMORY),
    example(26.2 / 56, 0.05, SUCKLED, weight_kg=53, gets_mcal=286 / 56 * 3.5 / 4.184),
    weight_kg=(25, 120), gets_mcal=(1, 12),
)  # fmt: skip
def expected_kg_day(weight_kg: float, gets_mcal: float) -> float:
    """What it should gain in mild air; 0 where it gets no more than keeps it alive. [kg a day] Raises below zero."""
    at_least_zero(weight_kg=weight_kg, gets_mcal=gets_mcal)
    left = max(gets_mcal - upkeep_mcal(weight_kg), 0.0)
    return power(0.69 * left / (0.84 * power(weight_kg, 0.355)), 1 / 1.2) if weight_kg else 0.0


@equation("gain against what was expected", "100 x gain / gain to expect", "%", Source("plain arithmetic"))
def of_expected_percent(gain_kg_day: float, expected_kg_day: float) -> float:
    """How its gain stands to what it should be. [%] gain_kg_day: below zero: it lost. Raises for nothing expected."""
    at_least_zero(expected_kg_day=expected_kg_day)
    if expected_kg_day == 0:
        raise ValueError("expected_kg_day is 0; there is nothing to compare with")
    return 100 * gain_kg_day / expected_kg_day
