"""Moments as a keeper types them: `6:10`, `02:30-05:50`, `yesterday 22:00`; and those to come: `in 2 h`, `at 14:30`.

All are read on the farm's wall clock. An hour that came twice in autumn is taken so that a time between two moments
is the longer one; elapsed hours are hours, whatever the clock was set to meanwhile.
"""

import re
from datetime import date, datetime, timedelta

from msgspec import Struct

from store.book.turn import from_wall, local
from store.herd.days import a_day
from store.round.amount import Unreadable, number_and_unit

A_DAY, A_MINUTE = timedelta(days=1), timedelta(minutes=1)
WINDOW_MOST, WITH_DAYS_MOST = timedelta(hours=18), timedelta(days=7)
"""A longer time between two moments has to be told with its day: else the later was typed first. Common practice."""
TO_COME_MOST = timedelta(days=60)
"""What is looked at again later than this is a date in a calendar. Common practice."""
HOW = "6:10, 02:30-05:50, yesterday 22:00, or a day"
HOW_TO_COME = "in 2 h, in 30 min, at 14:30, tomorrow 6:30"
_TIME = re.compile(r"^(?:(?P<day>\S.*?),?\s+)??(?:at )?(?P<hour>\d{1,2})[:., h]?(?P<minute>\d{2})$")
_BETWEEN = re.compile(r"\s*(?:-|\u2013|\bto\b|\band\b)\s*")
_UNITS = {
    "h": timedelta(hours=1), "hr": timedelta(hours=1), "hrs": timedelta(hours=1), "hour": timedelta(hours=1),
    "hours": timedelta(hours=1), "min": timedelta(minutes=1), "mins": timedelta(minutes=1), "m": timedelta(minutes=1),
    "minute": timedelta(minutes=1), "minutes": timedelta(minutes=1), "day": A_DAY, "days": A_DAY, "d": A_DAY,
}  # fmt: skip
_HOURS_AND_MINUTES = re.compile(r"^(\d{1,3}) ?h(?:ours?)? ?(\d{1,2})(?: ?min)?$")


class Happened(Struct, frozen=True):
    """When something happened: at a moment, or somewhen between two. since None: at one moment."""

    at: datetime
    since: datetime | None = None

    @property
    def earliest(self) -> datetime:
        """The earliest moment at which it can have been."""
        return self.since or self.at


def happened(text: str, now: datetime, zone: str, *, whole_days: bool = True) -> Happened:
    """When something happened, at the latest `now`. Raises Unreadable.

    whole_days: whether a day alone is the whole of it; else it needs a time.
    """
    typed = " ".join(text.lower().split()).removeprefix("between ").removeprefix("from ")
    if typed in ("", "now"):
        return Happened(now)
    day = _maybe_day(typed, local(now, zone).date())
    if day is not None and not whole_days:
        raise Unreadable(f"«{text.strip()}» is a whole day. Type a time too, as {typed} 18:20.")
    if day is not None:
        return _whole(day, now, zone)
    parts = _BETWEEN.split(typed)
    if len(parts) > 2:
        raise Unreadable(f"«{text.strip()}» is no time. Type it as {HOW}.")
    if len(parts) == 2 and all(parts):
        return _between(parts[0], parts[1], text, now, zone)
    return Happened(_before(typed, now, zone)[-1])


def to_come(text: str, now: datetime, zone: str) -> datetime:
    """A moment that is still to come. Raises Unreadable."""
    typed = " ".join(text.lower().split())
    if _TIME.match(typed) and not typed.startswith("in "):
        found = next(iter(_next(typed, now, zone)), now)
    else:
        found = now + _elapsed(typed.removeprefix("in "), text)
    if not now < found <= now + TO_COME_MOST:
        days = TO_COME_MOST.days
        raise Unreadable(f"«{text.strip()}» is not in the next {days} days. Type it as {HOW_TO_COME}.")
    return found


def _whole(day: date, now: datetime, zone: str) -> Happened:
    begins, ends = (_at(day + timedelta(days=days), "0", "00", zone)[0] for days in (0, 1))
    if begins > now:
        raise Unreadable("That day is still to come. Type a day that has been, or a time.")
    return Happened(min(ends - A_MINUTE, now), begins)


def _between(first: str, last: str, text: str, now: datetime, zone: str) -> Happened:
    """The longest that it can mean: from the first of an hour that came twice to the second of one."""
    if _parts(first)["day"]:
        since, most = _before(first, now, zone)[0], WITH_DAYS_MOST
        at = _before(last, now, zone)[-1] if _parts(last)["day"] else _next(last, since, zone)[-1]
    else:
        at, most = _before(last, now, zone)[-1], WINDOW_MOST
        since = _before(first, at, zone)[0]
    if not since <= at <= now or at - since > most:
        raise Unreadable(
            f"«{text.strip()}» is no time between two moments that have been. "
            "Type the earlier one first, as 02:30-05:50, or with its day, as yesterday 22:00-02:30."
        )
    return Happened(at, since if since < at else None)


def _before(typed: str, now: datetime, zone: str) -> tuple[datetime, ...]:
    """The last moments, not after now, at which the clock showed a time: two where that hour came twice."""
    found = _parts(typed)
    today = local(now, zone).date()
    days = (a_day(found["day"], today),) if found["day"] else (today, today - A_DAY)
    for day in days:
        moments = tuple(each for each in _at(day, found["hour"], found["minute"], zone) if each <= now)
        if moments:
            return moments
    raise Unreadable(f"«{typed}» is still to come. Type when it happened, as {HOW}.")


def _next(typed: str, now: datetime, zone: str) -> tuple[datetime, ...]:
    """The next moments at which the clock shows a time: two where that hour comes twice; none on a day that is over."""
    found = _parts(typed)
    today = local(now, zone).date()
    days = (a_day(found["day"], today, to_come=True),) if found["day"] else (today, today + A_DAY)
    of_days = (_at(day, found["hour"], found["minute"], zone) for day in days)
    return next((left for moments in of_days if (left := tuple(each for each in moments if each > now))), ())


def _parts(typed: str) -> dict[str, str]:
    found = _TIME.match(typed)
    if found is None or int(found["hour"]) > 23 or int(found["minute"]) > 59:
        raise Unreadable(f"«{typed}» is no time. Type it as {HOW}.")
    return {**found.groupdict(), "day": found["day"] or ""}


def _at(day: date, hour: str, minute: str, zone: str) -> tuple[datetime, ...]:
    """The moments of a day at which the clock showed a time, in order: two where the hour came twice.

    An hour that the clock left out in spring is read as if the clock had not been set yet.
    """
    wall = datetime(day.year, day.month, day.day, int(hour), int(minute))  # noqa: DTZ001 wall time
    both = {from_wall(wall, zone, first=True), from_wall(wall, zone)}
    shown = sorted(each for each in both if local(each, zone).replace(tzinfo=None) == wall)
    return tuple(shown) or (from_wall(wall, zone),)


def _elapsed(typed: str, text: str) -> timedelta:
    if found := _HOURS_AND_MINUTES.match(typed):
        return timedelta(hours=int(found[1]), minutes=int(found[2]))
    try:
        number, word = number_and_unit(typed)
    except Unreadable:
        number, word = 0.0, ""
    if word not in _UNITS:
        raise Unreadable(f"«{text.strip()}» does not say when. Type it as {HOW_TO_COME}.")
    return number * _UNITS[word]


def _maybe_day(typed: str, today: date) -> date | None:
    try:
        return a_day(typed, today)
    except Unreadable:
        return None
