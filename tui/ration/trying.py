"""Amounts that are tried at a ration: typed for a meal of a feed, taken, and how it balances with them.

The case is read when the place opens and once more after each change of the book; a key only reckons what it changed.
"""

from collections.abc import Callable, Mapping

from store.book.errors import NotKept
from store.ration.balance import balance
from store.ration.parts import Case, RationFeed
from store.round.amount import Unreadable
from tui.place import Over, Place, Rooms
from tui.ration.numbers import need_numbers
from tui.ration.seen import Farm, Reading, Seen
from tui.ration.trial import Cell, read, rows
from tui.scroll import Scroll
from tui.typed import Typed, begins_amount
from tui.view import View

FREE = "{} stands free: nothing is measured out. F sets where a feed stands free."
TYPED_MOST = 40
"""Room for two amounts with their measures: `1 1/2 scoops + 10.25 kg`."""
FULL = "There is room for no more: Enter takes what is typed, Backspace takes a character back."
NO_ROW = "There is no feed to change yet. A adds one of those on hand."


class Trying(Over):
    """What is marked, typed and tried, and what is seen of it."""

    def __init__(self, rooms: Rooms, back: Place, reads: Callable[[], tuple[Case, Farm]]) -> None:
        """Over the place that it goes back to. reads: the case as the book stands, and what the farm has set."""
        super().__init__(rooms, back)
        self.scroll = Scroll(follows=False, up="Page Up", down="Page Down")
        self.reads = reads
        self.row = self.meal = 0
        self.entry = Typed(TYPED_MOST)
        self.tried: dict[Cell, float] = {}
        self.look()

    def standing(self) -> View:
        """As the book stands now; where nobody is there to be fed any more, back, and that is said."""
        try:
            self.look_again()
        except NotKept as gone:
            return self.came_from.say(str(gone)).standing()
        return self

    def look_again(self) -> None:
        """Read it anew where the book was written since."""
        if self.looked_at is not self.walker.snapshot:
            self.look()

    def look(self) -> None:
        """Read the case, and how what is given now balances. Raises BookError."""
        self.looked_at = self.walker.snapshot
        self.case, self.farm = self.reads()
        known = {each.feed.id for each in self.case.feeds}
        self.tried = {cell: kg for cell, kg in self.tried.items() if cell[1] in known}
        self.before = balance(self.case, self.case.now)
        self.doubts = tuple(dict.fromkeys(doubt for value in need_numbers(self.case) for doubt in value.doubts()))
        self.reckon()

    def reckon(self) -> None:
        """How it balances with what is tried, and what is typed where that can be read."""
        reading = self._reading()
        new = {**self.case.now, **self.tried, **reading.amounts}
        after = self.before if not self.tried and not reading.amounts else balance(self.case, new)
        shown = rows(self.case, self.tried)
        marked = self.row, self.meal, self.entry.text, reading
        self.seen = Seen(self.case, self.farm, shown, self.before, after, self.doubts, dict(self.tried), *marked)

    def _reading(self) -> Reading:
        feed = self.feed
        if not self.entry.text or feed is None:
            return Reading()
        try:
            slots = self.case.slots
            return Reading(read(self.entry.text, feed, slots, slots[self.meal], self.farm.units))
        except Unreadable as problem:
            return Reading(problem=str(problem))

    @property
    def feed(self) -> RationFeed | None:
        """The marked feed."""
        found = rows(self.case, self.tried)
        return found[min(self.row, len(found) - 1)] if found else None

    @property
    def typing(self) -> bool:
        """While an amount is being typed."""
        return bool(self.entry.text)

    def takes(self, character: str) -> bool:
        """A digit starts an amount of the marked meal; + goes on with the next meal."""
        if not self.typing and not begins_amount(character):
            return False
        feed = self.feed
        if feed is None or feed.free:
            self.say(NO_ROW if feed is None else FREE.format(feed.feed.name))
            return True
        if self.entry.is_full:
            self.say(FULL)
        self.scroll.seek()
        taken = self.entry.takes(character)
        if taken:
            self.reckon()
        return taken

    def take(self) -> bool:
        """What is typed counts as tried; whether it could be read, else that is said and it stays."""
        if not self.typing:
            return True
        reading = self._reading()
        if reading.problem:
            self.say(reading.problem)
            return False
        self.try_out(reading.amounts)
        return True

    def try_out(self, amounts: Mapping[Cell, float]) -> None:
        """Amounts that count as tried. [kg]"""
        self.entry.clear()
        self.tried.update(amounts)
        self.reckon()

    def add(self, feed: RationFeed) -> None:
        """A line for a feed, with nothing given yet, and the mark on it."""
        self.tried.update(dict.fromkeys(((slot, feed.feed.id) for slot in self.case.slots), 0.0))
        self.row = rows(self.case, self.tried).index(feed)
        self.scroll.seek()
        self.reckon()

    def choose(self, by: int) -> Place:
        """Another feed; what is typed is taken first."""
        if self.take():
            self.row = (self.row + by) % max(len(self.seen.rows), 1)
            self.scroll.seek()
            self.reckon()
        return self

    def choose_meal(self, by: int) -> Place:
        """Another meal of the feed; what is typed is taken first."""
        if self.take():
            self.scroll.seek()
            self.meal = (self.meal + by) % len(self.case.slots)
            self.reckon()
        return self
