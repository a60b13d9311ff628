"""Two books of one farm become one: the union of their rows by id, in any direction, any number of times."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any
from uuid import UUID

from msgspec import Struct
from sqlalchemy import Connection, text

from store.book.aside import set_aside
from store.book.changed_apart import Apart, ChangedApart, changed_apart, found_apart
from store.book.clock import moment
from store.book.contradictions import Contradiction, contradictions
from store.book.desk import Desk, FileDesk
from store.book.engines import refusal_said
from store.book.errors import BookError, DamagedBook
from store.book.listing import names_of
from store.book.reading.sql import FARM
from store.book.records import RECORDS, Dated, Row
from store.book.words import Kind

FRESH = "FROM other.entry e WHERE e.id NOT IN (SELECT id FROM main.entry)"
SHOWN_MOST = 5
"""So many rows that stand in each other's way are shown."""


class Came(Struct, frozen=True):
    """What one person wrote at one bench and this book did not hold. steps: of rounds; notes apart from them."""

    bench: str
    person: str
    rounds: int
    steps: int
    notes: int


class Merged(Struct, frozen=True):
    """What a merge brought in. changed: by table how many rows of what changes slowly, as plans.

    contradictions: the steps that came in and were written differently here. apart: what both books changed of one
    thing, differently.
    """

    rows: int
    came: tuple[Came, ...]
    changed: tuple[tuple[str, int], ...]
    contradictions: tuple[Contradiction, ...]
    apart: tuple[ChangedApart, ...] = ()


def merge(desk: Desk, other: Path) -> Merged:
    """Add every row of the other book that this one lacks. The other book is only read, on whatever disk it lies.

    Raises BookError if it is a book of another farm, or holds a row with an id of this book and other content; then
    nothing was added.
    """
    if not isinstance(desk, FileDesk):
        raise BookError("Only a book in a file can take another one in. Export the other book, then import its folder.")
    with set_aside(other) as found:
        if found.rows(FARM, {}) != desk.rows(FARM, {}):
            raise BookError(f"{other} is the book of another farm. Nothing was merged.")
        try:
            fresh, came, apart, added = _taken_in(desk, found.place)
        except DamagedBook:
            desk.forget_half_written()
            raise
    names = names_of(desk)
    new = tuple(each for each in contradictions(desk) if any(version.id in fresh for version in each.versions))
    dated = tuple((str(record.__tablename__), added[record]) for record in added if issubclass(record, Dated))
    return Merged(
        sum(added.values()),
        tuple(sorted((_came(row, names) for row in came), key=lambda each: (each.bench, each.person))),
        tuple((table, count) for table, count in dated if count),
        new,
        changed_apart(desk, apart),
    )


def _taken_in(desk: FileDesk, other: str) -> tuple[set[UUID], list[Any], Apart, dict[type[Row], int]]:
    with refusal_said("Nothing was merged"), desk.engine().connect() as connection:
        connection.exec_driver_sql("COMMIT")
        connection.exec_driver_sql("ATTACH DATABASE ? AS other", (other,))
        try:
            return _union(connection)
        finally:
            connection.exec_driver_sql("DETACH DATABASE other")
            connection.exec_driver_sql("BEGIN")


def _union(connection: Connection) -> tuple[set[UUID], list[Any], Apart, dict[type[Row], int]]:
    """The ids of the entries that came, what each bench and person wrote of them, what both changed, and how many rows
    by record.
    """
    connection.exec_driver_sql("BEGIN IMMEDIATE")
    try:
        connection.exec_driver_sql("PRAGMA defer_foreign_keys=ON")
        in_the_way = [line for record in RECORDS for line in _in_the_way(connection, record)]
        if in_the_way:
            raise BookError("\n".join(["Nothing was merged: rows with one id but other content.", *in_the_way]))
        fresh = {UUID(bytes=row[0]) for row in connection.exec_driver_sql(f"SELECT e.id {FRESH}")}
        came, apart = list(connection.exec_driver_sql(_WHO)), found_apart(connection)
        added = {record: _add(connection, record) for record in RECORDS}
        connection.exec_driver_sql("COMMIT")
    except Exception:
        connection.exec_driver_sql("ROLLBACK")
        raise
    return fresh, came, apart, added


_WHO = f"""
SELECT e.bench, e.person_id, count(DISTINCT e.day || e.slot),
  sum(CASE WHEN e.kind NOT IN ('{Kind.NOTE}', '{Kind.ROUND}') THEN 1 ELSE 0 END),
  sum(CASE WHEN e.kind = '{Kind.NOTE}' THEN 1 ELSE 0 END)
{FRESH} GROUP BY e.bench, e.person_id
"""


def _came(row: Any, names: dict[UUID, str]) -> Came:
    bench, person, rounds, steps, notes = row
    return Came(bench, names.get(UUID(bytes=person), ""), rounds, steps, notes)


def _add(connection: Connection, record: type[Row]) -> int:
    table, columns = f'"{record.__tablename__}"', ", ".join(record.model_fields)
    statement = f"INSERT INTO main.{table} ({columns}) SELECT {columns} FROM other.{table} WHERE true ON CONFLICT(id) DO NOTHING"  # noqa: E501
    return connection.execute(text(statement)).rowcount


def _in_the_way(connection: Connection, record: type[Row]) -> Iterator[str]:
    """Rows that stand in both books under one id with other content: which one is right only the keeper knows."""
    table, columns = f'"{record.__tablename__}"', list(record.model_fields)
    differ = " OR ".join(f"m.{column} IS NOT o.{column}" for column in columns)
    both = f"FROM main.{table} m JOIN other.{table} o ON o.id = m.id WHERE {differ}"
    count = connection.exec_driver_sql(f"SELECT count(*) {both}").scalar_one()
    listed = ", ".join(f"{side}.{column}" for side in "mo" for column in columns)
    for row in connection.exec_driver_sql(f"SELECT {listed} {both} ORDER BY m.id LIMIT {SHOWN_MOST}"):
        pairs = zip(columns, row[: len(columns)], row[len(columns) :], strict=True)
        yield f"{record.__tablename__}: {'; '.join(_both(*pair) for pair in pairs if pair[1] != pair[2])}."
    if count > SHOWN_MOST:
        yield f"{record.__tablename__}: and {count - SHOWN_MOST} more."


def _both(column: str, mine: object, its: object) -> str:
    return f"{column} {_shown(column, mine)} here, {_shown(column, its)} there"


def _shown(column: str, value: object) -> str:
    if isinstance(value, bytes):
        return str(UUID(bytes=value))
    if isinstance(value, int) and column.endswith(("_at", "_from")):
        return moment(value).isoformat(sep=" ")
    return "nothing" if value is None else f"«{value}»"
