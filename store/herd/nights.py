"""Nights of the week as a keeper types them: `every night`, `Mon to Sat`, `Mon, Wed, Fri`, `not Sun`."""

import re

from store.book.words import EVERY_NIGHT
from store.round.amount import Unreadable
from store.round.tonight import NIGHTS

_NOT = re.compile(r"^(?:not|all but|every night but)\s+")
_SPAN = re.compile(r"\s*(?:-|\bto\b)\s*")
_BETWEEN = re.compile(r"\s*(?:,|\band\b)\s*|\s+")
NO_NIGHT = "0" * len(EVERY_NIGHT)
ALL, NONE = ("", "every night", "all"), ("no night", "none", "never")


def some_nights(text: str) -> str:
    """`1` or `0` for each night from Monday's on. Raises Unreadable."""
    typed = " ".join(text.lower().split())
    if typed in ALL:
        return EVERY_NIGHT
    if typed in NONE:
        return NO_NIGHT
    named = _NOT.sub("", typed)
    found = {at for each in _BETWEEN.split(_SPAN.sub("-", named)) for at in _span(each, text)}
    return "".join("1" if (at in found) == (named == typed) else "0" for at in range(len(NIGHTS)))


def _span(word: str, text: str) -> list[int]:
    """The nights of `mon`, or of `mon to sat`, also over a Sunday."""
    ends = [_night(each, text) for each in word.split("-")]
    if len(ends) > 2:
        raise _unread(text)
    first, last = ends[0], ends[-1]
    return [(first + at) % len(NIGHTS) for at in range((last - first) % len(NIGHTS) + 1)]


def _night(word: str, text: str) -> int:
    for at, name in enumerate(NIGHTS):
        if len(word) >= len(name) and word.startswith(name.lower()):
            return at
    raise _unread(text)


def _unread(text: str) -> Unreadable:
    return Unreadable(f"«{text.strip()}» are no nights. Type every night, Mon to Sat, or Mon, Wed, Fri.")
