"""What came into a cow's pails since she calved, by the days of which no milking is missing."""

from collections.abc import Sequence
from datetime import date

from msgspec import Struct

from store.book.reading.lactation import InPails
from store.husbandry.milk.lactation import lactation_kg
from store.husbandry.why import Value, given

CREDITED_DAYS = 45
"""Weighed first so soon after calving, she is credited with as much from calving on. The longest printed interval
between calving and a first weighing is about that. From memory. [d]"""


class SoFar(Struct, frozen=True):
    """together: in her pails since a day, up to the last one weighed, of so many weighed days. [kg]

    from_calving: that day is her calving; else her first whole day in the book.
    """

    together: Value
    since: date
    days: int
    from_calving: bool


def so_far(in_pails: Sequence[InPails], calved_on: date | None, *, shared: bool) -> SoFar | None:
    """Days between are filled in. shared: a calf sucks her, so that what was before the first pail was the calf's."""
    weighed = whole_days(in_pails)
    if not weighed or calved_on is None:
        return None
    first = weighed[0].day
    since = calved_on if not shared and (first - calved_on).days <= CREDITED_DAYS else first
    rows = [((each.day - since).days + 1, _pails(each)) for each in weighed]
    return SoFar(lactation_kg(rows, rows[-1][0]), since, len(weighed), since == calved_on)


def whole_days(in_pails: Sequence[InPails]) -> list[InPails]:
    """Those of which no milking is missing."""
    return [each for at, each in enumerate(in_pails) if not _misses_one(in_pails, at)]


def _misses_one(in_pails: Sequence[InPails], at: int) -> bool:
    """Whether a day has fewer milkings than each day beside it: one was left out, or is still to come."""
    beside = [*in_pails[max(at - 1, 0) : at], *in_pails[at + 1 : at + 2]]
    return bool(beside) and all(in_pails[at].milkings < each.milkings for each in beside)


def _pails(each: InPails) -> Value:
    return given(each.kg, f"in pails on {each.day.day} {each.day:%b}", "kg", f"{each.milkings} weighed")
