"""A moment of today or of a day that is named, whether it has been or is to come: when a first dose is given."""

import re
from collections.abc import Callable
from datetime import date, datetime

from store.book.turn import from_wall, local
from store.herd.days import a_day, an_hour, day_words
from store.herd.moments import Happened
from store.round.amount import Unreadable

MOMENT = "now, 18:20 today, yesterday 6:20, or 9 Mar 18:20"
_MOMENT = re.compile(r"^(?:(?P<day>.*?)[, ]+)?(?P<time>\d{1,2}[:.h]\d{2})$")


def a_moment(now: datetime, zone: str) -> Callable[[str], Happened]:
    """A moment of today or of a day that is named: `now`, `18:20`, `yesterday 6:20`, `9 Mar 18:20`."""

    def read(text: str) -> Happened:
        typed = " ".join(text.lower().split())
        found = _MOMENT.match(typed)
        if typed == "now":
            return Happened(now)
        if found is None:
            raise Unreadable(f"«{text.strip()}» is no day and time. Type it as {MOMENT}.")
        return Happened(_wall(found["day"] or "today", found["time"], local(now, zone).date(), zone))

    return read


def _wall(day: str, time: str, today: date, zone: str) -> datetime:
    return from_wall(datetime.fromisoformat(f"{a_day(day, today)}T{an_hour(time)}"), zone)


def moment_text(at: datetime, zone: str) -> str:
    """A moment as it can be typed again: `9 Mar 2026 18:20`."""
    return f"{day_words(local(at, zone).date())} {local(at, zone):%H:%M}"
