"""What comes by the clock: what a round does not hold of it is read once for each look at the book."""

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

    def items(self, walker: Walker) -> tuple[Item, ...]:
        """Soonest first; none of a past round, which is long over."""
        if not walker.live:
            return ()
        now = walker.book.clock.now()
        if self.of is not walker.snapshot:
            self.besides = Besides(walker.open_between(), open_watches(walker.book.desk, now))
            self.of = walker.snapshot
        return agenda(walker.snapshot, walker.steps, now, self.besides)


def next_lines(walker: Walker, items: tuple[Item, ...]) -> list[str]:
    """The same in a line each, for the closing: that its own round begins is left out there."""
    now = walker.book.clock.now()
    asked = (item for item in items if item.step or item.turn != walker.turn)
    return [
        f"{at_hour(item.at, now, walker.zone)}{' LATE' if item.is_late(now) else ''}  {item.words}" for item in asked
    ]
