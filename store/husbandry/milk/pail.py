"""Milk in a pail: weight and volume."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB, US_GAL, US_QT
from store.husbandry.why import ARITHMETIC, Source, equation, example

KG_PER_L = 1.03
"""Density of whole milk at pail warmth. [kg/L] It falls by 0.0002 to 0.0006 with each degree C of warming (from
memory): a litre weighed warm or cold differs by less than a hundredth."""
CONTAINERS = Source(
    "robustbase data set milk, column X1, 86 containers; Daudin, Duby and Trecourt 1988, Statistics 19:241-258: mean "
    "1.02994, least 1.0262, most 1.0322 kg/L"
)
GALLON = Source("sv.scienceaq.com/Math/1005228331.html: a US gallon of milk weighs 8.6 lb, 100 lb are 11.63 gal")
QUART = Source("es.411answers.com, cuanto pesa un galon de leche en libras: a US quart of milk weighs 2.15 lb")


@equation(
    "milk in the pail", "pail on the scale - the empty pail", "kg", ARITHMETIC
)  # fmt: skip
def milk_in_pail(gross_kg: float, empty_kg: float) -> float:
    """Milk alone, from the pail as it stands on the scale. [kg]

    gross_kg: pail and milk together. [kg]
    empty_kg: the same pail, empty. [kg]
    Raises ValueError below zero, or when the full pail is lighter than the empty one.
    """
    at_least_zero(gross_kg=gross_kg, empty_kg=empty_kg)
    if gross_kg < empty_kg:
        raise ValueError(f"gross_kg is {gross_kg}; the empty pail alone is {empty_kg}")
    return gross_kg - empty_kg


@equation(
    "litres of milk", f"kilograms / {KG_PER_L:g}", "L", CONTAINERS,
    example(11.63 * US_GAL.size, 0.005 * US_GAL.size, GALLON, milk_kg=100 * KG_PER_LB),
)  # fmt: skip
def litres(milk_kg: float) -> float:
    """Volume of a weight of milk. [L]"""
    at_least_zero(milk_kg=milk_kg)
    return milk_kg / KG_PER_L


@equation(
    "weight of milk", f"litres x {KG_PER_L:g}", "kg", CONTAINERS,
    example(8.6 * KG_PER_LB, 0.05 * KG_PER_LB, GALLON, milk_l=US_GAL.size),
    example(2.15 * KG_PER_LB, 0.005 * KG_PER_LB, QUART, milk_l=US_QT.size),
    example(1.02994, 0.005, CONTAINERS, milk_l=1.0),
)  # fmt: skip
def kilograms(milk_l: float) -> float:
    """Weight of a volume of milk, froth let down. [kg]"""
    at_least_zero(milk_l=milk_l)
    return milk_l * KG_PER_L
