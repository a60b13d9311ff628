"""What a level measure holds: weighed several at a time, weighed anew, and what the same kilograms are in it then."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import ARITHMETIC, Source, Sure, equation

SAME_KG = 0.005
"""Closer than this is the same weight: it is below what a scale in a feed room shows. [kg]"""
QUARTERS = 4
"""The finest part of a measure that is told at the bench. Common practice."""


@equation("one measure", "what was weighed together / how many measures", "kg", ARITHMETIC)
def one_of(total: float, measures: float) -> float:
    """What one level measure weighs where several were weighed together. Any weight, out as in.

    Raises ValueError below zero, and for no measure at all.
    """
    at_least_zero(total=total, measures=measures)
    if measures == 0:
        raise ValueError("measures is 0; at least one must be weighed")
    return total / measures


@equation("change", "(now / before - 1) x 100", "%", ARITHMETIC)
def change_percent(before: float, now: float) -> float:
    """By how much a weight has changed. [%] Raises ValueError below zero, and for nothing before."""
    at_least_zero(before=before, now=now)
    if before == 0:
        raise ValueError("before is 0; a change is told of something")
    return (now / before - 1) * 100


@equation("due for all", "due for one head x heads", "kg", ARITHMETIC)
def for_heads(a_head_kg: float, heads: float) -> float:
    """What is due for some heads together. [kg] Raises ValueError below zero."""
    at_least_zero(a_head_kg=a_head_kg, heads=heads)
    return a_head_kg * heads


@equation(
    "measures", "the weight / what one measure holds, to the nearest quarter", "measures",
    Source("a quarter is the finest part of a scoop that is told at the bench", Sure.PRACTICE),
)  # fmt: skip
def in_quarters(kg: float, holds_kg: float) -> float:
    """The nearest quarter of a measure to a weight. Raises ValueError below zero, and for one that holds nothing."""
    at_least_zero(kg=kg, holds_kg=holds_kg)
    if holds_kg == 0:
        raise ValueError("holds_kg is 0; a measure holds something")
    return round(QUARTERS * kg / holds_kg) / QUARTERS


@equation("in the measures", "measures x what one measure holds", "kg", ARITHMETIC)
def in_measures_kg(measures: float, holds_kg: float) -> float:
    """What so many level measures hold. [kg] Raises ValueError below zero."""
    at_least_zero(measures=measures, holds_kg=holds_kg)
    return measures * holds_kg
