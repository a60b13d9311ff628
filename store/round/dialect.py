"""The trade's own words, as the farm says them: British, or American. Words of the keeper are never touched."""

import re

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


def said(words: str, dialect: Dialect) -> str:
    """Words of the program in a dialect; they are written in British ones. Capitals stay capitals."""
    return _ANY.sub(_american, words) if dialect is Dialect.AMERICAN else words


def _american(found: re.Match[str]) -> str:
    word = AMERICAN[found[0].lower()]
    return word.upper() if found[0].isupper() else word
