"""A: another feed on hand for the ration; one that must not be given says why."""

from typing import TYPE_CHECKING

from store.feedroom.delivery import money
from store.ration.parts import RationFeed
from store.round.saying import weight
from tui.page import Line, Role, Size, wrapped
from tui.place import Place
from tui.walk.picking import Picking

if TYPE_CHECKING:
    from tui.ration.ration import Ration

NONE = "ADD A FEED: every feed that is set up has a line already. F, then FEEDS, sets up another."


class Adding(Picking):
    """The feeds without a line, those that may be given first."""

    ENTER_WORDS = "add it"

    def __init__(self, ration: "Ration") -> None:
        """Over a ration."""
        super().__init__(ration.rooms, ration)
        self.ration = ration
        shown = ration.seen.rows
        self.feeds = sorted((feed for feed in ration.case.feeds if feed not in shown), key=lambda each: each.barred)

    def heading(self) -> str:
        """Whose ration, or that there is nothing to add."""
        return f"ADD A FEED  {self.ration.case.name}" if self.feeds else NONE

    def choices(self) -> list[str]:
        """A line for each."""
        return [self._told(feed) for feed in self.feeds]

    def below(self, size: Size) -> list[Line]:
        """Why the marked one must not be given, in full."""
        feed = self.feeds[self.row] if self.row is not None and self.feeds else None
        return [(), *wrapped(feed.barred, size.width, Role.WARNING, "   ")] if feed and feed.barred else []

    def picked(self, row: int) -> Place:
        """It has a line, with nothing given yet; a barred one stays where it is."""
        feed = self.feeds[row]
        if feed.barred:
            return self.say(feed.barred)
        self.ration.add(feed)
        return self.ration

    def _told(self, feed: RationFeed) -> str:
        if feed.barred:
            return f"{feed.feed.name}  NOT FOR THEM"
        farm = self.ration.farm
        there = "not known how much" if feed.there_kg is None else f"{weight(feed.there_kg.amount, farm.units)} there"
        price = f", {money(feed.price_per_kg.amount, farm.currency)} a kg" if feed.price_per_kg else ", no price"
        return f"{feed.feed.name}  {there}{price}"
