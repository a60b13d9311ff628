"""What a sitting changed of the farm, and what the book refused."""

from collections.abc import Callable

from msgspec import Struct

from store.book.drafts import Draft, RowDraft, Subject
from store.book.errors import BookError


class Changed(Struct, frozen=True):
    """A change of the farm in this sitting, and the rows that make it as it was."""

    words: str
    subject: Subject
    as_before: tuple[RowDraft, ...]
    entries: tuple[Draft, ...] = ()  # the entries that go with them, each with its step id


def said(act: Callable[[], object]) -> str | None:
    """What the book refused, in words; None if it did not."""
    try:
        act()
    except BookError as error:
        return str(error)
    return None
