"""Hours by the clock: from a moment to a later one. A moment is so many hours since 1970 began, in Greenwich. [h]

Moments are absolute, so that a night in which the clocks change has the hours that it has.
"""

from datetime import UTC, datetime, timedelta

from store.husbandry.why import ARITHMETIC, Value, equation, given

MOMENT = "time"
"""The unit of a moment."""
HOUR = timedelta(hours=1)
BEGAN = datetime(1970, 1, 1, tzinfo=UTC)


def moment(at: datetime, name: str, came: str) -> Value:
    """A moment as a number that says where it came from."""
    return given((at - BEGAN) / HOUR, name, MOMENT, came)


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
