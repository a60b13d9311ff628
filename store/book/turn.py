"""Which round: a day and a slot. And the names of its steps, the same on every laptop."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from uuid import UUID, uuid5

import pendulum

from store.book.clock import MICROSECOND
from store.book.words import EVENING, MORNING, Kind

NIGHT_ENDS_H = 3
"""Before this hour it is still the evening round of the day before. Common practice. [h]"""


USUAL_H = {MORNING: 7, EVENING: 18}
"""When a round is usually walked. [h]"""


@dataclass(frozen=True, slots=True)
class Turn:
    """One round. The day is the farm's own and is stored, never computed from UTC again."""

    day: date
    slot: str

    def before(self) -> "Turn":
        """The round before this one: of the same day, or the evening of the day before."""
        return Turn(self.day, MORNING) if self.slot == EVENING else Turn(self.day - timedelta(days=1), EVENING)

    def after(self) -> "Turn":
        """The round after this one."""
        return Turn(self.day, EVENING) if self.slot == MORNING else Turn(self.day + timedelta(days=1), MORNING)

    def begins(self, zone: str) -> datetime:
        """When such a round usually begins: for what is typed in later without a time. Common practice."""
        hour = USUAL_H.get(self.slot, 12)
        return from_wall(datetime(self.day.year, self.day.month, self.day.day, hour), zone)  # noqa: DTZ001 wall time

    def day_begins(self, zone: str) -> datetime:
        """Midnight before it: whoever walked it wrote later than that."""
        return from_wall(datetime(self.day.year, self.day.month, self.day.day), zone)  # noqa: DTZ001 wall time

    def facts_at(self, zone: str, evening_from_h: int) -> datetime:
        """The last moment of its own day that belongs to it: what is in force then is what it was walked by."""
        midnight = self.day + timedelta(days=1)
        last = from_wall(datetime(midnight.year, midnight.month, midnight.day), zone)  # noqa: DTZ001 wall time
        return min(last, self.ends(zone, evening_from_h)) - MICROSECOND

    def ends(self, zone: str, evening_from_h: int) -> datetime:
        """Until when a moment belongs to this round."""
        if self.slot == MORNING:
            return from_wall(datetime(self.day.year, self.day.month, self.day.day, evening_from_h), zone)  # noqa: DTZ001
        night = self.day + timedelta(days=1)
        return from_wall(datetime(night.year, night.month, night.day, NIGHT_ENDS_H), zone)  # noqa: DTZ001

    def step_id(self, farm_id: UUID, kind: Kind, subject_id: UUID, occasion: str = "") -> UUID:
        """The same for the same job of the same round, whoever plans it and wherever.

        It holds no position, order, amount, time or pen: what moves keeps its step.
        occasion: tells apart two steps of one kind for one subject in one round.
        """
        return uuid5(farm_id, f"{self.day.isoformat()}|{self.slot}|{kind}|{subject_id.hex}|{occasion}")


def local(moment: datetime, zone: str) -> datetime:
    """A moment on the farm's own wall clock, with the offset it had then. Raises ValueError without a zone."""
    if moment.tzinfo is None:
        raise ValueError(f"{moment} has no zone")
    return datetime.fromisoformat(pendulum.instance(moment).in_timezone(zone).isoformat())


def from_wall(wall: datetime, zone: str) -> datetime:
    """The moment, in UTC, that the farm's wall clock showed. An hour that came twice is the second one."""
    return datetime.fromisoformat(pendulum.instance(wall.replace(fold=1), tz=zone).isoformat()).astimezone(UTC)


def turn_at(now: datetime, zone: str, evening_from_h: int) -> Turn:
    """The round that this moment belongs to."""
    wall = local(now, zone)
    day = date(wall.year, wall.month, wall.day)
    if wall.hour < NIGHT_ENDS_H:
        return Turn(day - timedelta(days=1), EVENING)
    return Turn(day, EVENING if wall.hour >= evening_from_h else MORNING)
