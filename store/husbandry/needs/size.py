"""Weight as upkeep goes by it."""

from math import pow as power


def upkeep_kg(weight_kg: float) -> float:
    """Weight to the power of 0.75: twice as heavy costs 1.7 times as much. weight_kg: 0 or more."""
    return power(weight_kg, 0.75)
