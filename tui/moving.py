"""The commands that move a whole book: import, export, merge, backup. Each says in words what it did."""

from contextlib import closing
from pathlib import Path

from store.book.clock import Clock
from store.book.copying import copy_book
from store.book.errors import BookError
from store.book.folder.put_out import put_out
from store.book.folder.take_in import Taken, new_book_from, take_in
from store.book.merging import merge
from store.book.opening import Book, is_address, make_on_server, open_book
from store.book.reading import read_facts
from store.book.reading.yard import read_yard
from store.book.restoring import restore_book
from store.herd.findings import findings
from tui.copied import copied_words, refuse_server, thinned_words
from tui.merged import merged_words
from tui.sitting import bench_name


def import_folder(folder: Path, place: str) -> str:
    """Read a farm folder into the book; into a new one where there is none. What deserves a second look is said."""
    if is_address(place):
        make_on_server(place)
    elif not Path(place).exists():
        taken = new_book_from(folder, Path(place))
        with closing(open_book(place, Clock())) as book:
            return _taken_words(f"A new book: {place}, {taken.rows} rows. `penwalk` opens the round.", taken, book)
    with closing(open_book(place, Clock())) as book:
        taken = take_in(folder, book.desk)
        return _taken_words(f"{taken.rows} new rows are in {book.desk.place}.", taken, book)


def _taken_words(first: str, taken: Taken, book: Book) -> str:
    return "\n".join([first, *taken.understood, *_look_again(book)])


def _look_again(book: Book) -> list[str]:
    """What deserves a second look, once rows came in."""
    return [f"Look again: {each}" for each in findings(read_yard(book.desk, book.clock.now()))]


def export_folder(folder: Path, place: str) -> str:
    """Write the book out as a farm folder."""
    with closing(open_book(place, Clock())) as book:
        return f"{put_out(book.desk, folder)} rows are written to {folder}."


def back_up(folder: Path, place: str) -> str:
    """Copy the book into a folder, read the copy again, and say what is in it."""
    refuse_server(place)
    now = Clock().now()
    made = copy_book(Path(place), folder, now, bench_name())
    what = copied_words(made.rounds, made.newest, now.astimezone().date())
    return f"{made.place}: read again, {what}.{thinned_words(made)}"


def restore(copy: Path, place: str) -> str:
    """Put a copy in the place of the book; the book that is there is kept beside it."""
    if is_address(place):
        raise BookError("A book on a server comes back with the server's own tools, or with `penwalk import FOLDER`.")
    now = Clock().now()
    found = restore_book(copy, Path(place), now)
    kept = f"; the book before it is kept as {found.kept}" if found.kept else ""
    return f"{place}: {copied_words(found.rounds, found.newest, now.astimezone().date())}{kept}."


def merge_book(other: Path, place: str) -> str:
    """Take in what another book of the same farm holds. What deserves a second look is said."""
    with closing(open_book(place, Clock())) as book:
        merged = merge(book.desk, other)
        words = merged_words(merged, other, read_facts(book.desk, book.clock.now()).zone)
        return "\n".join([words, *(_look_again(book) if merged.rows else [])])
