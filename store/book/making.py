"""A new book in a file: made beside its place, and given its name only when it is whole."""

from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from store.book.desk import FileDesk, clear_away, log_of, refuse_left_log
from store.book.engines import refusal_said
from store.book.errors import BookError, DamagedBook
from store.book.migrating import migrate


@contextmanager
def made_new(place: Path) -> Iterator[FileDesk]:
    """An empty book, to be filled; at the end it is the book at its place. After an error or a power cut there is none.

    Raises BookError where something stands at the place, or the disk refuses.
    """
    half = place.with_name(f"{place.name}.half")
    try:
        if place.exists():
            raise BookError(f"There is something at {place} already. A new book needs a new place.")
        refuse_left_log(place)
        place.parent.mkdir(parents=True, exist_ok=True)
        clear_away(half)
        with refusal_said("No book was made"), closing(FileDesk(half, new=True)) as desk:
            migrate(desk)
            yield desk
            desk.forget_half_written()  # all of it into the one file that is then given its name
        _name(half, place)
    except OSError as error:
        raise DamagedBook(f"No book was made: {error.strerror or error} ({error.filename or place}).") from error
    finally:
        with suppress(OSError):
            clear_away(half)


def _name(half: Path, place: Path) -> None:
    if log_of(half).exists():  # closing a book takes its log in, unless the disk is full
        raise DamagedBook(f"No book was made: the disk of {place.parent} did not take all of it. Make room on it.")
    half.replace(place)
