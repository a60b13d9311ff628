"""Another book, only to be read: a copy of it aside. Nothing is ever written beside the book itself."""

import fcntl
import shutil
from collections.abc import Iterator
from contextlib import closing, contextmanager, nullcontext
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from store.book.copying import CHECK
from store.book.desk import FileDesk, log_of, look_at
from store.book.errors import BookError, BookInUse, DamagedBook
from store.book.form import HEAD
from store.book.opening import form_of


@contextmanager
def set_aside(place: Path) -> Iterator[FileDesk]:
    """A copy of a book in a folder that goes away again, whole and in today's form. The book may lie on a disk that
    cannot be written.

    Raises NoBook, BookInUse while another program has it open, NewerBook, DamagedBook.
    """
    look_at(place)
    with _held_still(place), TemporaryDirectory(prefix="penwalk-") as folder:
        copy = Path(folder) / place.name
        _copy(place, copy)
        with closing(_opened(copy, place)) as desk:
            yield desk


def _opened(copy: Path, place: Path) -> FileDesk:
    try:
        desk = FileDesk(copy)
        try:
            _make_ready(desk)
        except BaseException:
            desk.close()
            raise
    except BookError as error:
        raise type(error)(str(error).replace(str(copy), str(place))) from error
    return desk


def _make_ready(desk: FileDesk) -> None:
    """Read all of it once, and bring it to today's form."""
    form = form_of(desk)
    (found,) = desk.rows(CHECK, {})[0]
    if found != "ok":
        raise DamagedBook(f"{desk.place} is damaged: {found}. Take another copy of it.")
    if form != HEAD:
        from store.book.migrating import migrate  # noqa: PLC0415 heavy, and rarely needed

        migrate(desk)


def _copy(place: Path, copy: Path) -> None:
    try:
        for there, here in ((place, copy), (log_of(place), log_of(copy))):
            if there.exists():
                shutil.copyfile(there, here)
    except OSError as error:
        raise DamagedBook(f"{place} cannot be read into {copy.parent}: {error.strerror}.") from error


def _held_still(place: Path) -> Any:
    """A shared lock on what lies beside a book that was ever open, so that nobody opens it meanwhile."""
    try:
        lock = place.with_name(place.name + ".lock").open("rb")
    except FileNotFoundError:
        return nullcontext()
    try:
        fcntl.flock(lock, fcntl.LOCK_SH | fcntl.LOCK_NB)
    except OSError as error:
        lock.close()
        raise BookInUse(f"The book {place} is open in another Penwalk. Leave that one first (Q).") from error
    return lock
