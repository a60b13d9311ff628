"""What comes by the clock: what a round does not hold of it is read once for each look at the book."""

from datetime import datetime

from store.book.errors import BookError
from store.book.reading.watches import open_watches
from store.book.snapshot import Snapshot
from store.round.agenda import NOTHING, Besides, agenda
from store.round.item import Item
from tui.walker import Walker
from tui.words import at_hour


class Coming:
    """The agenda of the round at hand, at whatever moment it is drawn."""

    def __init__(self) -> None:
        """Nothing is read yet."""
        self.of: Snapshot | None = None
        self.besides = NOTHING
        self.unread = ""

    def items(self, walker: Walker) -> tuple[Item, ...]:
        """Soonest first; none of a past round, which is long over."""
        if not walker.live:
            return ()
        now = walker.book.clock.now()
        if self.of is not walker.snapshot:
            self.of, self.besides, self.unread = walker.snapshot, NOTHING, ""
            self._read(walker, now)
        return agenda(walker.snapshot, walker.steps, now, self.besides)

    def _read(self, walker: Walker, now: datetime) -> None:
        """What cannot be read is said, and the rest is told all the same."""
        try:
            self.besides = Besides(walker.open_between(), open_watches(walker.book.desk, now))
        except BookError as problem:
            self.unread = str(problem)


def next_lines(walker: Walker, coming: Coming) -> list[str]:
    """The same in a line each, for the closing: that its own round begins is left out there."""
    now = walker.book.clock.now()
    asked = (item for item in coming.items(walker) if not (item.is_round and item.turn == walker.turn))
    lines = [
        f"{at_hour(item.at, now, walker.zone)}{' LATE' if item.is_late(now) else ''}  {item.words}" for item in asked
    ]
    return [*lines, coming.unread] if coming.unread else lines
