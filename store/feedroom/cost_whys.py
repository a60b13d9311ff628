"""Why feeding cost so much: each feed by its weight and the price of its newest delivery, then a day and a litre."""

from collections.abc import Iterable, Iterator, Mapping
from uuid import UUID

from msgspec import Struct

from store.feedroom.cost import Costs
from store.feedroom.intake import Share
from store.feedroom.whys import in_money
from store.husbandry.milk.pail import litres
from store.husbandry.money import cost_of, for_each
from store.husbandry.why import Value, given, total

NOBODY = "a pen that was empty by the book"


class Priced(Struct, frozen=True):
    """What a kilogram of each feed costs, the names of feeds and animals, and the farm's money.

    A feed without a price is left out, as it is on the screen.
    """

    prices: Mapping[UUID, Value]
    names: Mapping[UUID, str]
    currency: str

    def cost(self, name: str, shares: Iterable[Share]) -> Iterator[Value]:
        """What some of the feed cost together; none where nothing of it has a price."""
        parts = list(self.by_feed(shares))
        if parts:
            yield total(name, self.currency, parts)

    def by_feed(self, shares: Iterable[Share]) -> Iterator[Value]:
        """A cost for each feed that has a price."""
        fed: dict[UUID, float] = {}
        for share in shares:
            fed[share.feed_id] = fed.get(share.feed_id, 0.0) + share.given_kg
        for feed_id, kg in fed.items():
            if feed_id in self.prices:
                name = self.names.get(feed_id, "a feed")
                weight = given(kg, f"{name} given", "kg", "written in the rounds of these days")
                yield in_money(cost_of.of(name, kg=weight, price_per_kg=self.prices[feed_id]), self.currency)


def cost_numbers(costs: Costs, priced: Priced) -> Iterator[Value]:
    """All of it, a day, a litre, each feed, each animal."""
    yield from _together(costs, priced)
    yield from priced.by_feed(costs.given)
    for animal_id in costs.by_animal:
        name = priced.names.get(animal_id, "somebody") if animal_id else NOBODY
        yield from priced.cost(name, [share for share in costs.given if share.animal_id == animal_id])


def _together(costs: Costs, priced: Priced) -> Iterator[Value]:
    """All of it; a day, where all of it has a price; a litre."""
    for every in priced.cost("all of it", costs.given):
        yield every
        if not costs.total.unpriced_kg:
            days = given(costs.days, "days", "days", "the last whole days, up to yesterday")
            yield in_money(for_each.of("a day", cost=every, count=days), priced.currency)
    if costs.per_litre is not None:
        milked = [share for share in costs.given if share.animal_id in costs.milk_kg]
        for cost in priced.cost("what the cows in milk were fed", milked):
            a_litre = for_each.of("a litre", cost=cost, count=_litres(costs, priced.names))
            yield in_money(a_litre, f"{priced.currency}/L")


def _litres(costs: Costs, names: Mapping[UUID, str]) -> Value:
    """The milk of the same days. [L]"""
    parts = [given(kg, f"{names.get(id_, 'a cow')}'s milk", "kg", "her pails of these days") for id_, kg in
             costs.milk_kg.items()]  # fmt: skip
    return litres.of("litres of milk", milk_kg=total("milk of these days", "kg", parts))
