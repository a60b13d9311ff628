"""A feed change: dated rows of a plan, step by step. Where it stands, and the same rows a day later."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise

from store.book.drafts import PlanDraft
from store.book.facts import PlanRow
from store.round.confirm import Hand
from store.round.steps import DueFeed, FeedStep

DAY = timedelta(days=1)
ONE_CHANGE = timedelta(days=7)
"""Rows that follow each other within so many days are one change. Common practice: one to two weeks in all."""


@dataclass(frozen=True, slots=True)
class Change:
    """A change under way.

    was_kg: the amount a day before the present step began. next: the step to come, None at the last one.
    """

    day: int
    days: int
    was_kg: float
    next: PlanRow | None


def change_of(rows: Sequence[PlanRow], now: datetime) -> Change | None:
    """The change that the present amount belongs to. rows: oldest first. None: nothing changes these days."""
    begun = [row for row in rows if row.begins_at <= now]
    coming = rows[len(begun) :]
    if len(begun) < 2 or (not coming and now - begun[-1].begins_at >= DAY):
        return None
    first, last = _ends(rows, len(begun) - 1)
    was_kg = _due_kg(rows, begun[-1].begins_at - DAY)
    if first == 0 or was_kg is None or (last == len(begun) - 1 and now - begun[-1].begins_at >= DAY):
        return None
    days = (rows[last].begins_at - rows[first].begins_at) // DAY + 1
    return Change((now - rows[first].begins_at) // DAY + 1, days, was_kg, coming[0] if last >= len(begun) else None)


def _ends(rows: Sequence[PlanRow], at: int) -> tuple[int, int]:
    """The first and the last row of the change that a row belongs to."""
    apart = [n for n, (one, other) in enumerate(pairwise(rows)) if other.begins_at - one.begins_at > ONE_CHANGE]
    return max((n + 1 for n in apart if n < at), default=0), min((n for n in apart if n >= at), default=len(rows) - 1)


def held(rows: Sequence[PlanRow], now: datetime) -> tuple[PlanRow, ...]:
    """The rows to add so that from now on everything comes a day later; today's step too, if it began today."""
    later = [row for row in rows if row.begins_at > now]
    began_today = [row for row in rows if now - DAY < row.begins_at <= now]
    moments = {row.begins_at for row in later} | {row.begins_at + DAY for row in (*began_today, *later)}
    moments |= {now} if began_today else set()
    return tuple(PlanRow(at, _due_kg(rows, at - DAY)) for at in sorted(moments))


def hold(hand: Hand, step: FeedStep) -> Iterator[tuple[DueFeed, PlanDraft]]:
    """For each feed of a step whose amount is being changed: the rows that make all of it come a day later."""
    for due in step.due:
        if change_of(due.rows, hand.now):
            told_id = due.told.id if due.told else None
            rows = held(due.rows, hand.now)
            yield due, PlanDraft(step.subject, hand.turn.slot, due.feed.id, told_id, due.position, rows)


def _due_kg(rows: Sequence[PlanRow], at: datetime) -> float | None:
    return next((row.due_kg for row in reversed(rows) if row.begins_at <= at), None)
