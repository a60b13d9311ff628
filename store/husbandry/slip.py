"""A weight that can hardly be, and the slip of a unit that would explain it."""

from enum import StrEnum

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB


class Slip(StrEnum):
    """What was likely typed instead of kilograms."""

    POUNDS = "pounds typed as kilograms"
    KILOGRAMS_AS_POUNDS = "kilograms typed as pounds"
    GRAMS = "grams typed as kilograms"
    TONNES = "tonnes typed as kilograms"


TIMES = {Slip.POUNDS: 1 / KG_PER_LB, Slip.KILOGRAMS_AS_POUNDS: KG_PER_LB, Slip.GRAMS: 1000.0, Slip.TONNES: 0.001}
"""How many times too heavy each makes it."""


def slip(weight_kg: float, least_kg: float, most_kg: float) -> Slip | None:
    """The slip by which a weight would lie between two bounds; None: it lies there, or no slip explains it.

    Raises ValueError below zero, and where the most is not above the least.
    """
    at_least_zero(weight_kg=weight_kg, least_kg=least_kg)
    if most_kg <= least_kg:
        raise ValueError(f"most_kg is {most_kg}; it must be above least_kg, {least_kg}")
    if least_kg <= weight_kg <= most_kg:
        return None
    return next((each for each in Slip if least_kg <= meant_kg(weight_kg, each) <= most_kg), None)


def meant_kg(weight_kg: float, found: Slip) -> float:
    """What a weight was meant to be. [kg]"""
    return weight_kg / TIMES[found]
