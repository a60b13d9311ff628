"""What a why is answered from: the round as it stands, at a moment."""

from collections.abc import Sequence
from datetime import datetime

from msgspec import Struct

from store.book.facts.farm import Animal
from store.book.facts.feed import Feed, Told
from store.book.snapshot import Snapshot
from store.book.turn import local
from store.husbandry.why import Value, given
from store.round.saying import moment_words
from store.round.steps import Step

BY_PLAN = "your plan"
YOUR_RULE = "your rule, set under F"
BEGINS = "when it usually begins"


class Asked(Struct, frozen=True):
    """A round, its plan, and the moment it is asked at."""

    snapshot: Snapshot
    steps: Sequence[Step]
    now: datetime

    @property
    def zone(self) -> str:
        """The farm's."""
        return self.snapshot.farm.zone

    def day(self, at: datetime) -> str:
        """`Mon 2 Mar`."""
        wall = local(at, self.zone)
        return f"{wall:%a} {wall.day} {wall:%b}"

    def when(self, at: datetime) -> str:
        """`Mon 2 Mar 06:40`."""
        return moment_words(at, self.zone)

    def since(self, words: str, at: datetime | None) -> str:
        """`your plan since Mon 2 Mar`."""
        return f"{words} since {self.day(at)}" if at else words

    def heads(self, heads: Sequence[Animal]) -> Value:
        """How many stand there."""
        return given(len(heads), "heads", "heads" if len(heads) > 1 else "head", "counted by the book")

    def holds(self, feed: Feed, told: Told, holds_kg: float) -> Value:
        """What one measure of a feed holds."""
        came = f"weighed {self.day(told.weighed_at)}" if told.weighed_at else "weighed"
        return given(holds_kg, f"one level {told.name} of {feed.name}", "kg", came)
