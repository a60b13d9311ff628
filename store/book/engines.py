"""SQLAlchemy engines for both desks. Heavy: nothing on the way to the first frame imports this."""

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import contextmanager

from pydantic import ValidationError
from sqlalchemy import Connection, Engine, create_engine, event, text
from sqlalchemy.exc import ArgumentError, SQLAlchemyError
from sqlalchemy.pool import StaticPool

from store.book.desk import FoundRow, Values
from store.book.errors import DamagedBook


@contextmanager
def writing_said(what: str) -> Iterator[None]:
    """Raise DamagedBook, in a sentence, where the disk or the server refuses to write."""
    try:
        yield
    except SQLAlchemyError as error:
        raise DamagedBook(f"{what}: {said_by(error)}.") from error


def said_by(error: Exception) -> str:
    """The first line of what the database says; of a record, which figure it does not take."""
    if isinstance(error, ValidationError):
        first = error.errors()[0]
        return f"{first['loc'][0] if first['loc'] else 'the record'} = {first['input']}, {first['msg'].lower()}"
    lines = str(getattr(error, "orig", None) or error).strip().splitlines()
    return lines[0] if lines else type(error).__name__


def over_connection(connection: sqlite3.Connection) -> Engine:
    """An engine that writes through the connection that is already open, one immediate transaction at a time."""
    engine = create_engine("sqlite://", creator=lambda: connection, poolclass=StaticPool)
    event.listen(engine, "begin", _begin_immediate)
    return engine


def at_url(url: str) -> Engine:
    """An engine for a server. Raises DamagedBook for a URL that is none."""
    try:
        return create_engine(url, pool_pre_ping=True, connect_args={"options": "-c jit=off"})  # short look-ups only
    except (ArgumentError, ImportError, ValueError) as error:
        raise DamagedBook(
            f"This is no address of a PostgreSQL book, or the `postgres` extra is not installed: {error}."
        ) from error


def read_text(engine: Engine, sql: str, values: Values) -> Sequence[FoundRow]:
    """The rows that a statement finds on a server. Raises DamagedBook."""
    try:
        with engine.connect() as connection:
            return [tuple(row) for row in connection.execute(text(sql), values)]
    except SQLAlchemyError as error:
        raise DamagedBook(f"The book cannot be read from the server: {error.__class__.__name__}.") from error


def _begin_immediate(connection: Connection) -> None:
    connection.exec_driver_sql("BEGIN IMMEDIATE")
