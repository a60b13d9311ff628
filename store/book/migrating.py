"""Bringing a book to today's form, from an older one or from nothing. Heavy: opened only when the form differs."""

from pathlib import Path

from alembic import command
from alembic.config import Config

from store.book.desk import Desk, FileDesk
from store.book.engines import refusal_said
from store.book.form import HEAD, READ_FORM
from store.book.guards import drop_guards, set_guards

ANY_TABLE = "SELECT name FROM sqlite_master LIMIT 1"
MIGRATIONS = Path(__file__).parent / "migrations"


def migrate(desk: Desk, to: str = HEAD) -> None:
    """Lift the guards, change the form, set them again: one transaction. A copy of an older file is kept before it."""
    if isinstance(desk, FileDesk) and desk.rows(ANY_TABLE, {}):
        _keep_copy(desk, desk.rows(READ_FORM, {})[0][0])
    with refusal_said("The form of the book was not changed"), desk.engine().begin() as connection:
        drop_guards(connection)
        config = Config()
        config.set_main_option("script_location", str(MIGRATIONS))
        config.attributes["connection"] = connection
        command.upgrade(config, to)
        set_guards(connection)


def _keep_copy(desk: FileDesk, form: str) -> None:
    """A whole copy of the book in the form it has; it gets its name only when it is whole."""
    place = Path(desk.place)
    part, copy = (place.with_name(f"{place.name}.form-{form}{end}") for end in (".part", ""))
    part.unlink(missing_ok=True)
    desk.connection.execute("VACUUM INTO ?", (str(part),))
    part.replace(copy)
