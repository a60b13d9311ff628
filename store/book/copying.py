"""Copies of a book on another disk: made while the round goes on, read again, counted; old ones thinned out.

The copy is SQLite's own online backup, so that a book in use is copied whole. It is read again before it gets its name.
"""

import os
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing, suppress
from datetime import UTC, date, datetime, timedelta
from hashlib import sha256
from pathlib import Path

from msgspec import Struct

from store.book.errors import DamagedBook, NoBook
from store.book.form import READ_FORM
from store.book.reading.sql import FARM

STAMP = "%Y%m%d-%H%M%S"
UNFINISHED = ".part"
MARK_LETTERS = 8
CHECK = "PRAGMA integrity_check(1)"
ROUNDS = "SELECT day, slot FROM entry WHERE day IS NOT NULL GROUP BY day, slot ORDER BY max(happened_at)"
EVERY_ONE, ONE_A_DAY, ONE_A_WEEK = timedelta(days=2), timedelta(days=14), timedelta(days=70)
"""All copies are kept so long; then the last of each day, of each week, and beyond of each month. Common practice."""


class Copy(Struct, frozen=True):
    """A copy that was read again. newest: the day and slot of its newest round; None in a book without rounds."""

    place: Path
    rounds: int
    newest: tuple[date, str] | None
    thinned: int


def copy_book(place: Path, folder: Path, now: datetime, bench: str) -> Copy:
    """Copy a book into a folder, read the copy again, then thin out older ones of this very book. Another program may
    have it open. bench: the word for this laptop.

    Raises NoBook without a book, DamagedBook where no copy can be made or it reads otherwise; then none is left behind.
    """
    if not place.is_file():
        raise NoBook(f"There is no farm book at {place}.")
    stamp = now.astimezone(UTC).strftime(STAMP)
    part = folder / f"{place.stem}-{stamp}.penwalk{UNFINISHED}"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        part.unlink(missing_ok=True)
        rounds = copy_whole(place, part)
        begins = copies_begin(place, bench)
        made = part.replace(folder / f"{begins}{stamp}.penwalk")
    except (OSError, sqlite3.Error) as error:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        raise DamagedBook(f"No copy was made in {folder}: {getattr(error, 'strerror', None) or error}.") from error
    return Copy(made, len(rounds), newest_of(rounds), _thin_out(begins, folder, now))


def newest_of(rounds: Sequence[tuple[str, str]]) -> tuple[date, str] | None:
    """Day and slot of the last of some rounds, in the order of ROUNDS."""
    return (date.fromisoformat(rounds[-1][0]), rounds[-1][1]) if rounds else None


def copies_begin(place: Path, bench: str) -> str:
    """How the names of a book's copies begin: with a mark of the farm, the laptop and where the book lies on it.

    Many a book is called farm.penwalk: only copies with the same mark are ever taken for its own. Raises sqlite3.Error.
    """
    with closing(sqlite3.connect(f"{place.resolve().as_uri()}?mode=ro", uri=True)) as book:
        farms = book.execute(FARM).fetchall()
    mark = sha256(repr((farms, bench, str(place.resolve()))).encode()).hexdigest()[:MARK_LETTERS]
    return f"{place.stem}-{mark}-"


def copies_of(begins: str, folder: Path) -> dict[Path, datetime]:
    """The copies in a folder whose names begin so, and when each was made. What has no mark is nobody's: it stays."""
    found, of_one = {}, begins.replace("%", "%%")
    for path in folder.iterdir():
        try:
            found[path] = datetime.strptime(path.name, f"{of_one}{STAMP}.penwalk").replace(tzinfo=UTC)
        except ValueError:
            continue  # somebody else's file
    return found


def to_thin_out(made_at: Iterable[datetime], now: datetime) -> Iterator[datetime]:
    """Of some copies those that may go: of each span all but its newest. The newest of all always stays."""
    kept: set[object] = set()
    for at in sorted(made_at, reverse=True):
        span = _span(at, now)
        if span in kept:
            yield at
        kept.add(span)


def _span(at: datetime, now: datetime) -> object:
    """The span of which one copy is kept: the copy itself, its day, its week, or its month."""
    age = now - at
    if age <= EVERY_ONE:
        return at
    if age <= ONE_A_DAY:
        return at.date()
    return at.isocalendar()[:2] if age <= ONE_A_WEEK else (at.year, "month", at.month)


def _thin_out(begins: str, folder: Path, now: datetime) -> int:
    copies = {at: path for path, at in copies_of(begins, folder).items()}
    gone = list(to_thin_out(copies, now))
    for at in gone:
        copies[at].unlink(missing_ok=True)
    return len(gone)


def copy_whole(place: Path, part: Path) -> list[tuple[str, str]]:
    """Copy, put it on the disk, read it again; the rounds of the copy. Raises sqlite3.Error or OSError."""
    with closing(sqlite3.connect(f"{place.resolve().as_uri()}?mode=ro", uri=True)) as book:
        book.execute(READ_FORM).fetchall()
        with closing(sqlite3.connect(part)) as copy:
            book.backup(copy)
            copy.execute("PRAGMA journal_mode=DELETE")
    with part.open("rb") as file:
        os.fsync(file.fileno())
    with closing(sqlite3.connect(f"{part.resolve().as_uri()}?mode=ro", uri=True)) as copy:
        if copy.execute(CHECK).fetchone() != ("ok",):
            raise sqlite3.DatabaseError("what was written reads otherwise. Take another stick")
        return copy.execute(ROUNDS).fetchall()
