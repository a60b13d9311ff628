"""Opening a book: made new, or found in a form that this program knows."""

from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar
from uuid import UUID

from store.book.clock import Clock
from store.book.desk import Desk, FileDesk, ReadingDesk, ServerDesk
from store.book.errors import DamagedBook, NewerBook
from store.book.form import HEAD, KNOWN_FORMS, READ_FORM

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from store.book.drafts import Draft, RowDraft

T = TypeVar("T")

ANY_BOOK = "SELECT 1 FROM information_schema.tables WHERE table_name = 'alembic_version'"


class Book:
    """An open book of one farm: it can be read, and a draft can be added to it."""

    def __init__(self, desk: Desk, clock: Clock, bench: str = "bench") -> None:
        """A book that lies on a desk. bench: the word for this laptop, kept with every entry."""
        self.desk = desk
        self.clock = clock
        self.bench = bench

    def append(self, draft: "Draft") -> UUID:
        """Write one confirmed step, durably, before this returns; the new entry's id. Raises Overtaken."""
        from store.book.writing import append  # noqa: PLC0415 heavy: waits for the thread that loads it

        try:
            return append(self, draft)
        except DamagedBook:
            self.desk.forget_half_written()
            raise

    def change(self, rows: "Sequence[RowDraft]", *entries: "Draft") -> None:
        """Add rows of what changes slowly, and entries with them, as a note: all or nothing. Raises DamagedBook."""
        from store.book.writing import change  # noqa: PLC0415 heavy

        change(self, rows, *entries)

    def trial(self, rows: "Sequence[RowDraft]", look: "Callable[[ReadingDesk], T]") -> "T":
        """What would be found in the book if these rows were added; nothing is added. Raises DamagedBook."""
        from store.book.writing import trial  # noqa: PLC0415 heavy

        return trial(self, rows, look)

    def close(self) -> None:
        """Let the book go."""
        self.desk.close()


def is_address(place: str) -> bool:
    """Whether a place is a server's address and not a path: also a misspelt one, whose password must not be shown."""
    return "://" in place or place.startswith("postgresql+")


def make_on_server(place: str) -> None:
    """Make an empty book on a server that has none yet; one that is there stays as it is. Raises DamagedBook."""
    from store.book.migrating import migrate  # noqa: PLC0415 heavy

    with closing(ServerDesk(place)) as desk:
        if not desk.rows(ANY_BOOK, {}):
            migrate(desk)


def desk_at(place: str, *, new: bool = False) -> Desk:
    """The desk for a path or a `postgresql://` URL."""
    if is_address(place):
        return ServerDesk(place)
    return FileDesk(Path(place), new=new)


def open_book(place: str, clock: Clock, bench: str = "bench") -> Book:
    """Open the book at a path or URL, brought to today's form first where it is older.

    Raises NoBook, BookInUse, NewerBook or DamagedBook; then nothing was changed.
    """
    desk = desk_at(place)
    try:
        if form_of(desk) != HEAD:
            from store.book.migrating import migrate  # noqa: PLC0415 heavy, and rarely needed

            migrate(desk)
    except Exception:
        desk.close()
        raise
    return Book(desk, clock, bench)


def form_of(desk: Desk) -> str:
    """The form the book has. Raises DamagedBook if it is no book, NewerBook if this program is too old for it."""
    found = desk.rows(READ_FORM, {})
    if len(found) != 1:
        raise DamagedBook(f"{desk.place} is no book of Penwalk: it does not say which form it has.")
    form = str(found[0][0])
    if form not in KNOWN_FORMS:
        raise NewerBook(
            f"The book {desk.place} has form {form}; this Penwalk knows forms up to {HEAD}. "
            "Nothing was changed. Use the newer Penwalk that wrote it."
        )
    return form
