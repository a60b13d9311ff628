"""A feed change: dated rows of a plan, step by step. Where it stands, and how it is held, stepped back or ended.

A day later is the same hour of the farm's own clock on the next day, also where the clock changes.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from msgspec import Struct

from store.book.facts.feed import PlanRow
from store.book.turn import from_wall, local

ONE_CHANGE = timedelta(days=10)
"""Rows that come within so many days are one change: a new feed in two steps takes ten. Common practice."""
PLAN_CHANGED = "plan changed"
"""The mark of the note that goes with a changed plan or measure: taking the note back would not take that back."""


class FeedChange(Struct, frozen=True):
    """A change under way.

    was_kg: the amount a day before the present step began; 0 where a feed begins from nothing. next: the step to come,
    None at the last one.
    """

    day: int
    days: int
    was_kg: float
    next: PlanRow | None


def change_of(rows: Sequence[PlanRow], now: datetime, zone: str) -> FeedChange | None:
    """The change that the present amount belongs to. rows: oldest first. None: nothing changes these days."""
    rows = stepping(rows)
    begun = [row for row in rows if row.begins_at <= now]
    if len(begun) < 2:
        return None
    first, last = _ends(rows, len(begun) - 1)
    first += rows[first].due_kg is None  # it begins from nothing: that row says so
    was_kg = due_kg_at(rows, days_on(begun[-1].begins_at, -1, zone)) or 0.0
    over = last == len(begun) - 1 and days_on(begun[-1].begins_at, 1, zone) <= now
    if not 0 < first < len(begun) or over:
        return None
    coming = rows[len(begun)] if last >= len(begun) else None
    began = rows[first].begins_at
    return FeedChange(_days(began, now, zone), _days(began, rows[last].begins_at, zone), was_kg, coming)


def step_after_hold(rows: Sequence[PlanRow], now: datetime, zone: str) -> PlanRow | None:
    """The step to come, where today is fed as the day before because a change is held; None: it is not held today."""
    begun = with_rows((), [row for row in rows if row.begins_at <= now])
    if len(begun) < 2 or begun[-1].due_kg != begun[-2].due_kg or _days(begun[-1].begins_at, now, zone) != 1:
        return None
    coming = (row for row in stepping(rows) if now < row.begins_at <= now + ONE_CHANGE)
    return next(coming, None)


def held(
    rows: Sequence[PlanRow], slot_begins: datetime, zone: str, days: int = 1, *, no_more: bool = False
) -> tuple[PlanRow, ...]:
    """The rows to add so that from a slot on each day is fed as so many days before, and every later step comes later.

    slot_begins: when the first of these slots begins. no_more: on its first day never above what is planned for it.
    """
    second = days_on(slot_begins, 1, zone)
    coming = [row.begins_at for row in rows if row.begins_at > days_on(slot_begins, -days, zone)]
    replaced = (at for at in coming if at > slot_begins)
    moments = {slot_begins, *replaced, *(days_on(at, days, zone) for at in coming), *([second] if no_more else ())}

    def due_kg(at: datetime) -> float | None:
        then_kg = due_kg_at(rows, days_on(at, -days, zone))
        return min(then_kg or 0.0, due_kg_at(rows, at) or 0.0) or None if no_more and at < second else then_kg

    return tuple(PlanRow(at, due_kg(at)) for at in sorted(moments))


def days_back(rows: Sequence[PlanRow], slot_begins: datetime, zone: str) -> int | None:
    """So many days before a slot it was last as before the step that was fed last; None: nothing of it was fed yet."""
    steps = stepping(rows)
    begun = sum(row.begins_at <= slot_begins for row in steps)
    fed = sum(row.begins_at <= days_on(slot_begins, -1, zone) for row in steps)
    first, _ = _ends(steps, max(begun - 1, 0))
    return _days(steps[fed - 1].begins_at, slot_begins, zone) if fed > max(first, 1) else None


def ended(rows: Sequence[PlanRow], at: datetime) -> tuple[PlanRow, ...]:
    """The rows to add so that what is given at a moment stays, and no later step comes."""
    later = [row.begins_at for row in rows if row.begins_at > at]
    return tuple(PlanRow(begins_at, due_kg_at(rows, at)) for begins_at in later)


def with_rows(rows: Sequence[PlanRow], added: Sequence[PlanRow]) -> tuple[PlanRow, ...]:
    """As the book reads them: of two that begin together the one that was added."""
    return tuple(row for _, row in sorted({row.begins_at: row for row in (*rows, *added)}.items()))


def stepping(rows: Sequence[PlanRow]) -> tuple[PlanRow, ...]:
    """The rows that change the amount: one that repeats it is no step."""
    return tuple(row for at, row in enumerate(rows) if at == 0 or row.due_kg != rows[at - 1].due_kg)


def days_on(at: datetime, days: int, zone: str) -> datetime:
    """The same hour of the farm's own clock, so many days on."""
    return from_wall(local(at, zone).replace(tzinfo=None) + timedelta(days=days), zone)


def _ends(rows: Sequence[PlanRow], at: int) -> tuple[int, int]:
    """The first and the last row of the change that a row belongs to."""
    apart = [n for n, (one, other) in enumerate(pairwise(rows)) if other.begins_at - one.begins_at > ONE_CHANGE]
    return max((n + 1 for n in apart if n < at), default=0), min((n for n in apart if n >= at), default=len(rows) - 1)


def _days(began: datetime, at: datetime, zone: str) -> int:
    """Which day of a change a moment is, from 1."""
    return (local(at, zone).date() - local(began, zone).date()).days + 1


def due_kg_at(rows: Sequence[PlanRow], at: datetime) -> float | None:
    """What is due at a moment. [kg] rows: oldest first."""
    return next((row.due_kg for row in reversed(rows) if row.begins_at <= at), None)
