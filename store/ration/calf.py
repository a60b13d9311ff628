"""A calf that lives on milk: what it drinks, its first colostrum, and whether it eats enough dry feed to be weaned."""

from collections.abc import Iterator
from datetime import date, timedelta

from msgspec import Struct
from msgspec.structs import replace

from store.book.reading.stock import read_rows
from store.book.stocks import Row
from store.book.words import SettingName, State
from store.husbandry.calf.milk import AMPLE_PERCENT, LEAST_PERCENT, allowance_kg, colostrum_kg
from store.husbandry.calf.weaning import days_enough, ready
from store.husbandry.starting import WEAN_STARTER_KG
from store.husbandry.why import Value, given, total
from store.ration.asked import Asked
from store.ration.classes import is_on_milk
from store.ration.parts import Case, Head

DAYS = 7
"""So many whole days are looked back at."""
NEW_DAYS = 1
"""Born today or yesterday: it may be younger than a day."""


class CalfDay(Struct, frozen=True):
    """One calf. least_kg, ample_kg: milk a day; colostrum_kg: in its first hours; None: nobody weighed it.

    eaten_kg: dry feed by day, newest whole day first; None: of a day nothing is in the book. enough_kg: as much, three
    days running, and it can be weaned. is_new: it may be younger than a day. gained_kg_day: by its last two weights.
    """

    enough_kg: Value
    eaten_kg: tuple[Value | None, ...] = ()
    least_kg: Value | None = None
    ample_kg: Value | None = None
    colostrum_kg: Value | None = None
    is_new: bool = False
    gained_kg_day: Value | None = None

    @property
    def days_enough(self) -> int:
        """Days running, up to the last whole one, on which it ate enough."""
        return days_enough(self._eaten, self.enough_kg.amount)

    @property
    def can_be_weaned(self) -> bool:
        """Whether these are as many as are asked."""
        return ready(self._eaten, self.enough_kg.amount)

    @property
    def _eaten(self) -> list[float | None]:
        return [each.amount if each else None for each in self.eaten_kg]


def read_calf(asked: Asked, case: Case, gained_kg_day: Value | None) -> CalfDay | None:
    """Of a case of one calf on milk; None for any other. gained_kg_day: as it was found."""
    head = case.heads[0] if case.subject.animal_id and case.heads else None
    if head is None or not is_on_milk(asked, head):
        return None
    day = CalfDay(
        asked.setting(SettingName.WEAN_STARTER_KG, WEAN_STARTER_KG),
        tuple(_eaten(asked, case, head)),
        is_new=head.age_days is not None and head.age_days.amount <= NEW_DAYS,
        gained_kg_day=gained_kg_day,
    )
    return _by_weight(day, head.weight_kg) if head.weight_kg else day


def _by_weight(day: CalfDay, weight_kg: Value) -> CalfDay:
    return replace(
        day,
        least_kg=allowance_kg.of("milk, at least", weight_kg=weight_kg, percent_of_weight=LEAST_PERCENT),
        ample_kg=allowance_kg.of("milk where it may drink", weight_kg=weight_kg, percent_of_weight=AMPLE_PERCENT),
        colostrum_kg=colostrum_kg.of(weight_kg=weight_kg, percent_of_weight=LEAST_PERCENT) if day.is_new else None,
    )


def _eaten(asked: Asked, case: Case, head: Head) -> Iterator[Value | None]:
    """What it ate of what is no forage, day by day, as far as the rounds say it."""
    days = [asked.today - timedelta(days=back) for back in range(1, DAYS + 1)]
    heads = len(asked.snapshot.heads(head.animal.pen_id)) if head.animal.pen_id else 1
    parts: dict[date, list[Value]] = {}
    for feed in case.feeds:
        for row in () if feed.forage else read_rows(asked.desk, feed.feed.id, days[-1], days[0]):
            kg = _its_part(row, head, heads)
            if kg is not None:
                came = f"fed on {asked.said(row.turn.day)}"
                parts.setdefault(row.turn.day, []).append(given(kg, feed.feed.name, "kg", came))
    for day in days:
        yield total("dry feed that it ate", "kg", parts[day]) if day in parts else None


def _its_part(row: Row, head: Head, heads: int) -> float | None:
    """What it had of a row: its own whole, of its pen's as much as each head. None: it is not said, or not its own."""
    if row.state is not State.DONE or row.given_kg is None:
        return None
    eaten_kg = max(row.given_kg - (row.left_kg or 0.0), 0.0)
    if row.subject.animal_id == head.animal.id:
        return eaten_kg
    return eaten_kg / max(heads, 1) if row.subject.pen_id and row.subject.pen_id == head.animal.pen_id else None
