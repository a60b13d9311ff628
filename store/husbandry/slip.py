"""A weight that is far from what is usual, and the slip of a unit that would explain it."""

from enum import StrEnum

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB

NEAR = 1.3
"""So many times more or less than usual is still the same weight: cattle of one class differ so much. Assumed."""


class Slip(StrEnum):
    """What was likely typed instead of kilograms."""

    POUNDS = "pounds typed as kilograms"
    KILOGRAMS_AS_POUNDS = "kilograms typed as pounds"
    GRAMS = "grams typed as kilograms"
    TONNES = "tonnes typed as kilograms"


TIMES = {Slip.POUNDS: 1 / KG_PER_LB, Slip.KILOGRAMS_AS_POUNDS: KG_PER_LB, Slip.GRAMS: 1000.0, Slip.TONNES: 0.001}
"""How many times too heavy each makes it."""


def slip(weight_kg: float, usual_kg: float) -> Slip | None:
    """The slip by which a weight would be usual; None: it is usual as it stands, or no slip explains it.

    usual_kg: of its class and age, above 0. Raises ValueError below zero, and for nothing usual.
    """
    at_least_zero(weight_kg=weight_kg, usual_kg=usual_kg)
    if usual_kg == 0:
        raise ValueError("usual_kg is 0; it must be above 0")
    if _near(weight_kg, usual_kg):
        return None
    return next((each for each in Slip if _near(meant_kg(weight_kg, each), usual_kg)), None)


def meant_kg(weight_kg: float, found: Slip) -> float:
    """What a weight was meant to be. [kg]"""
    return weight_kg / TIMES[found]


def _near(weight_kg: float, usual_kg: float) -> bool:
    return usual_kg / NEAR <= weight_kg <= usual_kg * NEAR
