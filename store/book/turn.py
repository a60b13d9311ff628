"""Which round: a day and a slot. And the names of its steps, the same on every laptop."""

from datetime import UTC, date, datetime, timedelta
from functools import cache, lru_cache
from uuid import UUID, uuid5

import pendulum
from msgspec import Struct

from store.book.clock import MICROSECOND
from store.book.words import EVENING, FEEDING, MIDDAY, MORNING, NIGHT, SLOTS, Kind

NIGHT_ENDS_H = 3
"""Before this hour it is still the evening round of the day before. Common practice. [h]"""
USUAL_H = {MORNING: 7, MIDDAY: 12, EVENING: 18, NIGHT: 22}
"""When a round is usually walked. [h]"""
MIDDAY_ENDS_H, LATE_NIGHT_ENDS_H = 16, 5
"""Until when somebody walks a midday round; a night round, the next day. Common practice. [h]"""


class Turn(Struct, frozen=True):
    """One round. The day is the farm's own and is stored, never computed from UTC again."""

    day: date
    slot: str

    @property
    def feeds(self) -> bool:
        """Whether it is a feeding round: a midday or night round asks for jobs and looks only."""
        return self.slot in FEEDING

    def before(self) -> "Turn":
        """The feeding round before this one."""
        if self.slot == MORNING:
            return Turn(self.day - timedelta(days=1), EVENING)
        return Turn(self.day, EVENING if self.slot == NIGHT else MORNING)

    def after(self) -> "Turn":
        """The feeding round after this one."""
        if self.slot in (MORNING, MIDDAY):
            return Turn(self.day, EVENING)
        return Turn(self.day + timedelta(days=1), MORNING)

    def between(self) -> "Turn":
        """The round that may lie between this feeding round and the next: midday or night, of the same day."""
        return Turn(self.day, MIDDAY if self.slot == MORNING else NIGHT)

    def is_before(self, other: "Turn") -> bool:
        """Whether this round comes before another one."""
        return (self.day, SLOTS.index(self.slot)) < (other.day, SLOTS.index(other.slot))

    def begins(self, zone: str) -> datetime:
        """When such a round usually begins: for what is typed in later without a time. Common practice."""
        return _at_hour(self.day, USUAL_H[self.slot], zone)

    def day_begins(self, zone: str) -> datetime:
        """Midnight before it: whoever walked it wrote later than that."""
        return _at_hour(self.day, 0, zone)

    def facts_at(self, zone: str, evening_from_h: int) -> datetime:
        """The last moment of its own day that belongs to it: what is in force then is what it was walked by."""
        last = _at_hour(self.day + timedelta(days=1), 0, zone)
        return min(last, self.ends(zone, evening_from_h)) - MICROSECOND

    def ends(self, zone: str, evening_from_h: int) -> datetime:
        """Until when a moment belongs to this round."""
        if self.slot in (MORNING, MIDDAY):
            hour = evening_from_h if self.slot == MORNING else max(evening_from_h, MIDDAY_ENDS_H)
            return _at_hour(self.day, hour, zone)
        hour = NIGHT_ENDS_H if self.slot == EVENING else LATE_NIGHT_ENDS_H
        return _at_hour(self.day + timedelta(days=1), hour, zone)

    def step_id(self, farm_id: UUID, kind: Kind, subject_id: UUID, occasion: str = "") -> UUID:
        """The same for the same job of the same round, whoever plans it and wherever.

        It holds no position, order, amount, time or pen: what moves keeps its step.
        occasion: tells apart two steps of one kind for one subject in one round.
        """
        return uuid5(farm_id, f"{self.day.isoformat()}|{self.slot}|{kind}|{subject_id.hex}|{occasion}")


def _at_hour(day: date, hour: int, zone: str) -> datetime:
    """When the farm's wall clock shows an hour of a day."""
    return from_wall(datetime(day.year, day.month, day.day, hour), zone)  # noqa: DTZ001 wall time


def local(moment: datetime, zone: str) -> datetime:
    """A moment on the farm's own wall clock, with the offset it had then. Raises ValueError without a zone."""
    if moment.tzinfo is None:
        raise ValueError(f"{moment} has no zone")
    return datetime.fromisoformat(pendulum.instance(moment).in_timezone(_known(zone)).isoformat())


@lru_cache(maxsize=4096)
def from_wall(wall: datetime, zone: str, *, first: bool = False) -> datetime:
    """The moment, in UTC, that the farm's wall clock showed. Of an hour that came twice the second, or the first."""
    shown = pendulum.instance(wall.replace(fold=0 if first else 1), tz=_known(zone))
    return datetime.fromisoformat(shown.isoformat()).astimezone(UTC)


@cache
def _known(zone: str) -> pendulum.Timezone:
    """A zone, read from its file once: pendulum reads it anew for every moment."""
    return pendulum.timezone(zone)


def turn_at(now: datetime, zone: str, evening_from_h: int) -> Turn:
    """The round that this moment belongs to."""
    wall = local(now, zone)
    day = date(wall.year, wall.month, wall.day)
    if wall.hour < NIGHT_ENDS_H:
        return Turn(day - timedelta(days=1), EVENING)
    return Turn(day, EVENING if wall.hour >= evening_from_h else MORNING)
