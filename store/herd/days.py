"""Days and times as a keeper types them: `5 Mar 2026`, `yesterday`, `in 3 weeks`, `1 May`, `6:30`."""

import re
from calendar import isleap
from collections.abc import Callable
from datetime import date, datetime, timedelta

from store.book.turn import from_wall, local
from store.book.words import LEAP_YEAR
from store.round.amount import Unreadable

EVERY_LEAP = 9
"""In so many years there is a 29 February, also around a year as 1900 or 2100."""
YEARS = (1950, 2100)
"""Of days that can be typed. Common practice: no animal is older, no plan goes further."""
UNTIL = "a day as 20 Feb, or in 3 weeks; empty: goes on"
MONTHS = "jan feb mar apr may jun jul aug sep oct nov dec".split()
_ISO = re.compile(r"^(\d{4})-(\d{1,2})-(\d{1,2})$")
_DOTTED = re.compile(r"^(\d{1,2})\.(\d{1,2})\.(\d{4})$")
_SPOKEN = re.compile(r"^(\d{1,2})\.? ([a-z]{3,9})\.?(?: (\d{4}))?$|^([a-z]{3,9})\.? (\d{1,2}),?(?: (\d{4}))?$")
_AWAY = re.compile(r"^(in )?(\d{1,4}) (day|week|month|year)s?( ago| old)?$")
_IN_DAYS = {"day": 1.0, "week": 7.0, "month": 30.44, "year": 365.25}


def maybe_day(today: date, *, to_come: bool = False) -> Callable[[str], date | None]:
    """A day, or nothing: `5 Mar 2026`, `2026-03-05`, `5.3.2026`, `5 Mar`, `yesterday`, `8 weeks ago`, `in 3 weeks`.

    to_come: what is asked about lies ahead.
    """

    def read(text: str) -> date | None:
        typed = " ".join(text.lower().replace(",", " ").split())
        return a_day(typed, today, to_come=to_come) if typed else None

    return read


def a_day(typed: str, today: date, *, to_come: bool = False) -> date:
    """A day. typed: small letters. Without a year, `ago` or `in` it is the next such day where what is asked about is
    to come, else the last one. Raises Unreadable, also where day and month could be either.
    """
    try:
        found = _day(typed, today, to_come=to_come)
    except (ValueError, OverflowError):
        found = None
    if found is None:
        raise Unreadable(f"«{typed}» is no day. Type it as 5 Mar 2026, 2026-03-05, yesterday or 8 weeks ago.")
    if not YEARS[0] <= found.year <= YEARS[1]:
        raise Unreadable(f"«{typed}» is in the year {found.year}; expected {YEARS[0]} to {YEARS[1]}. Type it again.")
    return found


def _day(typed: str, today: date, *, to_come: bool) -> date | None:
    near = {"today": 0, "now": 0, "yesterday": -1, "tomorrow": 1}
    if typed in near:
        return today + timedelta(days=near[typed])
    if away := _AWAY.match(typed):
        return _away(away, today, to_come=to_come)
    if iso := _ISO.match(typed):
        return date(int(iso[1]), int(iso[2]), int(iso[3]))
    if dotted := _DOTTED.match(typed):
        return date(int(dotted[3]), int(dotted[2]), int(dotted[1]))
    if said := _SPOKEN.match(typed):
        month, day, year = _month(said[2] or said[4]), int(said[1] or said[5]), said[3] or said[6]
        return date(int(year), month, day) if year else _near(month, day, today, to_come=to_come)
    return None


def _away(found: re.Match[str], today: date, *, to_come: bool) -> date | None:
    """So long ago, or in so long."""
    if found[1] and found[4]:
        return None
    days = timedelta(days=round(int(found[2]) * _IN_DAYS[found[3]]))
    return today + days if found[1] or (to_come and not found[4]) else today - days


def _near(month: int, day: int, today: date, *, to_come: bool) -> date | None:
    """The next such day of a year, or the last; today is both."""
    date(LEAP_YEAR, month, day)
    years = range(today.year, today.year + EVERY_LEAP) if to_come else range(today.year, today.year - EVERY_LEAP, -1)
    there = (date(year, month, day) for year in years if (month, day) != (2, 29) or isleap(year))
    return next((each for each in there if (each >= today if to_come else each <= today)), None)


def _month(name: str) -> int:
    return MONTHS.index(name[:3]) + 1


def begins_at(now: datetime, zone: str) -> Callable[[str], datetime | None]:
    """From when on something counts: nothing or `now` is this moment; a day is its midnight on the farm's clock,
    without a year the next such day."""

    def read(text: str) -> datetime | None:
        typed = " ".join(text.lower().replace(",", " ").split())
        if typed in ("", "now"):
            return None
        day = a_day(typed, local(now, zone).date(), to_come=True)
        return from_wall(datetime(day.year, day.month, day.day), zone)  # noqa: DTZ001 wall time

    return read


def an_hour(text: str) -> str:
    """A time of day as `06:30`; nothing is nothing."""
    found = re.match(r"^\s*(\d{1,2})(?:[:.h ]?(\d{2}))?\s*$", text)
    if not text.strip():
        return ""
    if found is None or int(found[1]) > 23 or int(found[2] or 0) > 59:
        raise Unreadable(f"«{text.strip()}» is no time of day. Type it as 6:30.")
    return f"{int(found[1]):02d}:{int(found[2] or 0):02d}"


def a_day_of_year(text: str) -> str | None:
    """A day of every year as `05-01`, or nothing; typed as `1 May`."""
    if not text.strip():
        return None
    return a_day(f"{' '.join(text.lower().split())} {LEAP_YEAR}", date(LEAP_YEAR, 1, 1)).strftime("%m-%d")


def day_of_year_words(of: str | None) -> str:
    """A day of every year as it can be typed again: `1 May`; empty where there is none."""
    if of is None:
        return ""
    found = date.fromisoformat(f"{LEAP_YEAR}-{of}")
    return f"{found.day} {found.strftime('%b')}"


def day_words(of: date | None) -> str:
    """A day as it can be typed again: `5 Mar 2026`; empty where there is none."""
    return f"{of.day} {of.strftime('%b')} {of.year}" if of else ""
