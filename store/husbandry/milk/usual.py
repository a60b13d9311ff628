"""What is usual in her pail after so many hours."""

from collections.abc import Sequence
from statistics import median

from store.husbandry.bounds import at_least_zero
from store.husbandry.milk.udder import ESTIMATE_MOST_H, filled_h

FEWEST_PAILS = 3


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
