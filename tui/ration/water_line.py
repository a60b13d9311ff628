"""What they drink, in one line below a ration."""

from collections.abc import Iterator

from store.book.words import Units
from store.herd.forecast import degrees
from store.husbandry.units import celsius
from store.husbandry.weather.water import LEAST_F, MOST_F
from store.husbandry.why import Value
from store.ration.water import NIGHT, Drinks, drinks
from tui.ration.seen import Seen
from tui.why.amounts import in_units


def water_words(seen: Seen) -> Iterator[str]:
    """`WATER  about 55 to 70 L a day at nights of 10 C (a starting value).`"""
    found = drinks(seen.case, seen.after)
    if found is None:
        return
    units, many = seen.farm.units, len(seen.case.heads)
    (least, unit), (most, _) = (in_units(each.amount, each.unit, units) for each in (found.least, found.most))
    who = "" if many == 1 else f"all {many}, "
    yield f"WATER  {who}about {least:.0f} to {most:.0f} {unit} a day {' and '.join(_air(found, units))}."


def water_numbers(seen: Seen) -> Iterator[Value]:
    """Both ends of it."""
    found = drinks(seen.case, seen.after)
    yield from (found.least, found.most) if found else ()


def _air(found: Drinks, units: Units) -> Iterator[str]:
    if found.milking:
        yield f"at nights of {degrees(NIGHT.amount, units)} ({NIGHT.came})"
    if found.others:
        least, most = (degrees(celsius(each), units) for each in (LEAST_F, MOST_F))
        yield f"at {least} to {most}, as for beef cattle"
