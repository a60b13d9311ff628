"""Two kinds of desk that a book can lie on: a file (SQLite) or a server (PostgreSQL).

Both answer the same SQL text. The file is read by sqlite3 alone, so that the first screen needs no heavier library;
its one connection is later handed to SQLAlchemy, which writes through it.
"""

import fcntl
import os
import sqlite3
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

from store.book.errors import BookInUse, DamagedBook, NoBook
from store.book.form import OLDEST_SQLITE, READ_FORM

if TYPE_CHECKING:
    from sqlalchemy import Engine

Values = dict[str, Any]
FoundRow = tuple[Any, ...]


SQLITE_HEAD = b"SQLite format 3\0"
PRAGMAS = (
    "journal_mode=WAL",
    "synchronous=FULL",
    "foreign_keys=ON",
    "recursive_triggers=ON",
    "busy_timeout=5000",
)


class ReadingDesk(Protocol):
    """Where a book can be read."""

    place: str
    shared: bool
    """Whether other programs may write in between."""

    def rows(self, sql: str, values: Values) -> Sequence[FoundRow]:
        """The rows that a statement with `:name` parameters finds."""


class Desk(ReadingDesk, Protocol):
    """Where a book lies."""

    def engine(self) -> "Engine":
        """The engine that writes. Loads SQLAlchemy."""

    def forget_half_written(self) -> None:
        """After a failed write: make sure that what was said not to be written is not there after a power cut."""

    def close(self) -> None:
        """Let the book go."""


class FileDesk:
    """A book in a file. Holds the lock on it until closed."""

    shared = False

    def __init__(self, path: Path, *, new: bool = False) -> None:
        """Open the file. new: make it if it is not there.

        Raises NoBook, BookInUse or DamagedBook.
        """
        self.place = str(path)
        if sqlite3.sqlite_version_info < OLDEST_SQLITE:
            raise DamagedBook(f"SQLite {sqlite3.sqlite_version} is too old: Penwalk needs 3.37 or newer.")
        if not new:
            look_at(path)
            _may_be_written(path)
        self._lock = lock_book(path)
        self._engine: Engine | None = None
        try:
            self.connection = _connect(path, new=new)
        except sqlite3.Error as error:
            self._lock.close()
            raise DamagedBook(f"The book {path} cannot be opened: {error}.") from error

    def rows(self, sql: str, values: Values) -> Sequence[FoundRow]:
        """The rows that a statement finds. Raises DamagedBook."""
        try:
            return self.connection.execute(sql, values).fetchall()
        except sqlite3.DatabaseError as error:
            raise DamagedBook(f"The book {self.place} cannot be read: {error}.") from error

    def engine(self) -> "Engine":
        """SQLAlchemy over the one connection."""
        if self._engine is None:
            from store.book.engines import over_connection  # noqa: PLC0415 heavy: after the first frame

            self._engine = over_connection(self.connection)
        return self._engine

    def forget_half_written(self) -> None:
        """Empty the log: a commit whose sync failed may lie in it all the same."""
        with suppress(sqlite3.Error):
            self.connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")

    def close(self) -> None:
        """Close the file and let the lock go."""
        self.connection.close()
        self._lock.close()


class ServerDesk:
    """A book on a PostgreSQL server, which several benches write at once."""

    shared = True

    def __init__(self, url: str) -> None:
        """Open the book at a `postgresql://` URL. The place never shows its password."""
        from store.book.engines import at_url  # noqa: PLC0415 heavy, and not needed for a file

        self._engine = at_url(url)
        self.place = self._engine.url.render_as_string(hide_password=True)

    def rows(self, sql: str, values: Values) -> Sequence[FoundRow]:
        """The rows that a statement finds."""
        from store.book.engines import read_text  # noqa: PLC0415

        return read_text(self._engine, sql, values)

    def engine(self) -> "Engine":
        """The engine."""
        return self._engine

    def forget_half_written(self) -> None:
        """The server does that by itself."""

    def close(self) -> None:
        """Close every connection."""
        self._engine.dispose()


def log_of(path: Path) -> Path:
    """What SQLite wrote last to a book, and has not put into it yet: it belongs to the book."""
    return path.with_name(f"{path.name}-wal")


def clear_away(path: Path) -> None:
    """Take away a book that was only half made, and all that lies beside it."""
    for suffix in ("", "-wal", "-shm", ".lock"):
        path.with_name(path.name + suffix).unlink(missing_ok=True)


def refuse_left_log(path: Path) -> None:
    """Raise DamagedBook where a book's log lies without it: SQLite would take it into a new book of that name."""
    log = log_of(path)
    if log.exists() and not path.exists():
        raise DamagedBook(
            f"{log} lies there without its book: the last steps of a book that was moved away may be in it. Put that "
            f"book back as {path}, or move {log.name} to beside it, named as the book and -wal. Then try again."
        )


def look_at(path: Path) -> None:
    """Raise NoBook or DamagedBook for what cannot be a book, before anything beside it is touched."""
    if not path.exists():
        raise NoBook(f"There is no farm book at {path}.")
    try:
        with path.open("rb") as file:
            head = file.read(len(SQLITE_HEAD))
    except OSError as error:
        raise DamagedBook(f"The book {path} cannot be opened: {error.strerror}.") from error
    if head != SQLITE_HEAD:
        raise DamagedBook(f"{path} is no book of Penwalk. Nothing of it was changed. --book names another one.")


def _may_be_written(path: Path) -> None:
    if not os.access(path, os.W_OK):
        raise DamagedBook(f"The book {path} may only be read, so no round can be written. Make it writable.")


def lock_book(path: Path) -> Any:
    """One program per book: an open, locked file beside it. Raises BookInUse or DamagedBook."""
    lock_path = path.with_name(path.name + ".lock")
    try:
        lock = lock_path.open("a")
    except OSError as error:
        raise DamagedBook(f"Nothing can be written beside the book {path}: {error.strerror}.") from error
    try:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        lock.close()
        raise BookInUse(f"The book {path} is open in another Penwalk. Leave that one first (Q).") from error
    os.set_inheritable(lock.fileno(), False)
    return lock


def _connect(path: Path, *, new: bool) -> sqlite3.Connection:
    """Open the file. It is looked into before anything of it is changed. Raises sqlite3.Error."""
    connection = sqlite3.connect(path, isolation_level=None, check_same_thread=False)
    try:
        if not new:
            connection.execute(READ_FORM).fetchall()
        for pragma in PRAGMAS:
            connection.execute(f"PRAGMA {pragma}")
    except sqlite3.Error:
        connection.close()
        raise
    return connection
