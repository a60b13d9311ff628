"""Impossible input raises and names the argument, the value and the bound."""

from math import inf


def at_least_zero(**values: float) -> None:
    """Raise ValueError for the first value below zero, infinite, or not a number."""
    for name, value in values.items():
        if not 0 <= value < inf:
            raise ValueError(f"{name} is {value}; it must be 0 or more, and finite")


DENSEST_KG_PER_L = 1.5
"""No feed of a yard is denser. Molasses has 1.33 to 1.44 (fao.org S4314E; Texas Bulletin 86, 1906), salt and limestone
to 1.28 (fao.org S4314E); loose mineral to 1.3, from memory. [kg/L]"""
