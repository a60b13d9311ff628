"""Reading what was typed about the yard: names, days, weights, hours. What cannot be read is said in a sentence."""

import re
from calendar import isleap
from collections.abc import Callable
from datetime import date, datetime, timedelta

from store.book.turn import from_wall, local
from store.book.words import GIRTH_CM, LEAP_YEAR, WEIGHT_KG, Units
from store.husbandry.units import CM_PER_INCH, spoken
from store.round.amount import Unreadable, number_and_unit
from store.round.saying import weight

NAME_MOST, WORDS_MOST = 60, 120
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


def a_name(text: str) -> str:
    """A name that has to be there, of at most 60 letters."""
    found = words(text, NAME_MOST)
    if not found:
        raise Unreadable("A name is needed here. Type it, then Enter.")
    return found


def words(text: str, most: int = WORDS_MOST) -> str:
    """Words that may be left out."""
    found = " ".join(text.split())
    if len(found) > most:
        raise Unreadable(
            f"«{found[:20]}...» has {len(found)} letters; no more than {most} fit. Backspace takes some away."
        )
    return found


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


def maybe_weight(
    units: Units, least_kg: float = WEIGHT_KG[0], most_kg: float = WEIGHT_KG[1]
) -> Callable[[str], float | None]:
    """A weight, or nothing. [kg]"""

    def read(text: str) -> float | None:
        return a_weight(text, units, least_kg, most_kg) if text.strip() else None

    return read


def a_weight(text: str, units: Units, least_kg: float, most_kg: float) -> float:
    """A weight between two bounds; a bare number is what the farm has set. [kg]"""
    number, word = number_and_unit(text)
    unit = spoken(word or ("lb" if units is Units.US else "kg"), american=units is Units.US)
    if unit is None or unit.dimension != "weight":
        raise Unreadable(f"«{text.strip()}» is no weight. Type it as 612 kg or 1350 lb.")
    kg = number * unit.size
    if not least_kg <= kg <= most_kg:
        found, least, most = (weight(each, units) for each in (kg, least_kg, most_kg))
        raise Unreadable(f"«{text.strip()}» is {found}; expected {least} to {most}. Type it again.")
    return kg


def maybe_girth(units: Units) -> Callable[[str], float | None]:
    """A heart girth, or nothing; a bare number is inches on a US farm. [cm]"""

    def read(text: str) -> float | None:
        if not text.strip():
            return None
        number, word = number_and_unit(text)
        size = {"cm": 1.0, "in": CM_PER_INCH, "inch": CM_PER_INCH, "inches": CM_PER_INCH, '"': CM_PER_INCH}
        if word not in size and word:
            raise Unreadable(f"«{word}» is no length here. Type the girth as 201 cm or 79 in.")
        cm = number * size[word or ("in" if units is Units.US else "cm")]
        if not GIRTH_CM[0] <= cm <= GIRTH_CM[1]:
            raise Unreadable(f"«{text.strip()}» is {cm:.0f} cm; expected {GIRTH_CM[0]:.0f} to {GIRTH_CM[1]:.0f} cm.")
        return cm

    return read


def a_number(least: float, most: float, what: str) -> Callable[[str], float]:
    """A number between two bounds, as hours or per cent."""

    def read(text: str) -> float:
        number, word = number_and_unit(text.replace("%", ""))
        if (word and word not in what) or not least <= number <= most:
            raise Unreadable(f"«{text.strip()}» is no number of {what}. Type {least:g} to {most:g}.")
        return number

    return read


def maybe(read: Callable[[str], object]) -> Callable[[str], object | None]:
    """The same reading, but nothing typed is nothing."""
    return lambda text: read(text) if text.strip() else None


def a_count(least: int, most: int, what: str) -> Callable[[str], int]:
    """A whole number between two bounds."""

    def read(text: str) -> int:
        number = a_number(least, most, what)(text)
        if number != int(number):
            raise Unreadable(f"«{text.strip()}» is no whole number of {what}. Type {least} to {most}.")
        return int(number)

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
