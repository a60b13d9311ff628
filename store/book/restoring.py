"""A copy of a book put in the place of the book. What is there is kept beside it, never deleted.

The order holds against a power cut at any moment: the copy is read and checked first, then written beside the book and
put on the disk; the book that is there is copied under a dated name; only then one rename makes the new book the book.
"""

import os
import shutil
import sqlite3
from contextlib import closing, suppress
from datetime import UTC, date, datetime
from pathlib import Path

from msgspec import Struct

from store.book.aside import set_aside
from store.book.copying import STAMP, UNFINISHED, copy_whole, newest_of
from store.book.desk import lock_book, log_of, look_at, refuse_left_log
from store.book.errors import BookError, DamagedBook
from store.book.reading.sql import FARM

Farms = list[tuple[bytes]]


class Restored(Struct, frozen=True):
    """A book that came back. newest: day and slot of its newest round. kept: where the book before it lies now."""

    rounds: int
    newest: tuple[date, str] | None
    kept: Path | None


def restore_book(copy: Path, place: Path, now: datetime) -> Restored:
    """Put a copy in the place of the book. A book that is there and can be read must be of the same farm.

    Raises NoBook, NewerBook or DamagedBook of the copy, BookInUse while another program has the book open, BookError
    for another farm or where the log of a book that was moved away lies there; then all is as it was.
    """
    look_at(copy)
    if place.exists() and place.samefile(copy):
        raise BookError(f"{copy} is the book itself. Name a copy of it.")
    refuse_left_log(place)
    place.parent.mkdir(parents=True, exist_ok=True)
    with lock_book(place), set_aside(copy) as found:
        there = _farms(place) if place.exists() else []
        if there and there != found.rows(FARM, {}):
            raise BookError(f"{copy} is the book of another farm. Nothing was restored.")
        return _put_in_place(Path(found.place), place, now)


def _put_in_place(copy: Path, place: Path, now: datetime) -> Restored:
    part = place.with_name(place.name + UNFINISHED)
    try:
        part.unlink(missing_ok=True)
        rounds = copy_whole(copy, part)
        kept = _keep(place, now) if place.exists() else None
        for left in (log_of(place), place.with_name(f"{place.name}-shm")):
            left.unlink(missing_ok=True)  # of the book before: it must not be taken for the new one's
        part.replace(place)
        _settle(place.parent)
    except (OSError, sqlite3.Error) as error:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        said = getattr(error, "strerror", None) or error
        raise DamagedBook(f"Nothing was restored: {said}. The book is as it was.") from error
    return Restored(len(rounds), newest_of(rounds), kept)


def _keep(place: Path, now: datetime) -> Path:
    """Copy the book that is there under a dated name, with its log where it is too damaged to take it in."""
    with suppress(sqlite3.Error), closing(sqlite3.connect(place)) as book:
        book.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    kept = place.with_name(f"{place.stem}-before-{now.astimezone(UTC).strftime(STAMP)}.penwalk")
    for there, here in ((log_of(place), log_of(kept)), (place, kept)):
        if there.exists():
            _copy_durably(there, here)
    return kept


def _copy_durably(of: Path, to: Path) -> None:
    part = to.with_name(to.name + UNFINISHED)
    shutil.copyfile(of, part)
    with part.open("rb") as file:
        os.fsync(file.fileno())
    part.replace(to)
    _settle(to.parent)


def _settle(folder: Path) -> None:
    """Names of a folder are on the disk only when the folder itself is."""
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _farms(place: Path) -> Farms:
    """The farm of the book that is there; none where it is too damaged to say: then it may be replaced."""
    try:
        with closing(sqlite3.connect(f"{place.resolve().as_uri()}?mode=ro", uri=True)) as book:
            return book.execute(FARM).fetchall()
    except sqlite3.Error:
        return []
