"""What the tests of the book share: every row of a book, raw rows put in and taken back, steps confirmed."""

from collections.abc import Mapping
from typing import Any

from sqlalchemy import text
from sqlalchemy.exc import DatabaseError

from store.book.clock import new_id
from store.book.desk import Desk, FoundRow
from store.book.records import RECORDS, Row
from tests.farm import MORNING

Rows = dict[str, list[FoundRow]]


def table_of(record: type[Row]) -> str:
    """The name of a record class's table."""
    return str(record.__tablename__)


def record_of(table: str) -> type[Row]:
    """The record class of a table."""
    return next(record for record in RECORDS if table_of(record) == table)


def all_rows(desk: Desk) -> Rows:
    """Every row of every table, by id, its columns in the order of the record class."""
    return {
        table_of(record): list(
            desk.rows(f'SELECT {", ".join(record.model_fields)} FROM "{table_of(record)}" ORDER BY id', {})
        )
        for record in RECORDS
    }


def count(desk: Desk, table: str) -> int:
    """How many rows a table has."""
    return int(desk.rows(f'SELECT count(*) FROM "{table}"', {})[0][0])


def raw_row(desk: Desk, table: str, filled: str = "id") -> dict[str, Any]:
    """A row as the database holds it, under a new id. filled: a column that is not empty in it, if there is one."""
    names = list(record_of(table).model_fields)
    order = f"({filled} IS NULL), id"
    found = desk.rows(f'SELECT {", ".join(names)} FROM "{table}" ORDER BY {order} LIMIT 1', {})
    return dict(zip(names, found[0], strict=True)) | {"id": new_id(MORNING).bytes}


def refused(desk: Desk, table: str, values: Mapping[str, Any]) -> bool:
    """Whether the database itself refuses a row. The row is taken back in any case."""
    names = ", ".join(values)
    places = ", ".join(f":{name}" for name in values)
    return refusal(desk, f'INSERT INTO "{table}" ({names}) VALUES ({places})', values) is not None


def refusal(desk: Desk, statement: str, values: Mapping[str, Any] | None = None) -> str | None:
    """What the database says against a statement; None if it takes it. What it did is taken back in any case."""
    with desk.engine().connect() as connection:
        try:
            connection.execute(text(statement), dict(values or {}))
        except DatabaseError as error:
            return str(error.orig)
        finally:
            connection.rollback()
    return None
