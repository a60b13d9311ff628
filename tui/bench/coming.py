"""What comes by the clock: read and reckoned once for each look at the book, not at every painting."""

from datetime import datetime

from store.book.errors import BookError
from store.book.reading.watches import open_watches
from store.book.snapshot import Snapshot
from store.round.agenda import NOTHING, Besides, agenda, all_coming
from store.round.item import Item
from tui.walker import Walker
from tui.words import at_hour


class Coming:
    """The agenda of the round at hand, at whatever moment it is drawn."""

    def __init__(self) -> None:
        """Nothing is read yet."""
        self.of: Snapshot | None = None
        self.coming: tuple[Item, ...] = ()
        self.unread = ""

    def items(self, walker: Walker) -> tuple[Item, ...]:
        """Soonest first; none of a past round, which is long over."""
        if not walker.live:
            return ()
        now = walker.book.clock.now()
        if self.of is not walker.snapshot:
            self.of, self.unread = walker.snapshot, ""
            self.coming = all_coming(walker.snapshot, walker.steps, self._besides(walker, now))
        return agenda(self.coming, now)

    def _besides(self, walker: Walker, now: datetime) -> Besides:
        """What cannot be read is said, and the rest is told all the same."""
        try:
            return Besides(walker.open_between(), open_watches(walker.book.desk, now))
        except BookError as problem:
            self.unread = str(problem)
            return NOTHING


def next_lines(walker: Walker, coming: Coming) -> list[str]:
    """The same in a line each, for the closing: that its own round begins is left out there."""
    now = walker.book.clock.now()
    asked = (item for item in coming.items(walker) if not (item.is_round and item.turn == walker.turn))
    lines = [
        f"{at_hour(item.at, now, walker.zone)}{' LATE' if item.is_late(now) else ''}  {item.words}" for item in asked
    ]
    return [*lines, coming.unread] if coming.unread else lines
