"""Two books of one farm become one: the union of their rows by id, in any direction, any number of times."""

from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

from sqlalchemy import Connection, text

from store.book.desk import Desk, FileDesk
from store.book.errors import BookError
from store.book.form import HEAD
from store.book.opening import form_of
from store.book.reading.sql import FARM
from store.book.records import RECORDS


def merge(desk: Desk, other: Path) -> int:
    """Add every row of the other book that this one lacks; how many. The other book is only read.

    Raises BookError if it is a book of another farm or form; then nothing was added.
    """
    if not isinstance(desk, FileDesk):
        raise BookError("Only a book in a file can take another one in. Export the other book, then import its folder.")
    _check(desk, other)
    with desk.engine().connect() as connection:
        connection.exec_driver_sql("COMMIT")
        connection.exec_driver_sql("ATTACH DATABASE ? AS other", (str(other),))
        try:
            return _union(connection)
        finally:
            connection.exec_driver_sql("DETACH DATABASE other")
            connection.exec_driver_sql("BEGIN")


def _check(desk: Desk, other: Path) -> None:
    with closing(FileDesk(other)) as found:
        if form_of(found) != HEAD:
            raise BookError(f"{other} has an older form. Open it once with this Penwalk, then merge.")
        if found.rows(FARM, {}) != desk.rows(FARM, {}):
            raise BookError(f"{other} is the book of another farm. Nothing was merged.")


def _contradictions(connection: Connection) -> Iterator[str]:
    """Rows that stand in both books under one id with other content: which one is right only the keeper knows."""
    for record in RECORDS:
        table = f'"{record.__tablename__}"'
        columns = ", ".join(record.model_fields)
        both = f"SELECT id FROM main.{table} INTERSECT SELECT id FROM other.{table}"
        mine, theirs = (f"SELECT {columns} FROM {side}.{table} WHERE id IN ({both})" for side in ("main", "other"))
        count = connection.execute(text(f"SELECT count(*) FROM ({mine} EXCEPT {theirs})")).scalar_one()
        if count:
            yield f"{count} in {record.__tablename__}"


def _union(connection: Connection) -> int:
    added = 0
    connection.exec_driver_sql("BEGIN IMMEDIATE")
    try:
        connection.exec_driver_sql("PRAGMA defer_foreign_keys=ON")
        apart = list(_contradictions(connection))
        if apart:
            raise BookError(f"Nothing was merged: rows with one id but other content: {', '.join(apart)}.")
        for record in RECORDS:
            table = f'"{record.__tablename__}"'
            columns = ", ".join(record.model_fields)
            statement = f"INSERT INTO main.{table} ({columns}) SELECT {columns} FROM other.{table} WHERE true ON CONFLICT(id) DO NOTHING"  # noqa: E501
            added += connection.execute(text(statement)).rowcount
        connection.exec_driver_sql("COMMIT")
    except Exception:
        connection.exec_driver_sql("ROLLBACK")
        raise
    return added
