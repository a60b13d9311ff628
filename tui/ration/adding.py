"""A: another feed on hand for the ration; one that must not be given says why."""

from typing import TYPE_CHECKING

from msgspec.structs import replace

from store.book.words import Units
from store.husbandry.why import Value
from store.ration.parts import RationFeed
from store.ration.prices import MCAL, Priced, cheapest, prices
from store.round.saying import weight
from tui.page import Line, Role, Size, wrapped
from tui.place import Place
from tui.ration.said import price
from tui.walk.picking import Picking
from tui.why.amounts import in_units

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
        self.prices = prices(ration.case)
        self.feeds = sorted((feed for feed in ration.case.feeds if feed not in shown), key=lambda each: each.barred)

    def heading(self) -> str:
        """Whose ration, or that there is nothing to add."""
        return f"ADD A FEED  {self.ration.case.name}" if self.feeds else NONE

    def choices(self) -> list[str]:
        """A line for each."""
        return [self._told(feed) for feed in self.feeds]

    def below(self, size: Size) -> list[Line]:
        """In which feed of all energy and protein cost least; why the marked one must not be given, in full."""
        feed = self.feeds[self.row] if self.row is not None and self.feeds else None
        said = [(self._cheapest(), Role.TEXT), (feed.barred if feed else "", Role.WARNING)]
        return [row for words, role in said if words for row in [(), *wrapped(words, size.width, role, "   ")]]

    def picked(self, row: int) -> Place:
        """It has a line, with nothing given yet; a barred one stays where it is."""
        feed = self.feeds[row]
        if feed.barred:
            return self.say(feed.barred)
        self.ration.add(feed)
        return self.ration

    def numbers(self) -> tuple[Value, ...]:
        """What energy and protein cost in each feed."""
        return tuple(self._in_money(each) for each in self.prices)

    def numbers_of(self) -> str:
        """Of which feeds."""
        return "energy and protein of the feeds on hand"

    def _told(self, feed: RationFeed) -> str:
        if feed.barred:
            return f"{feed.feed.name}  NOT FOR THEM"
        farm = self.ration.farm
        there = "not known how much" if feed.there_kg is None else f"{weight(feed.there_kg.amount, farm.units)} there"
        cost = f", {price(feed.price_per_kg, farm)}" if feed.price_per_kg else ", no price"
        parts = [f"{each.of} {self._amount(each)}" for each in self.prices if each.feed is feed]
        return f"{feed.feed.name}  {there}{cost}{': ' if parts else ''}{', '.join(parts)}"

    def _cheapest(self) -> str:
        """Of all feeds, those that have a line already too."""
        found = [each for of in dict.fromkeys(each.of for each in self.prices) if (each := cheapest(self.prices, of))]
        weighed = "a lb of" if self.ration.farm.units is Units.US else "a kg of"
        told = (
            f"{'a' if each.of == MCAL else weighed} {each.of} in {each.feed.feed.name} ({self._amount(each)})"
            for each in found
        )
        return f"CHEAPEST  {', '.join(told)}." if found else ""

    def _amount(self, each: Priced) -> str:
        value = self._in_money(each)
        return f"{in_units(value.amount, value.unit, self.ration.farm.units)[0]:.2f}"

    def _in_money(self, each: Priced) -> Value:
        return replace(each.price, unit=f"{self.ration.farm.currency}/{'Mcal' if each.of == MCAL else 'kg'}")
