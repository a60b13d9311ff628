"""How a number says itself in the farm's units: as its place shows it, and exactly. Numbers come in kg, L, C, hours."""

import re
from collections.abc import Callable
from datetime import date, datetime

from store.book.words import Units
from store.husbandry.measures import in_quarters as told_in_quarters
from store.husbandry.moments import BEGAN, DAY, HOUR, MOMENT
from store.husbandry.units import CM_PER_INCH, KG_PER_LB, KM_PER_MILE, L_PER_US_GAL, celsius, fahrenheit
from store.husbandry.why import Value
from store.round.saying import bare
from tui.words import day, hours, in_quarters, when

IN_US = {"kg": ("lb", KG_PER_LB), "L": ("US gal", L_PER_US_GAL), "cm": ("in", CM_PER_INCH), "km": ("mi", KM_PER_MILE)}
"""What stands for a unit on a farm that has set US units, and how much of the unit it is."""
IN_WORDS = {"C": "degrees C", "F": "degrees F"}
COUNTED = ("days", "full days", "rounds", "heads", "steps", "pails", "bales", "months", "points")
"""Units that are whole things."""
MONEY = re.compile(r"[A-Z]{3}|[£$€]")
"""A unit that is some farm's money."""


def in_units(amount: float, unit: str, units: Units) -> tuple[float, str]:
    """An amount and its unit as the farm has set them; a unit may be one over another, as `kg/h`, `EUR/kg`."""
    if units is not Units.US:
        return in_metric(amount, unit)
    if unit == "C":
        return fahrenheit(amount), "F"
    above, *below = unit.split("/")
    sign, size = IN_US.get(above, (above, 1.0))
    amount /= size
    for each in below:
        name, size = IN_US.get(each, (each, 1.0))
        amount, sign = amount * size, f"{sign}/{name}"
    return amount, sign


def in_metric(amount: float, unit: str) -> tuple[float, str]:
    """The same on a metric farm, of an equation that is printed in US units."""
    if unit == "F":
        return celsius(amount), "C"
    return (amount * KM_PER_MILE, "km/h") if unit == "mph" else (amount, unit)


def moment_of(value: Value) -> datetime:
    """The moment that a number of the unit `time` is."""
    return BEGAN + value.amount * HOUR


def shown(value: Value, units: Units, zone: str) -> str:
    """As its place shows it: `2.7 kg`, `146.8 L`, `3 1/2 scoops`, `11 h 52`, `Tue 10 Mar 18:20`."""
    return _said(value, units, zone, PLACES.get(value.unit, bare))


def exactly(value: Value, units: Units, zone: str) -> str:
    """The same with all that is worth saying: `2.667 kg`."""
    return _said(value, units, zone, _plain)


def _said(value: Value, units: Units, zone: str, number: Callable[[float], str]) -> str:
    if value.unit == DAY:
        return day(date.fromordinal(round(value.amount)))
    if value.unit == MOMENT:
        return when(moment_of(value), zone)
    if value.unit == "h":
        return f"{value.amount:g} h" if value.amount == round(value.amount, 1) else hours(value.amount)
    amount, unit = in_units(value.amount, value.unit, units)
    if MONEY.fullmatch(unit.split("/")[0]):
        return f"{amount:.4f} {unit}" if number is _plain and _is_fine(amount) else f"{amount:.2f} {unit}"
    whole = in_quarters(amount) if value.equation is told_in_quarters or _counts(amount, unit) else None
    return f"{whole or number(amount)} {_of_one(unit) if amount == 1 else IN_WORDS.get(unit, unit)}".strip()


def _counts(amount: float, unit: str) -> bool:
    """Whether it is a whole number of something, and no weight or volume, which is said with its places."""
    return amount == round(amount) and unit not in ("kg", "lb", "L", "US gal")


def _of_one(unit: str) -> str:
    """The unit of one of what is counted: `1 day`."""
    return unit.removesuffix("s") if unit in COUNTED else IN_WORDS.get(unit, unit)


def _is_fine(amount: float) -> bool:
    """Whether so little money that two places say too little of it."""
    return abs(amount) < 1 and round(amount, 2) != round(amount, 4)


def _tenths(number: float) -> str:
    return f"{number:.1f}"


def _thousandths(number: float) -> str:
    return f"{number:.3f}"


def _plain(number: float) -> str:
    """Up to three places, none that say nothing."""
    return f"{number:.0f}" if abs(number) >= 1000 else f"{number:.3f}".rstrip("0").rstrip(".")


PLACES = {"L": _tenths, "kg/h": _thousandths, "points": _plain}
"""Units that the places say with other places than the rest."""
