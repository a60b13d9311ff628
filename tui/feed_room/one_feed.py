"""One feed in the feed room: what can be written of it."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import TYPE_CHECKING

from store.book.drafts import Draft
from store.book.errors import BookError
from store.book.stocks import Delivered, Lost, Stocked
from store.feedroom.drafts import FeedHand, Found, taken_back
from store.feedroom.room import RoomLine
from store.round.saying import exact
from tui.changed import said
from tui.feed_room.told import why
from tui.feed_room.writing import Delivering, Losing, StockWeighing
from tui.page import Line, Role, Size, wrapped
from tui.place import Place
from tui.walk.picking import Picking
from tui.words import when

if TYPE_CHECKING:
    from tui.feed_room.room import FeedRoom

BACK_MOST = 4
"""So many of the newest entries can be taken back from here."""


class OneFeed(Picking):
    """A delivery, a weighing, a loss; and what of it is taken back."""

    ENTER_WORDS = "take it"

    def __init__(self, room: "FeedRoom", line: RoomLine) -> None:
        """Over the feed room."""
        super().__init__(room.rooms, room)
        self.room, self.line = room, line
        self.acts = list(self._acts())
        self.row = 0

    def heading(self) -> str:
        """Which feed."""
        return f"FEED ROOM  {self.line.stock.feed.name}"

    def choices(self) -> list[str]:
        """What can be written."""
        return [words for words, _ in self.acts]

    def picked(self, row: int) -> Place:
        """Ask for it, with what the book knows of it; what cannot be read is said."""
        try:
            return self.acts[row][1]()
        except BookError as problem:
            return self.say(str(problem))

    def below(self, size: Size) -> list[Line]:
        """Why there is so much of it."""
        return [(), *wrapped(why(self.walker, self.line.stock), size.width, Role.TEXT, "   ")]

    def hand(self) -> FeedHand:
        """Who writes, and when it happened: now, or the time that was set.

        Never the time of a past round that is open: what is there is weighed now.
        """
        walker = self.walker
        return FeedHand(walker.person.id, walker.set_at or walker.book.clock.now(), walker.set_from)

    def written(self, words: str) -> Place:
        """Back to the room, as the book stands now; where it cannot be read again, that is said too."""
        unread = said(self.room.look)
        return self.room.say(f"Written: {self.line.stock.feed.name}, {words}.{f' {unread}' if unread else ''}")

    def write(self, draft: Draft, words: str) -> Place | None:
        """Write it; None where the book refused, which is said."""
        problem = self.walker.write(draft)
        if problem:
            self.say(problem)
            return None
        return self.written(words)

    def _acts(self) -> Iterator[tuple[str, Callable[[], Place]]]:
        yield "a delivery came", lambda: Delivering(self)
        yield "what is there was weighed", lambda: StockWeighing(self)
        yield "some was lost: spilt, spoilt, eaten by others", lambda: Losing(self)
        yield "weigh a scoop, flake or bale of it", self._scoop
        for each in self._newest():
            yield f"take back: {self._said(each)}", partial(self._take_back, each)

    def _newest(self) -> list[Found]:
        stock = self.line.stock
        found: list[Found] = [*stock.delivered, *(each for each in stock.lost if not each.thrown_out)]
        if stock.weighed:
            found.append(stock.weighed)
        return sorted(found, key=lambda each: each.at, reverse=True)[:BACK_MOST]

    def _scoop(self) -> Place:
        from store.book.register import read_register  # noqa: PLC0415 heavy: it reads with the records
        from store.herd.measure import MeasureSheet  # noqa: PLC0415
        from tui.farm.sheet_form import SheetForm  # noqa: PLC0415

        register = read_register(self.walker.book.desk, self.walker.book.clock.now())
        return SheetForm(self.room, MeasureSheet(register, None, self.line.stock.feed.id))

    def _take_back(self, found: Found) -> Place:
        draft = taken_back(self.hand(), self.line.stock.feed.id, found)
        return self.write(draft, f"{self._said(found)} is taken back; it stays in the book as history") or self

    def _said(self, found: Found) -> str:
        what = {Delivered: "delivered", Stocked: "weighed", Lost: "lost"}[type(found)]
        return f"{exact(found.kg, self.walker.farm.units)} {what} {when(found.at, self.walker.farm.zone)}"
