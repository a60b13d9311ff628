"""Milk in a pail: weight, volume and the usual range."""

from collections.abc import Sequence
from statistics import median

from store.husbandry.bounds import at_least_zero
from store.husbandry.udder import ESTIMATE_MOST_H, filled_h

FEWEST_PAILS = 3
KG_PER_L = 1.03
"""Density of whole milk. [kg/L] Checked against 86 containers of the robustbase data set `milk`:
mean 1.0299, 1.0262 to 1.0322 (tests/outside)."""


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


def litres(milk_kg: float) -> float:
    """Volume of a weight of milk. [L]"""
    at_least_zero(milk_kg=milk_kg)
    return milk_kg / KG_PER_L


def kilograms(milk_l: float) -> float:
    """Weight of a volume of milk, froth let down. [kg]"""
    at_least_zero(milk_l=milk_l)
    return milk_l * KG_PER_L


def usual_pail(rates_kg_h: Sequence[float], elapsed_h: float) -> tuple[float, float, float] | None:
    """Least, middle and most of what her last comparable pails would be after so many hours. [kg]

    rates_kg_h: each pail by the hours at full rate that made it (`udder.filled_h`). [kg/h]
    elapsed_h: hours since the udder was last emptied. [h]
    None with fewer than three pails, and past 24 h. A plain range, it promises nothing about the next pail. Raises
    ValueError below zero.
    """
    at_least_zero(elapsed_h=elapsed_h)
    if len(rates_kg_h) < FEWEST_PAILS or elapsed_h > ESTIMATE_MOST_H:
        return None
    full_h = filled_h(elapsed_h)
    return min(rates_kg_h) * full_h, median(rates_kg_h) * full_h, max(rates_kg_h) * full_h
