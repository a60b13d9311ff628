"""What feeding cost: a day, a feed, an animal, a litre."""

from collections.abc import Iterator
from datetime import timedelta
from typing import ClassVar

from store.book.reading.stock import names_at, read_settings, read_stock
from store.book.words import Units
from store.feedroom.cost import Costs, read_costs
from store.feedroom.cost_whys import Priced, cost_numbers
from store.feedroom.delivery import money
from store.feedroom.whys import price_value
from store.husbandry.units import L_PER_US_GAL
from store.husbandry.why import Value
from tui.feed_room.told import today
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, WHY_KEY, Over, Place, Rooms
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back

DAYS = 7
EMPTY_PEN = "a pen that was empty by the book"


class Costing(Over):
    """The last seven whole days, by the newest price of each feed."""

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the feed room."""
        super().__init__(rooms, back)
        desk, now = self.walker.book.desk, self.walker.book.clock.now()
        self.last = today(self.walker) - timedelta(days=1)
        self.stocks = read_stock(desk, now, out_of_use=True)
        self.costs = read_costs(desk, self.stocks, self.last - timedelta(days=DAYS - 1), self.last, self.walker.zone)
        self.names, self.currency = names_at(desk, now), read_settings(desk, now).currency

    def draw(self, size: Size) -> Page:
        """A line for each."""
        title = f"  COSTS of the last {DAYS} days, by the newest price of each feed"
        body: list[Line] = [(), *wrapped(title.strip(), size.width, Role.STRONG, "  "), ()]
        body += [line(f"    {name:<24}", Span(words)) for name, words in self._said(self.costs)]
        return framed(self, body, size)

    def _said(self, costs: Costs) -> Iterator[tuple[str, str]]:
        if not costs.total.kg:
            yield "nothing was fed in these days, up to yesterday", ""
            return
        yield "all of it", costs.total.words(self.currency)
        if not costs.total.unpriced_kg:
            yield "a day", money(costs.total.money / costs.days, self.currency)
        yield self._by_volume(costs)
        for feed_id, cost in sorted(costs.by_feed.items(), key=lambda each: -each[1].money):
            yield self.names.get(feed_id, "a feed"), cost.words(self.currency)
        yield "", ""
        for animal_id, cost in sorted(costs.by_animal.items(), key=lambda each: -each[1].money):
            yield (self.names.get(animal_id, "somebody") if animal_id else EMPTY_PEN), cost.words(self.currency)

    def _by_volume(self, costs: Costs) -> tuple[str, str]:
        """What a litre cost, or a gallon; of the cows that were milked, their dry time aside."""
        us = self.walker.farm.units is Units.US
        if costs.per_litre is None:
            return "a US gallon" if us else "a litre", "not known: no milk, or a feed without a price"
        return ("a US gallon" if us else "a litre"), money(costs.per_litre * (L_PER_US_GAL if us else 1), self.currency)

    def numbers(self) -> tuple[Value, ...]:
        """Each cost, down to the kilograms and the price of a delivery."""
        found = ((stock.feed.id, price_value(self.as_asked(), stock, self.currency)) for stock in self.stocks)
        prices = {feed_id: price for feed_id, price in found if price}
        return tuple(cost_numbers(self.costs, Priced(prices, self.names, self.currency)))

    def numbers_of(self) -> str:
        """Of what days."""
        return f"costs of the last {DAYS} days"

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key((*ENTER, *BACKSPACE, "left", "escape"), "Enter", "back", "Back to the feed room.", go_back),
        *SCROLL_KEYS,
        WHY_KEY,
        HELP_KEY,
        LEAVE_KEY,
    )
