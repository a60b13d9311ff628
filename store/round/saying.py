"""How a sentence or a screen says a weight or a moment: kilograms come in, what is said is what the farm has set."""

from datetime import datetime

from store.book.turn import local
from store.book.words import Units
from store.husbandry.units import KG_PER_LB


def weight(kg: float, units: Units) -> str:
    """A weight with its unit: `2.7 kg`, `0.25 kg`, `6.0 lb`."""
    size, sign = (kg / KG_PER_LB, "lb") if units is Units.US else (kg, "kg")
    return f"{bare(size)} {sign}"


def exact(kg: float, units: Units) -> str:
    """A weight with two places, so that differences add up: `1.35 kg`."""
    return f"{kg / KG_PER_LB:.2f} lb" if units is Units.US else f"{kg:.2f} kg"


def bare(number: float) -> str:
    """A number as one reads it: two places below one, one below a hundred, none above."""
    if number and abs(number) < 0.995:
        return f"{number:.2f}"
    return f"{number:.1f}" if abs(number) < 100 else f"{number:.0f}"


def moment_words(moment: datetime, zone: str) -> str:
    """`Tue 10 Mar 18:20`, on the farm's wall clock."""
    wall = local(moment, zone)
    return f"{wall:%a} {wall.day} {wall:%b %H:%M}"
