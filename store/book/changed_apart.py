"""What changes slowly and was changed in two books since they parted, as an animal moved at both benches: both rows are
kept, the later counts, and it is said.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from functools import partial
from typing import Any
from uuid import UUID

from msgspec import Struct
from sqlalchemy import Connection
from sqlmodel import Session

from store.book.desk import Desk
from store.book.listing import Names, line_words, names_of
from store.book.records import RECORDS, Dated
from store.book.register import SAME

DATES = ("id", "begins_at", "written_at")
Apart = Mapping[str, tuple[frozenset[UUID], frozenset[UUID]]]
"""By table the rows of things that both books changed: of this book, and of the other."""


class Side(Struct, frozen=True):
    """How one book has it. here: this book, not the other one. words: its columns."""

    here: bool
    written_at: datetime
    words: str


class ChangedApart(Struct, frozen=True):
    """One thing that both books changed, and differently; the side that counts is the last. table: what of it."""

    table: str
    name: str
    sides: tuple[Side, Side]


def found_apart(connection: Connection) -> Apart:
    """Of two books that are not merged yet (`main`, `other`): rows of one thing of which the other book lacks each."""
    return {table: _of_table(connection, table, same) for table, same in SAME.items()}


def _of_table(connection: Connection, table: str, same: Sequence[str]) -> tuple[frozenset[UUID], frozenset[UUID]]:
    of_one = " AND ".join(f"m.{column} IS o.{column}" for column in same)
    found = connection.exec_driver_sql(
        f"SELECT m.id, o.id FROM main.{table} m JOIN other.{table} o ON {of_one}"
        f" WHERE m.id NOT IN (SELECT id FROM other.{table}) AND o.id NOT IN (SELECT id FROM main.{table})"
    ).all()
    here, there = ({UUID(bytes=row[side]) for row in found} for side in (0, 1))
    return frozenset(here), frozenset(there)


def changed_apart(desk: Desk, apart: Apart) -> tuple[ChangedApart, ...]:
    """Once they are merged: what was changed differently, in words."""
    names = names_of(desk) if any(map(any, apart.values())) else {}
    records = {str(record.__tablename__): record for record in RECORDS if issubclass(record, Dated)}
    with Session(desk.engine()) as session:
        newest = partial(_newest, session)
        found = (
            (table, newest(records[table], ids[0]), newest(records[table], ids[1])) for table, ids in apart.items()
        )
        return tuple(each for table, here, there in found for each in _differing(table, here, there, names))


def _newest(session: Session, record: type[Dated], ids: frozenset[UUID]) -> dict[tuple[Any, ...], Dated]:
    """By thing the row that counts of some."""
    rows = [row for id_ in ids if (row := session.get(record, id_)) is not None]
    return {_key(row): row for row in sorted(rows, key=_order)}


def _differing(
    table: str, here: Mapping[Any, Dated], there: Mapping[Any, Dated], names: Names
) -> Iterator[ChangedApart]:
    for key in sorted(here.keys() & there.keys(), key=str):
        both = sorted((here[key], there[key]), key=_order)
        one, other = (Side(row is here[key], row.written_at, _words(row, names)) for row in both)
        if one.words != other.words:
            whose = (names.get(part, "") if isinstance(part, UUID) else str(part) for part in key if part is not None)
            yield ChangedApart(table, ", ".join(filter(None, whose)), (one, other))


def _key(row: Dated) -> tuple[Any, ...]:
    return tuple(getattr(row, column) for column in SAME[str(row.__tablename__)])


def _order(row: Dated) -> tuple[datetime, datetime, UUID]:
    return row.begins_at, row.written_at, row.id


def _words(row: Dated, names: Names) -> str:
    return line_words(row, names, (*DATES, *SAME[str(row.__tablename__)])) or "nothing"
