"""What feeding costs: a day, an animal, a feed, a litre. By the newest price of each feed, what it costs to have again.

A feed without a price is said, and never taken as free.
"""

from collections.abc import Callable, Hashable, Iterable, Mapping
from datetime import date
from typing import TypeVar
from uuid import UUID

from msgspec import Struct

from store.book.desk import Desk
from store.book.reading import stock_sql
from store.book.reading.facts import uid
from store.book.stocks import FeedStock
from store.feedroom.delivery import money
from store.feedroom.intake import Share, shares
from store.husbandry.milk.pail import litres

K = TypeVar("K", bound=Hashable)


class Cost(Struct, frozen=True):
    """What some feed cost. unpriced_kg: what has no price, and is not in the money."""

    kg: float
    money: float
    unpriced_kg: float

    def words(self, currency: str) -> str:
        """`4.20 EUR`, `at least 4.20 EUR`, `price not known`."""
        if self.unpriced_kg and self.unpriced_kg >= self.kg:
            return "price not known"
        return f"at least {money(self.money, currency)}" if self.unpriced_kg else money(self.money, currency)


class Costs(Struct, frozen=True):
    """What the feeding of some days cost. by_animal None: what was given to a pen that was empty by the book.

    per_litre: what the animals that were milked in those days cost, by their milk. None: no milk, or a feed of theirs
    without a price. unpriced: those feeds, by id. given, milk_kg: what it is summed of, milk by animal. [kg]
    """

    days: int
    total: Cost
    by_day: Mapping[date, Cost]
    by_animal: Mapping[UUID | None, Cost]
    by_feed: Mapping[UUID, Cost]
    litres: float
    per_litre: float | None
    unpriced: tuple[UUID, ...]
    given: tuple[Share, ...]
    milk_kg: Mapping[UUID, float]


def read_costs(desk: Desk, stocks: Iterable[FeedStock], first: date, last: date, zone: str) -> Costs:
    """What the rounds of some days cost. stocks: as `read_stock(..., out_of_use=True)` gives them."""
    found = tuple(stocks)
    days = {"since_day": first.isoformat(), "until_day": last.isoformat()}
    milk: dict[UUID, float] = {}
    for _, animal, kg in desk.rows(stock_sql.MILKED, days):
        milk[uid(animal)] = milk.get(uid(animal), 0.0) + kg
    given = shares(desk, (stock.feed.id for stock in found), first, last, zone)
    return costs(given, prices(found), milk, (last - first).days + 1)


def prices(stocks: Iterable[FeedStock]) -> dict[UUID, float]:
    """Of each feed the price of a kilogram in its newest delivery of which one is known."""
    priced = ((stock.feed.id, stock.priced) for stock in stocks)
    return {id_: each.price_per_kg for id_, each in priced if each and each.price_per_kg is not None}


def costs(given: tuple[Share, ...], per_kg: Mapping[UUID, float], milk_kg: Mapping[UUID, float], days: int) -> Costs:
    """What was given, at some prices. milk_kg: by animal, in the same days."""
    milked = cost([share for share in given if share.animal_id in milk_kg], per_kg)
    milk_l = litres(sum(milk_kg.values()))
    return Costs(
        days,
        cost(given, per_kg),
        _by(given, per_kg, lambda share: share.day),
        _by(given, per_kg, lambda share: share.animal_id),
        _by(given, per_kg, lambda share: share.feed_id),
        milk_l,
        milked.money / milk_l if milk_l and not milked.unpriced_kg else None,
        tuple(dict.fromkeys(share.feed_id for share in given if share.feed_id not in per_kg)),
        given,
        milk_kg,
    )


def cost(given: Iterable[Share], per_kg: Mapping[UUID, float]) -> Cost:
    """What was given, together. What was left was paid for too."""
    found = list(given)
    return Cost(
        sum(share.given_kg for share in found),
        sum(share.given_kg * per_kg.get(share.feed_id, 0.0) for share in found),
        sum(share.given_kg for share in found if share.feed_id not in per_kg),
    )


def _by(given: tuple[Share, ...], per_kg: Mapping[UUID, float], key: Callable[[Share], K]) -> dict[K, Cost]:
    keys = dict.fromkeys(key(share) for share in given)
    return {each: cost([share for share in given if key(share) == each], per_kg) for each in keys}
