"""The demo: a pretend morning on the invented farm, with a clock of its own. Nothing real is touched."""

import hashlib
import os
import sqlite3
import tomllib
from contextlib import closing
from datetime import datetime, timedelta
from importlib.resources import files
from pathlib import Path

from platformdirs import user_cache_path

from store.book.clock import Clock, PretendClock
from store.book.desk import FileDesk
from store.book.errors import BookError
from store.book.form import FORMS, HEAD
from store.book.opening import Book, open_book
from store.book.reading import last_written, read_facts
from store.book.turn import from_wall
from tui.sitting import walk
from tui.terminal import keys_kept, refuse_dumb
from tui.walker import Walker

GOING_ON = "Going on where you left this pretend morning. `penwalk demo --afresh` begins it again."


def show_demo(farm: Path | None, at: str | None, look: str, *, afresh: bool) -> int:
    """Walk the pretend morning; the exit status. It goes on where it was left, until all of it is recorded."""
    refuse_dumb()
    folder = farm or Path(str(files("demo_farm")))
    place = _cache(folder) / "walked.penwalk"
    with keys_kept():
        if afresh or not place.is_file():
            _copy(_built(folder), place)
        walker = _sit(place, folder, at)
        if walker.first_open() is None:
            walker.book.close()
            _copy(_built(folder), place)
            walker = _sit(place, folder, at)
        with closing(walker.book):
            return walk(walker, look, GOING_ON if walker.snapshot.entries else "")


def _sit(place: Path, folder: Path, at: str | None) -> Walker:
    """At the copy, with its pretend clock; unless told otherwise it starts after what was written last."""
    book = open_book(str(place), Clock())
    try:
        start = _start(book, folder, at)
        last = last_written(book.desk)
        if at is None and last is not None:
            start = max(start, last + timedelta(minutes=1))
        book.clock = PretendClock(start)
        return Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)
    except BaseException:
        book.close()
        raise


def _start(book: Book, folder: Path, at: str | None) -> datetime:
    text = at or str(tomllib.loads((folder / "demo.toml").read_text(encoding="utf-8"))["starts_at"])
    try:
        wall = datetime.fromisoformat(text)
    except ValueError as error:
        raise BookError(f"--at: found «{text}»; expected a time as 2026-03-11T06:31.") from error
    return from_wall(wall, read_facts(book.desk, book.clock.now()).zone)


def _cache(folder: Path) -> Path:
    """A folder named after the farm folder's content and the book's form: a change of either builds it anew."""
    content = hashlib.sha256(HEAD.encode())
    forms = sorted(FORMS.glob("*.py"))
    for path in sorted(folder.glob("*.csv")) + sorted(folder.glob("*.toml")) + forms:
        content.update(path.name.encode() + path.read_bytes())
    return user_cache_path("penwalk", appauthor=False) / f"demo-{content.hexdigest()[:12]}"


def _built(folder: Path) -> Path:
    """The imported book; made by the ordinary importer, and moved into place only when it is whole."""
    built = _cache(folder) / "built.penwalk"
    if not built.is_file():
        from store.book.folder.take_in import new_book_from  # noqa: PLC0415 heavy, and only the first time

        built.parent.mkdir(parents=True, exist_ok=True)
        half = built.with_name(f"half-built-{os.getpid()}")
        new_book_from(folder, half)
        half.replace(built)
    return built


def _copy(built: Path, place: Path) -> None:
    """A fresh copy, whole or not at all; the lock says if another demo is being walked."""
    if place.is_file():
        FileDesk(place).close()
    half = place.with_name(f"half-copied-{os.getpid()}")
    with closing(sqlite3.connect(built)) as source, closing(sqlite3.connect(half)) as copy:
        source.backup(copy)
    for suffix in ("-wal", "-shm"):
        place.with_name(place.name + suffix).unlink(missing_ok=True)
    half.replace(place)
