"""No row is ever updated or deleted: the database itself refuses it, on both kinds."""

from sqlalchemy import Connection, inspect, text

from store.book.records import RECORDS

REFUSAL = "rows of the book are added, never changed"

_SQLITE = """
CREATE TRIGGER IF NOT EXISTS {table}_no_{verb} BEFORE {verb} ON "{table}"
BEGIN SELECT RAISE(ABORT, '{refusal}'); END
"""
_SERVER_FUNCTION = f"""
CREATE OR REPLACE FUNCTION penwalk_refuse() RETURNS trigger LANGUAGE plpgsql AS
$$ BEGIN RAISE EXCEPTION '{REFUSAL}'; END $$
"""
_SERVER = """
CREATE OR REPLACE TRIGGER {table}_no_{verb} BEFORE {verb} ON "{table}"
FOR EACH {each} EXECUTE FUNCTION penwalk_refuse()
"""


def set_guards(connection: Connection) -> None:
    """Make every guard that is missing. A rebuilt table loses its guards without a word: call this after."""
    server = connection.dialect.name == "postgresql"
    if server:
        connection.execute(text(_SERVER_FUNCTION))
    for table in _tables(connection):
        for verb in ("UPDATE", "DELETE"):
            _guard(connection, table, verb, "ROW")
        if server:
            _guard(connection, table, "TRUNCATE", "STATEMENT")


def drop_guards(connection: Connection) -> None:
    """Lift every guard, for a change of the book's form. Inside the transaction that sets them again."""
    server = connection.dialect.name == "postgresql"
    for table in _tables(connection):
        for verb in ("UPDATE", "DELETE", "TRUNCATE") if server else ("UPDATE", "DELETE"):
            where = f' ON "{table}"' if server else ""
            connection.execute(text(f"DROP TRIGGER IF EXISTS {table}_no_{verb}{where}"))


def _tables(connection: Connection) -> list[str]:
    """The tables of records that the book has: one of an older form lacks some."""
    there = inspect(connection).get_table_names()
    return [name for name in (str(record.__tablename__) for record in RECORDS) if name in there]


def _guard(connection: Connection, table: str, verb: str, each: str) -> None:
    form = _SERVER if connection.dialect.name == "postgresql" else _SQLITE
    connection.execute(text(form.format(table=table, verb=verb, each=each, refusal=REFUSAL)))
