"""A figure that is off by a unit or a digit, told by what it was before or what is usual."""

from math import log

from msgspec import Struct

from store.husbandry.units import KG_PER_LB

SLIPS = (
    (1 / KG_PER_LB, "pounds typed as kilograms"),
    (KG_PER_LB, "kilograms typed as pounds"),
    (1000.0, "grams typed as kilograms"),
    (0.001, "tonnes typed as kilograms"),
    (10.0, "a digit too many"),
    (0.1, "a digit too few"),
)
"""By how much each makes a figure too large, or too small."""
NEAR = log(1.35)
"""So near to one of these it is named. Two weights of one animal differ by as much. Common practice."""


class Slip(Struct, frozen=True):
    """What a figure is likely to be. words: the slip. meant: the figure without it, in the same unit."""

    words: str
    meant: float


def slip(found: float, usual: float) -> Slip | None:
    """The likeliest slip that makes so much of what is usual; None: none of those that are known. Any unit, both alike.

    Raises ValueError where either is not above zero.
    """
    for name, value in (("found", found), ("usual", usual)):
        if not value > 0:
            raise ValueError(f"{name} is {value}; it must be above 0")
    factor, words = min(SLIPS, key=lambda each: _off(found, usual, each[0]))
    return Slip(words, found / factor) if _off(found, usual, factor) <= NEAR else None


def _off(found: float, usual: float, factor: float) -> float:
    return abs(log(found / usual / factor))
