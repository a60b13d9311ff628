"""What is in a copy, in words: for the commands and for the key."""

from datetime import date

from store.book.copying import Copy
from store.book.errors import BookError
from store.book.opening import is_address
from tui.words import day


def copied_words(rounds: int, newest: tuple[date, str] | None, today: date) -> str:
    """`412 rounds, the newest this morning`."""
    count = f"{rounds} round{'' if rounds == 1 else 's'}"
    if newest is None:
        return count
    when, slot = newest
    return f"{count}, the newest {'this' if when == today else day(when)} {slot}"


def thinned_words(made: Copy) -> str:
    """How many older copies went; nothing where none did."""
    if not made.thinned:
        return ""
    return " 1 older copy was taken away." if made.thinned == 1 else f" {made.thinned} older copies were taken away."


def refuse_server(place: str) -> None:
    """Raise BookError for a book that is no file: it is not copied so."""
    if is_address(place):
        raise BookError("A book on a server is copied with the server's own tools (pg_dump), or with `penwalk export`.")
