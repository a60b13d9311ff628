"""Hours by the clock: from a moment to a later one. A moment is so many hours since 1970 began, in Greenwich. [h]

Moments are absolute, so that a night in which the clocks change has the hours that it has.
"""

from datetime import UTC, date, datetime, timedelta

from store.husbandry.why import ARITHMETIC, Value, equation, given

MOMENT = "time"
"""The unit of a moment."""
DAY = "day"
"""The unit of a day: so many days since the calendar began."""
HOUR = timedelta(hours=1)
BEGAN = datetime(1970, 1, 1, tzinfo=UTC)


def moment(at: datetime, name: str, came: str) -> Value:
    """A moment as a number that says where it came from."""
    return given((at - BEGAN) / HOUR, name, MOMENT, came)


def the_day(on: date, name: str, came: str) -> Value:
    """A day as a number that says where it came from."""
    return given(on.toordinal(), name, DAY, came)


@equation("the day", "the day - so many days", DAY, ARITHMETIC)
def days_before(until: float, days: float) -> float:
    """So many days before a day."""
    return until - days


@equation("then", "the time + the hours", MOMENT, ARITHMETIC)
def later(since: float, by_h: float) -> float:
    """So many hours after a moment."""
    return since + by_h


@equation("then", "the time - the hours", MOMENT, ARITHMETIC)
def sooner(until: float, by_h: float) -> float:
    """So many hours before a moment."""
    return until - by_h


@equation("hours between", "the later time - the earlier", "h", ARITHMETIC)
def hours_between(since: float, until: float) -> float:
    """How long it is from one moment to a later one; 0 where it is not later. [h]"""
    return max(until - since, 0.0)
