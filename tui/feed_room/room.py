"""The feed room: every feed with what is there and how long it lasts."""

from typing import ClassVar

from store.book.errors import BookError
from store.book.reading.needs import read_needs
from store.book.reading.stock import read_settings
from store.feedroom.room import RoomLine, read_room
from store.feedroom.tub import tub_intake
from store.feedroom.whys import hay_numbers, line_numbers, tub_numbers
from store.husbandry.why import Value
from tui.feed_room.costing import Costing
from tui.feed_room.one_feed import OneFeed
from tui.feed_room.told import feed_lines, room_words
from tui.page import Line, Role, Size, wrapped
from tui.place import Place, Rooms
from tui.view import Key, View
from tui.walk.picking import Picking


class FeedRoom(Picking):
    """Up and Down look at a feed, Enter opens it."""

    ENTER_WORDS = "open"

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms, back)
        self.row = 0
        self.look()

    def look(self) -> None:
        """Read it anew."""
        self.now = self.walker.book.clock.now()
        self.lines = read_room(self.walker.book.desk, self.now)
        self._look_at_line()

    def _look_at_line(self) -> None:
        """Read what is said of the feed we look at; by a key, so that painting reads nothing."""
        try:
            desk = self.walker.book.desk
            self.told = list(feed_lines(self.walker, self.line, desk, self.now)) if self.line else []
        except BookError as problem:
            self.told = [str(problem)]

    def heading(self) -> str:
        """What it is."""
        empty = "" if self.lines else ": no feed yet. F, then FEEDS, sets one up."
        return f"FEED ROOM  {self.walker.farm.name}{empty}"

    def choices(self) -> list[str]:
        """A line for each feed."""
        return [room_words(self.walker, line) for line in self.lines]

    @property
    def line(self) -> RoomLine | None:
        """The feed we look at."""
        return self.lines[min(self.row or 0, len(self.lines) - 1)] if self.lines else None

    def below(self, size: Size) -> list[Line]:
        """Why there is so much of it, and what is to be done."""
        said = [row for each in self.told for row in wrapped(each, size.width, Role.TEXT, "   ")]
        return [(), *said] if said else []

    def mark(self, row: int | None, number: str = "") -> None:
        """Another feed is looked at."""
        super().mark(row, number)
        self._look_at_line()

    def enter(self) -> View:
        """Open the feed; where there is none, say what fills the room."""
        return super().enter() if self.lines else self.say("There is no feed yet. F sets one up.")

    def picked(self, row: int) -> Place:
        """What can be written of it."""
        return OneFeed(self, self.lines[row])

    def costs(self) -> Place:
        """What the last week cost; what cannot be read is said."""
        try:
            return Costing(self.rooms, self)
        except BookError as problem:
            return self.say(str(problem))

    def numbers(self) -> tuple[Value, ...]:
        """The marked feed's, then the others'."""
        desk, asked = self.walker.book.desk, self.as_asked()
        needs, settings = read_needs(desk, self.now), read_settings(desk, self.now)
        lines = sorted(self.lines, key=lambda line: line is not self.line)
        found = [value for line in lines for value in line_numbers(asked, line, needs, settings)]
        tub = tub_numbers(self.line.stock, tub_intake(desk, self.line.stock)) if self.line else ()
        hay = hay_numbers(asked, self.line.stock, needs, settings) if self.line else ()
        return (*found, *hay, *tub)

    def numbers_of(self) -> str:
        """The room."""
        return "feed room"

    KEYS: ClassVar[tuple[Key, ...]] = (
        *Picking.KEYS,
        Key(("c",), "C", "costs", "What feeding cost in the last seven days.", lambda room: room.costs()),
        Key(("f",), "F", "my farm", "My farm: feeds, scoops, plans.", lambda room: room.rooms.my_farm(room)),
    )
