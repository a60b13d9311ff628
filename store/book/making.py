"""A new, empty book in today's form."""

from sqlalchemy import text
from sqlmodel import SQLModel

from store.book.desk import Desk
from store.book.form import HEAD
from store.book.guards import set_guards
from store.book.records import RECORDS

VERSION_TABLE = "CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL PRIMARY KEY)"


def make_book(desk: Desk) -> None:
    """Make every table, index and guard, and say the form; all in one transaction."""
    tables = [SQLModel.metadata.tables[str(record.__tablename__)] for record in RECORDS]
    with desk.engine().begin() as connection:
        SQLModel.metadata.create_all(connection, tables=tables, checkfirst=False)
        set_guards(connection)
        connection.execute(text(VERSION_TABLE))
        connection.execute(text("INSERT INTO alembic_version VALUES (:head)"), {"head": HEAD})
