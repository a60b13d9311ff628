"""The one place that reads the time. Everything else is handed it."""

import time
from datetime import UTC, datetime, timedelta
from uuid import UUID

from uuid_utils.compat import uuid7

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
MICROSECOND = timedelta(microseconds=1)


class Clock:
    """The laptop's own clock."""

    def now(self) -> datetime:
        """This moment, in UTC."""
        return datetime.now(UTC)

    def ticks(self) -> float:
        """Seconds that never run backwards: for telling a held key from a pressed one. [s]"""
        return time.monotonic()


class PretendClock(Clock):
    """A clock that starts at a moment of our choosing and runs on from there. For the demo and tests."""

    def __init__(self, start: datetime) -> None:
        self._start = start
        self._began_s = time.monotonic()

    def now(self) -> datetime:
        """The pretended moment, in UTC."""
        return self._start + timedelta(seconds=time.monotonic() - self._began_s)


def micros(moment: datetime) -> int:
    """Microseconds since 1970 in UTC. Raises ValueError for a time without a zone."""
    if moment.tzinfo is None:
        raise ValueError(f"{moment} has no zone")
    return (moment - EPOCH) // MICROSECOND


def moment(micros_utc: int) -> datetime:
    """The moment that many microseconds after 1970, in UTC."""
    return EPOCH + timedelta(microseconds=micros_utc)


def first_id(at: datetime) -> UUID:
    """No id that was made at this moment or later sorts before it."""
    return UUID(int=(micros(at) // 1000) << 80)


def new_id(at: datetime) -> UUID:
    """A new id (UUID version 7, RFC 9562) that sorts by the time it was made."""
    return uuid7(nanoseconds=micros(at) * 1000)
