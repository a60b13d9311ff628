"""Entries of a round with their figures, whatever kinds of figures there are."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime
from enum import StrEnum
from typing import Any, get_args, get_type_hints
from uuid import UUID

from msgspec.structs import fields

from store.book.clock import moment
from store.book.desk import FoundRow
from store.book.drafts import Subject
from store.book.figures import FIGURES, Figure
from store.book.reading import sql
from store.book.reading.facts import maybe_uid, uid
from store.book.snapshot import Written
from store.book.words import Kind, State

Rows = Callable[[str], Sequence[FoundRow]]
Turner = Callable[[Any], Any]


def read_entries(rows: Rows, kinds: Iterable[type[Figure]] = FIGURES) -> tuple[Written, ...]:
    """Every entry of a round, in the order written, its history too. kinds: the figures that are wanted of it."""
    figures: dict[UUID, tuple[Figure, ...]] = {}
    for kind in kinds:
        statement, turners = STATEMENTS[kind]
        for entry, *values in rows(statement):
            figure = kind(*(turn(value) for turn, value in zip(turners, values, strict=True)))
            figures[uid(entry)] = (*figures.get(uid(entry), ()), figure)
    return tuple(written(row, figures) for row in rows(sql.ENTRIES))


def written(row: FoundRow, figures: Mapping[UUID, tuple[Figure, ...]]) -> Written:
    """One entry of a found row."""
    id_, step_id, kind, animal, pen, task, feed, state, reason, at, since, written_at, person, replaces = row
    return Written(
        id=uid(id_),
        step_id=uid(step_id),
        kind=Kind(kind),
        subject=Subject(maybe_uid(animal), maybe_uid(pen), maybe_uid(task), maybe_uid(feed)),
        state=State(state),
        reason=reason,
        happened_at=moment(at),
        happened_from=None if since is None else moment(since),
        written_at=moment(written_at),
        person_id=uid(person),
        replaces_id=maybe_uid(replaces),
        figures=figures.get(uid(id_), ()),
    )


def _turner(hint: Any) -> Turner:
    """How a found cell becomes a field: by the field's own type."""
    kind = next(iter(each for each in get_args(hint) or (hint,) if each is not type(None)))
    if kind is UUID:
        return maybe_uid
    if kind is bool:
        return bool
    if isinstance(kind, type) and issubclass(kind, StrEnum):
        return lambda value: None if value is None else kind(value)
    if kind is datetime:
        return lambda value: None if value is None else moment(value)
    return lambda value: value


def _statement(kind: type[Figure]) -> tuple[str, tuple[Turner, ...]]:
    hints = get_type_hints(kind)
    names = [each.name for each in fields(kind)]
    return sql.figures(kind.TABLE, names), tuple(_turner(hints[name]) for name in names)


STATEMENTS = {kind: _statement(kind) for kind in FIGURES}
