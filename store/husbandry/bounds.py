"""Impossible input raises and names the argument, the value and the bound."""


def at_least_zero(**values: float) -> None:
    """Raise ValueError for the first value below zero (or not a number)."""
    for name, value in values.items():
        if not value >= 0:
            raise ValueError(f"{name} is {value}; it must be 0 or more")


def above_zero(**values: float) -> None:
    """Raise ValueError for the first value that is not above zero."""
    for name, value in values.items():
        if not value > 0:
            raise ValueError(f"{name} is {value}; it must be above 0")
