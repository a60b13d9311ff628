"""Calvings, calves that share a cow's milk, and when they were apart, as frozen values."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.words import EVERY_NIGHT, Apart


class Parting(Struct, frozen=True):
    """A calf was shut away, let in, or had got out: when (between since and at), and which. None: it is on paper.

    cow_id: which cow it was let in to, or found with. why: as somebody typed or picked it.
    """

    state: Apart | None
    at: datetime
    since: datetime | None
    cow_id: UUID | None = None
    why: str = ""

    @property
    def earliest(self) -> datetime:
        """The earliest moment at which it can have been: how long it is apart is counted from then."""
        return self.since or self.at


class ApartRule(Struct, frozen=True):
    """When a calf is shut away: so many hours until the next milking, from a day of its life on, in which nights.

    nights: `1` or `0` for each night from Monday's on. [h, d]
    """

    apart_h: float = 12.0
    from_day: int = 0
    nights: str = EVERY_NIGHT


class Share(Struct, frozen=True):
    """A calf and the cow it shares: the farm's longest time apart [h], and what was written of it, newest first.

    since, until: from when to when they share; until None: they still do. second_cow_id: it sucks her too,
    since second_since (None: all along). A second cow that it sucks no more is not kept: her pails of then are taken
    as those of a cow without this calf.
    rule: when it is shut away; None: the farm has not said it.
    """

    cow_id: UUID
    calf_id: UUID
    longest_h: float
    partings: tuple[Parting, ...] = ()
    since: datetime | None = None
    until: datetime | None = None
    second_cow_id: UUID | None = None
    rule: ApartRule | None = None
    second_since: datetime | None = None

    def began(self, cow_id: UUID) -> datetime | None:
        """Since when it sucks one of its cows; None: all along."""
        if cow_id != self.second_cow_id:
            return self.since
        return max(filter(None, (self.since, self.second_since)), default=None)

    @property
    def cow_ids(self) -> tuple[UUID, ...]:
        """Every cow that it sucks."""
        return (self.cow_id,) if self.second_cow_id is None else (self.cow_id, self.second_cow_id)


class Birth(Struct, frozen=True):
    """A calving, between two moments (since None: at one). calves: those that are kept, and whether alive."""

    since: datetime | None
    at: datetime
    calves: tuple[tuple[UUID | None, bool], ...] = ()

    @property
    def earliest(self) -> datetime:
        """The earliest moment at which it can have been."""
        return self.since or self.at
