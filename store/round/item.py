"""One thing that comes by the clock, as a frozen value."""

from datetime import datetime

from msgspec import Struct

from store.book.reading.watches import Watch
from store.book.turn import Turn
from store.round.steps import Step


class Item(Struct, frozen=True):
    """One thing that comes at a moment. asks: it is to be done by then, or until a later moment, and is
    late after it; else it only comes.

    step: where it is done, if that stands in some round now; turn: which round that is, or which one begins.
    missed: the round before this one that asks for it, and in which nothing of it was written in its time.
    over_at: from then on it is too late for it. watch: what is to be looked at again. note: a little more of it.
    """

    at: datetime
    words: str
    note: str = ""
    until: datetime | None = None
    over_at: datetime | None = None
    asks: bool = True
    step: Step | None = None
    turn: Turn | None = None
    missed: Turn | None = None
    watch: Watch | None = None

    @property
    def is_round(self) -> bool:
        """Whether it is a feeding round that begins."""
        return self.turn is not None and self.step is None

    def is_due(self, now: datetime) -> bool:
        """Whether it is time to do it."""
        return self.asks and self.at <= now

    def is_late(self, now: datetime) -> bool:
        """Whether it should be done already."""
        return self.asks and (self.until or self.at) <= now
