"""How the bench says its figures: ratios first; times only to show what a ratio was made of."""

import sys
from collections.abc import Sequence
from statistics import median, quantiles

from msgspec import Struct


class Figures(Struct, frozen=True):
    """The times of one thing over many runs. [s]"""

    name: str
    times_s: Sequence[float]

    @property
    def p50_s(self) -> float:
        """Half were faster. [s]"""
        return median(self.times_s)

    @property
    def p95_s(self) -> float:
        """Nineteen of twenty were faster. [s]"""
        return quantiles(self.times_s, n=20, method="inclusive")[-1]


def say(words: str) -> None:
    """One line of the report."""
    sys.stdout.write(words + "\n")
    sys.stdout.flush()


def tell(*figures: Figures) -> None:
    """The times themselves, a line each."""
    for each in figures:
        times = f"p50 {each.p50_s * 1e3:8.2f} ms   p95 {each.p95_s * 1e3:8.2f} ms"
        say(f"  {each.name:<34} n={len(each.times_s):<4} {times}")


def ratio(over: Figures, under: Figures) -> str:
    """`1.31 (p95 1.40)`."""
    return f"{over.p50_s / under.p50_s:.2f} (p95 {over.p95_s / under.p95_s:.2f})"
