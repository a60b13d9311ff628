"""Impossible input raises and names the argument, the value and the bound."""

from math import inf


def at_least_zero(**values: float) -> None:
    """Raise ValueError for the first value below zero, infinite, or not a number."""
    for name, value in values.items():
        if not 0 <= value < inf:
            raise ValueError(f"{name} is {value}; it must be 0 or more, and finite")
