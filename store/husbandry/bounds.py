"""Impossible input raises and names the argument, the value and the bound."""

from math import inf


def at_least_zero(**values: float) -> None:
    """Raise ValueError for the first value below zero, infinite, or not a number."""
    for name, value in values.items():
        if not 0 <= value < inf:
            raise ValueError(f"{name} is {value}; it must be 0 or more, and finite")


def above_zero(**values: float) -> None:
    """Raise ValueError for the first value that is not above zero, or infinite."""
    for name, value in values.items():
        if not 0 < value < inf:
            raise ValueError(f"{name} is {value}; it must be above 0, and finite")


DENSEST_KG_PER_L = 1.5
"""No feed weighs more for its volume. [kg/L]

Molasses, the heaviest there is, has 1.33 (www.fao.org/docrep/S4314E/s4314e0q.htm), in older tables 12 lb to the gallon,
1.44 (Texas Agricultural Experiment Station, Bulletin 86, 1906); loose minerals up to 1.3, from memory.
"""


def percent(**values: float) -> None:
    """Raise ValueError for the first value that is not 0 to 100."""
    for name, value in values.items():
        if not 0 <= value <= 100:
            raise ValueError(f"{name} is {value}; it must be 0 to 100")
