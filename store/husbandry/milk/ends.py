"""Her rate from pail to pail, and the ends of her usual pail, each as an equation of her own rates and hours."""

from collections.abc import Callable

from store.husbandry.bounds import above_zero, at_least_zero
from store.husbandry.milk.usual import MEASURED, usual_rate
from store.husbandry.why import ARITHMETIC, Equation, equation


@equation("an hour", "kilograms / hours", "kg/h", ARITHMETIC)
def an_hour_kg(milk_kg: float, hours: float) -> float:
    """What a pail is for each hour that it filled. [kg/h] Raises ValueError below zero, and for no hours."""
    at_least_zero(milk_kg=milk_kg)
    above_zero(hours=hours)
    return milk_kg / hours


def _end(at: int) -> Callable[..., float]:
    """One of least, middle and most. Raises ValueError for fewer than three rates."""

    def formula(full_h: float, **rates_kg_h: float) -> float:
        found = usual_rate(tuple(rates_kg_h.values()))
        if found is None:
            raise ValueError(f"rates_kg_h are {len(rates_kg_h)}; three or more make a usual pail")
        return found[at] * full_h

    return formula


def _usual(name: str, reads: str, at: int) -> "Equation[...]":
    words = f"{reads} her last pails for an hour at full rate, the newer counting more, x hours at full rate since then"
    return Equation(name, words, "kg", MEASURED, _end(at))


LEAST = _usual("her usual, least", "the low end (19 of 20 lie above) of", 0)
MIDDLE = _usual("her usual, middle", "the middle of", 1)
MOST = _usual("her usual, most", "the high end (19 of 20 lie below) of", 2)
