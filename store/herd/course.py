"""Where an amount of a plan stands: whether it passes by itself, what lasts, and what is planned after it."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import pairwise, takewhile

from msgspec import Struct

from store.book.facts.feed import PlanRow

LONG_SPELL = timedelta(days=60)
"""No spell of cold, typed in night after night, is longer. Common practice."""


class Course(Struct, frozen=True):
    """One feed of one plan from a moment on. [kg a head]

    now_kg: what is given. lasting_kg: the same without an addition for a few rounds. passing: the rows to come that
    keep and end such an addition. planned: the rows behind them, which are another change.
    """

    now_kg: float
    lasting_kg: float
    passing: tuple[PlanRow, ...] = ()
    planned: tuple[PlanRow, ...] = ()


def course_of(rows: Sequence[PlanRow], at: datetime) -> Course:
    """The course of some rows. rows: oldest first, one in force at the moment.

    What is given passes where the next amount is one that was given before it. Raises ValueError where none is.
    """
    begun, coming = [row for row in rows if row.begins_at <= at], [row for row in rows if row.begins_at > at]
    if not begun or begun[-1].due_kg is None:
        raise ValueError(f"at is {at}; nothing is given then")
    now_kg = begun[-1].due_kg
    before = {row.due_kg for row, after in pairwise(begun) if at - after.begins_at <= LONG_SPELL}
    next_kg = next((row.due_kg for row in coming if row.due_kg != now_kg), None)
    lasting_kg = next_kg if next_kg is not None and next_kg in before else now_kg
    passing = tuple(takewhile(lambda row: row.due_kg in (now_kg, lasting_kg), coming))
    return Course(now_kg, lasting_kg, passing, tuple(coming[len(passing) :]))
