"""Which dated rows make a change so, from a moment on, among those that are there and those that are planned.

A row holds every column, and holds until the next one begins. So a change of one column has to be repeated in each row
that begins later, or it would end there: a cow that is sold today would be back on the day her class was to change.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from typing import Any, TypeAlias

from store.book.clock import MICROSECOND
from store.book.register import Values

Step: TypeAlias = tuple[datetime, Mapping[str, Any]]
"""From a moment on some columns are so."""
OWN = ("id", "begins_at", "written_at")
"""Columns that every dated row has for itself."""


def rows_of(
    course: Sequence[Values], now: datetime, steps: Sequence[Step], *, take_back: bool = False, whole: bool = False
) -> Iterator[dict[str, Any]]:
    """The rows to add so that the steps hold. course: every row of one thing, in order. steps: in order, at least one.

    Only a column that differs from the row in force now is changed. What is planned for later keeps its other columns;
    take_back: it keeps none. whole: every column of a step is so, whatever is in force now. A row that would change
    nothing is left out.
    """
    shown = at(course, now)
    changes = [(moment, dict(values) if whole else _changed(shown, values)) for moment, values in steps]
    first = steps[0][0]
    effective = kept(at(course, first))
    for moment in sorted({*(each for each, _ in steps), *(r["begins_at"] for r in course if r["begins_at"] > first)}):
        planned = at(course, moment)
        change = next(change for begins, change in reversed(changes) if begins <= moment)
        row = {**(effective if take_back and moment > first else kept(planned)), **change}
        here = planned is not None and planned["begins_at"] == moment
        if row != (kept(planned) if here else effective):
            yield row | _times(planned if here else None, moment, now)
        effective = row


def at(course: Sequence[Values], moment: datetime) -> Values | None:
    """The row in force at a moment, also of those to come."""
    return next((row for row in reversed(course) if row["begins_at"] <= moment), None)


def kept(row: Values | None) -> dict[str, Any]:
    """Its columns but those that every row has for itself; none of no row."""
    return {name: value for name, value in (row or {}).items() if name not in OWN}


def _changed(shown: Values | None, values: Mapping[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in values.items() if shown is None or shown[name] != value}


def _times(replaced: Values | None, moment: datetime, now: datetime) -> dict[str, datetime]:
    """When a row begins; written after the one it takes the place of, whatever the clock said then."""
    late = replaced["written_at"] if replaced else None
    begins = {} if moment == now else {"begins_at": moment}
    return begins | ({"written_at": late + MICROSECOND} if late and late >= now else {})
