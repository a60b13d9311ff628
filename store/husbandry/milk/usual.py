"""What is usual in her pail after so many hours: a range that should hold the next pail nine times in ten.

Her last pails, brought to an hour at full rate, are taken by their logarithms, the newer the more: the middle is their
weighted median, which one odd pail does not move; the width is a Student range for one more pail, whose spread is hers
and a little of what is known beforehand, so that three pails that happen to agree promise nothing.
"""

from collections.abc import Sequence
from itertools import accumulate
from math import exp, log, sqrt

from store.husbandry.bounds import at_least_zero
from store.husbandry.milk.udder import ESTIMATE_MOST_H, filled_h
from store.husbandry.why import Source, Sure, equation

FEWEST_PAILS, MOST_PAILS = 3, 7
FADES = 0.8
"""Each older pail counts so much of the one after it, so that a slow fall of weeks is followed. Assumed."""
SPREAD_BEFORE = 0.08
"""The spread of her pails that counts as if one pail more had shown it. Data set milkman (R package doBy, 161 836
milkings): a morning pail against the seven before it has a spread of 0.12, the middle nine tenths of them 0.08 to 0.09;
with it the range held 0.90 to 0.95 of the next pails there, of each breed, mornings and evenings, of 3, 5 and 7."""
FURTHEST = log(4)
"""A pail further off than a quarter or four times her middle counts as that far: a slip makes not every pail usual."""
STUDENT_95 = {3: 2.353, 4: 2.132, 5: 2.015, 6: 1.943, 7: 1.895}
"""Student's t that 95 in 100 lie below, by degrees of freedom: any table of it."""
OF_A_MEDIAN = 1.57
"""How much more a median of a few varies than their mean: pi / 2."""

MEASURED = Source(
    "Student's range for one more value; its spread ours, off data set milkman, R package doBy", Sure.ASSUMED
)


@equation("width of her usual", "e^(t x spread x root(1 + 1.57 / counting))", "times", MEASURED)
def width(spread: float, counting: float, pails: float) -> float:
    """How many times her middle the most is; the least is the middle by it.

    spread: of the logarithms of her pails. counting: as many pails as their weights are worth. pails: 3 to 7.
    Raises ValueError below zero.
    """
    at_least_zero(spread=spread, counting=counting)
    together = sqrt((SPREAD_BEFORE**2 + (pails - 1) * spread**2) / pails)
    return exp(STUDENT_95[int(pails)] * together * sqrt(1 + OF_A_MEDIAN / counting))


def usual_rate(rates_kg_h: Sequence[float]) -> tuple[float, float, float] | None:
    """Least, middle and most of the next, by her last comparable pails. [kg/h]

    rates_kg_h: newest first, each pail by the hours at full rate that made it (`udder.filled_h`); at most seven are
    taken, and none of nothing. None with fewer than three.
    """
    rates = [each for each in rates_kg_h if each > 0][:MOST_PAILS]
    if len(rates) < FEWEST_PAILS:
        return None
    weights = [FADES**at for at in range(len(rates))]
    middle = _weighted_median(rates, weights)
    times = width(_spread(rates, weights, middle), _counting(weights), len(rates))
    return middle / times, middle, middle * times


def usual_pail(rates_kg_h: Sequence[float], elapsed_h: float) -> tuple[float, float, float] | None:
    """Least, middle and most of the next pail after so many hours, nine times in ten. [kg]

    rates_kg_h: as in usual_rate. [kg/h]
    elapsed_h: hours since the udder was last emptied. [h]
    None with fewer than three pails, and past 24 h. Raises ValueError below zero.
    """
    at_least_zero(elapsed_h=elapsed_h)
    usual = usual_rate(rates_kg_h)
    if usual is None or elapsed_h > ESTIMATE_MOST_H:
        return None
    full_h = filled_h(elapsed_h)
    least, middle, most = usual
    return least * full_h, middle * full_h, most * full_h


def _weighted_median(rates: Sequence[float], weights: Sequence[float]) -> float:
    """The first, from the least, with which half of the weight is reached."""
    ordered = sorted(zip(rates, weights, strict=True))
    reached = accumulate(weight for _, weight in ordered)
    half = sum(weights) / 2
    return next(rate for (rate, _), so_far in zip(ordered, reached, strict=True) if so_far >= half)


def _counting(weights: Sequence[float]) -> float:
    """As many equal ones as the weights are worth."""
    return sum(weights) ** 2 / sum(each**2 for each in weights)


def _spread(rates: Sequence[float], weights: Sequence[float], middle: float) -> float:
    """Of the logarithms about the middle, as of a sample."""
    off = [max(min(log(rate / middle), FURTHEST), -FURTHEST) for rate in rates]
    squares = sum(weight * each**2 for weight, each in zip(weights, off, strict=True)) / sum(weights)
    counting = _counting(weights)
    return sqrt(squares * counting / (counting - 1))
