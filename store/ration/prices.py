"""What energy and protein cost in each feed, so that feeds are compared by more than the price of a sack."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from store.husbandry.ration.price import price_of_mcal, price_of_part
from store.husbandry.why import Value
from store.ration.parts import Case, Part, RationFeed

MCAL, TDN, PROTEIN = "Mcal", "TDN", "protein"


class Priced(Struct, frozen=True):
    """What a part costs in a feed, in the farm's money: a Mcal, or a kilogram of TDN or protein."""

    feed: RationFeed
    of: str
    price: Value


def prices(case: Case) -> tuple[Priced, ...]:
    """Of each feed that may be given and of which it is known: energy as these heads are counted, then protein."""
    energy = next((need.unit for need in case.needs if need.part is Part.ENERGY), MCAL)
    feeds = (feed for feed in case.feeds if not feed.barred)
    return tuple(each for feed in feeds for each in _of(feed, MCAL if energy == MCAL else TDN))


def cheapest(found: Sequence[Priced], of: str) -> Priced | None:
    """In which feed a part costs least."""
    return min((each for each in found if each.of == of), key=lambda each: each.price.amount, default=None)


def _of(feed: RationFeed, energy: str) -> Iterator[Priced]:
    made, price = feed.made, feed.price_per_kg
    if not price or not made.get("dm_percent"):
        return
    of_feed = {"price_per_kg": price, "dm_percent": made["dm_percent"]}
    if energy == MCAL and _holds(feed, "nel_mcal"):
        yield Priced(feed, MCAL, price_of_mcal.of(f"a Mcal in {feed.feed.name}", nel_mcal=made["nel_mcal"], **of_feed))
    for of, column in ((TDN, "tdn_percent"), (PROTEIN, "cp_percent")):
        if _holds(feed, column) and of in (energy, PROTEIN):
            yield Priced(feed, of, price_of_part.of(f"{of} in {feed.feed.name}", percent=made[column], **of_feed))


def _holds(feed: RationFeed, column: str) -> bool:
    return column in feed.made and bool(feed.made[column].amount and feed.made["dm_percent"].amount)
