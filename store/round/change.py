"""A feed change: dated rows of a plan, step by step. Where it stands, and the same rows a day later.

A day later is the same hour of the farm's own clock on the next day, also where the clock changes.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from msgspec import Struct

from store.book.drafts import RowDraft, Subject
from store.book.facts.feed import PlanRow
from store.book.turn import Turn, from_wall, local
from store.round.steps import DueFeed, FeedStep

ONE_CHANGE = timedelta(days=7)
"""Rows that follow each other within so many days are one change. Common practice: one to two weeks in all."""
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
    begun = [row for row in rows if row.begins_at <= now]
    if len(begun) < 2:
        return None
    first, last = _ends(rows, len(begun) - 1)
    first += rows[first].due_kg is None  # it begins from nothing: that row says so
    was_kg = _due_kg(rows, days_on(begun[-1].begins_at, -1, zone)) or 0.0
    over = last == len(begun) - 1 and days_on(begun[-1].begins_at, 1, zone) <= now
    if not 0 < first < len(begun) or over:
        return None
    coming = rows[len(begun)] if last >= len(begun) else None
    began = rows[first].begins_at
    return FeedChange(_days(began, now, zone), _days(began, rows[last].begins_at, zone), was_kg, coming)


def held(rows: Sequence[PlanRow], slot_begins: datetime, zone: str) -> tuple[PlanRow, ...]:
    """The rows to add so that this slot is fed as yesterday's was, and every later step comes a day later.

    slot_begins: when this round's slot of today begins.
    """
    later = [row.begins_at for row in rows if row.begins_at > slot_begins]
    today = [row.begins_at for row in rows if row.begins_at == slot_begins]
    moments = {*today, *later, *(days_on(at, 1, zone) for at in (*today, *later))}
    return tuple(PlanRow(at, _due_kg(rows, days_on(at, -1, zone))) for at in sorted(moments))


def hold(turn: Turn, step: FeedStep, now: datetime, zone: str) -> Iterator[tuple[DueFeed, tuple[RowDraft, ...]]]:
    """For each feed of a step whose amount is being changed: the rows that make all of it come a day later."""
    slot_begins = turn.day_begins(zone)
    for due in step.due:
        if change_of(due.rows, now, zone):
            begun = [row.begins_at for row in due.rows if slot_begins < row.begins_at <= now]
            rows = held(due.rows, max(begun, default=slot_begins), zone)
            yield due, tuple(_plan_row(step.subject, turn.slot, due, row) for row in rows)


def _plan_row(subject: Subject, slot: str, due: DueFeed, row: PlanRow) -> RowDraft:
    values = {
        "slot": slot,
        "animal_id": subject.animal_id,
        "pen_id": subject.pen_id,
        "feed_id": due.feed.id,
        "measure_id": due.told.id if due.told else None,
        "position": due.position,
        "begins_at": row.begins_at,
        "due_kg": row.due_kg,
    }
    return RowDraft("feed_plan", values)


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


def _due_kg(rows: Sequence[PlanRow], at: datetime) -> float | None:
    return next((row.due_kg for row in reversed(rows) if row.begins_at <= at), None)
