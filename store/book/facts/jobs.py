"""Standing tasks of a slot and the days on which they come, as frozen values."""

from datetime import date, timedelta
from uuid import UUID

from msgspec import Struct

from store.book.words import Stage


class Due(Struct, frozen=True):
    """When a job comes, since a day. season: its first and last day as `MM-DD`; it may go over the end of a year.

    once: until it is done, from its first day on. until_on: the last day. stage: only while such an animal is there.
    """

    since: date | None = None
    every_days: int = 1
    once: bool = False
    until_on: date | None = None
    season: tuple[str, str] | None = None
    stage: Stage | None = None

    @property
    def looks_back(self) -> bool:
        """Whether it matters when the job was done last."""
        return self.once or self.every_days > 1

    def comes_on(self, day: date) -> bool:
        """Whether a day is within its season, and not past its last day."""
        return (self.until_on is None or day <= self.until_on) and (self.season is None or self._in_season(day))

    def _in_season(self, day: date) -> bool:
        first, last = self.season or ("", "")
        here = f"{day:%m-%d}"
        return first <= here <= last if first <= last else here >= first or here <= last

    def day_of_season(self, day: date) -> int | None:
        """The how-manieth day of its season a day within it is; None without a season."""
        if self.season is None:
            return None
        month, of_month = map(int, self.season[0].split("-"))
        year = day.year if self.season[0] <= f"{day:%m-%d}" else day.year - 1
        return (day - date(year, month, 1) - timedelta(days=of_month - 1)).days + 1


EVERY_DAY = Due()


class Job(Struct, frozen=True):
    """A standing task of a slot. last_on: when it was done last before this round, where that matters."""

    id: UUID
    name: str
    pen_id: UUID | None
    closing: bool
    slot: str = ""
    adult_only: bool = False
    two_people: bool = False
    due: Due = EVERY_DAY
    last_on: date | None = None
