"""Every feed that a ration can be made of: those in use that are on hand, or in the plan, or stand free with them."""

from collections.abc import Iterable, Iterator, Mapping
from uuid import UUID

from msgspec import Struct

from store.book.facts.feed import Feed, Told
from store.book.register import Values
from store.book.stocks import FeedStock
from store.book.words import Origin, Species, Stage
from store.husbandry.feeds.made import made
from store.husbandry.feeds.table import BY_NAME, PARTS
from store.husbandry.ration.limits import usual
from store.husbandry.why import Value, given
from store.ration.asked import Asked, listed
from store.ration.heads import lightest
from store.ration.parts import Head, Limits, RationFeed

LIMITS = {
    "most_meal_kg": "kg", "most_day_kg": "kg", "share_percent": "%", "step_kg": "kg", "step_days": "days",
}  # fmt: skip
"""The farm's own limits of a feed, by column, with their units."""


ON_FORAGE = frozenset((Stage.DRY, Stage.CLOSE_UP, Stage.HEIFER, Stage.SUCKLER))
"""Those that live on forage, with grain beside it at most. Common practice."""


class Fed(Struct, frozen=True):
    """Who is fed, where: the heads, the pen, and the feeds that their plans name, each with its measure."""

    heads: tuple[Head, ...]
    pen_id: UUID | None
    planned: Mapping[UUID, UUID | None]


def ration_feeds(asked: Asked, stocks: Iterable[FeedStock], fed: Fed) -> Iterator[RationFeed]:
    """By name. A feed of which nobody knows how much is there is offered too: not known is not zero."""
    for stock in stocks:
        free = _is_free(asked, stock.feed.id, fed.pen_id)
        if stock.feed.id in fed.planned or free or stock.kg is None or stock.kg > 0:
            yield _ration_feed(asked, stock, fed, free=free)


def _ration_feed(asked: Asked, stock: FeedStock, fed: Fed, *, free: bool) -> RationFeed:
    feed = stock.feed
    row = asked.register.get("composition", feed.id) or {}
    limits = asked.register.get("feed_limit", feed.id) or {}
    return RationFeed(
        feed,
        made({part: row.get(part) for part in PARTS}, row.get("origin", Origin.TABLE), row.get("resembles", "")),
        row.get("origin"),
        row.get("resembles", ""),
        _is_forage(feed, limits.get("forage"), row.get("resembles", "")),
        _price(asked, stock),
        None if stock.kg is None else given(max(stock.kg, 0.0), f"{feed.name} on hand", "kg", "by the feed room"),
        _told(asked, feed.id, fed.planned),
        Limits(**{**_usual(fed, row.get("resembles", "")), **dict(_limits(limits))}),
        _barred(feed, fed.heads),
        free,
    )


def _usual(fed: Fed, resembles: str) -> Mapping[str, Value]:
    """Before the farm's own: of grain less for those that live on forage."""
    on_forage = any(head.animal.stage in ON_FORAGE for head in fed.heads)
    return usual(resembles, lightest(fed.heads), lives_on_forage=on_forage)


def _is_free(asked: Asked, feed_id: UUID, pen_id: UUID | None) -> bool:
    row = asked.register.get("free_feed", feed_id, pen_id)
    return bool(row and row["offered"])


def _is_forage(feed: Feed, said: bool | None, resembles: str) -> bool:
    """As the farm says, else what comes in bales, or is forage by the table."""
    like = BY_NAME.get(resembles)
    return said if said is not None else feed.baled or bool(like and like.forage)


def _price(asked: Asked, stock: FeedStock) -> Value | None:
    newest = stock.priced
    if newest is None or newest.price_per_kg is None:
        return None
    came = f"delivery of {asked.said(asked.day(newest.at))}"
    return given(newest.price_per_kg, f"price of a kg of {stock.feed.name}", "", came)


def _told(asked: Asked, feed_id: UUID, planned: Mapping[UUID, UUID | None]) -> Told | None:
    """The measure of the plan; of a feed that is not planned the one it was weighed in last."""
    weighed = [row for row in asked.register.all("weighing") if row["feed_id"] == feed_id]
    newest = max(weighed, key=lambda row: (row["begins_at"], row["written_at"]), default={"measure_id": None})
    measure_id = planned[feed_id] if feed_id in planned else newest["measure_id"]
    return asked.snapshot.told_as(measure_id, feed_id)


def _limits(row: Values) -> Iterator[tuple[str, Value]]:
    for column, unit in LIMITS.items():
        if row.get(column) is not None:
            yield column, given(row[column], column, unit, "your limit")


def _barred(feed: Feed, heads: tuple[Head, ...]) -> str:
    """`cattle mineral is never for sheep: Gorse would get it.`; empty: they may have it."""
    kept_from = [head.animal for head in heads if head.animal.species in feed.not_for]
    if not kept_from:
        return ""
    species: list[Species] = list(dict.fromkeys(animal.species for animal in kept_from))
    names = listed(animal.name for animal in kept_from)
    return f"{feed.name} is never for {listed(species)}, and {names} would get it."
