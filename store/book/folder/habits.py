"""How one file writes numbers and days: read where the file itself settles it, refused where it does not.

`1,234` is one and a bit, or a thousand; `03/04/2026` is in April, or in March. One cell that can be read in one way
only (`0,5`; `13/04/2026`) settles it for the whole file.
"""

from collections.abc import Iterable
from datetime import date
from re import Match, fullmatch
from typing import Any

from msgspec import Struct
from pydantic import AwareDatetime

COMMA = r"[+-]?\d+,\d+"
POINT = r"[+-]?\d*\.\d+"
THOUSANDS = r"[+-]?[1-9]\d{0,2},\d{3}"
"""A number with a comma that could be a thousand."""
DAY = r"(\d{1,2})([./-])(\d{1,2})\2(\d{4})(?:[ T](\d{1,2}:\d{2}(?::\d{2})?))?"
MONTHS = 12


class Unclear(ValueError):
    """A cell that can be read in two ways, or that contradicts the rest of its file; str() is what is expected."""


class Habits(Struct, frozen=True):
    """Of numbers: whether one stands in the file in which a comma must be decimal, and one with a point. Of days:
    whether one stands there in which the day must come first, and one in which the month must.
    """

    comma_settled: bool = False
    point: bool = False
    day_first: bool = False
    month_first: bool = False

    def plain(self, text: str, kind: Any) -> str:
        """A cell's text as we write it ourselves. Raises Unclear, ValueError."""
        if kind is float:
            return self.number(text)
        return self.day(text) if kind in (date, AwareDatetime) else text

    def number(self, text: str) -> str:
        """A number with a point. Raises Unclear."""
        if not fullmatch(COMMA, text):
            return text
        if self.point:
            raise Unclear("")
        if not self.comma_settled:
            raise Unclear(f", not «{text}», which can be {text.replace(',', '.')} or {text.replace(',', '')}")
        return text.replace(",", ".")

    def day(self, text: str) -> str:
        """A day, or a time, as 2026-03-05 (06:31). Raises Unclear; ValueError for a day that no calendar has."""
        found = fullmatch(DAY, text)
        if found is None:
            return text
        one, other = int(found[1]), int(found[3])
        if min(one, other) > MONTHS:
            raise ValueError(text)
        if self.day_first and self.month_first:
            raise Unclear(", and one order of day and month in the whole file, which has both")
        if not self.day_first and not self.month_first and one != other:
            raise Unclear(f": {text} can be in month {one} or in month {other}, and nothing in the file settles it")
        day, month = (other, one) if self.month_first else (one, other)
        return date(int(found[4]), month, day).isoformat() + (f" {found[5].zfill(5)}" if found[5] else "")

    def understood(self) -> Iterable[str]:
        """In words, what is not as we write it ourselves."""
        if self.comma_settled and not self.point:
            yield "numbers with a decimal comma"
        if self.day_first != self.month_first:
            yield "days as day/month/year" if self.day_first else "days as month/day/year"


def habits_of(cells: Iterable[tuple[Any, str]]) -> Habits:
    """What the cells of a file settle. cells: the type and the text of each."""
    listed = [(kind, text.strip()) for kind, text in cells if text.strip()]
    numbers = [text for kind, text in listed if kind is float]
    days = [found for kind, text in listed if kind in (date, AwareDatetime) and (found := fullmatch(DAY, text))]
    commas = [text for text in numbers if fullmatch(COMMA, text)]
    return Habits(
        comma_settled=any(not fullmatch(THOUSANDS, text) for text in commas),
        point=any(fullmatch(POINT, text) for text in numbers),
        day_first=any(_no_month(found, 1) for found in days),
        month_first=any(_no_month(found, 3) for found in days),
    )


def _no_month(found: Match[str], group: int) -> bool:
    """Whether this part of a day is too large for a month, and the other one is none."""
    other = int(found[4 - group])
    return int(found[group]) > MONTHS >= other
