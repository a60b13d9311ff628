"""The trade's own words, as the farm says them: British, or American. Words of the keeper are never touched."""

import re
from collections.abc import Iterable

from store.book.words import Dialect

AMERICAN = {
    "left hind": "left rear",
    "right hind": "right rear",
    "suckler": "beef cow with calf",
    "suckle": "nurse",
    "cleansing": "afterbirth",
    "labour": "labor",
    "nuts": "pellets",
    "lucerne": "alfalfa",
    "a litre": "a liter",
    "bulling": "in heat",
    "muck": "manure",
}
"""What is said otherwise there. Common practice."""
_ANY = re.compile(r"\b(" + "|".join(sorted(AMERICAN, key=len, reverse=True)) + r")\b", re.IGNORECASE)


def said(words: str, dialect: Dialect, own: Iterable[str] = ()) -> str:
    """Words of the program in a dialect; they are written in British ones. Capitals stay capitals.

    own: names of the keeper's among them, which stay as they are.
    """
    if dialect is not Dialect.AMERICAN:
        return words
    names = sorted((re.escape(name) for name in own if _ANY.search(name)), key=len, reverse=True)
    return re.sub("|".join([*names, _ANY.pattern]), _american, words, flags=re.IGNORECASE)


def _american(found: re.Match[str]) -> str:
    if found[1] is None:  # a name
        return found[0]
    word = AMERICAN[found[0].lower()]
    return word.upper() if found[0].isupper() else word
