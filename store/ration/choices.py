"""The feeds that a mix may take, in each meal, counted in quarters of their measure."""

from collections.abc import Iterator, Sequence
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.husbandry.measures import QUARTERS
from store.husbandry.why import given
from store.ration.forage_only import against_forage_only, is_mineral
from store.ration.parts import Case, Missing, Part, RationFeed
from store.ration.solving import Least

BY_WEIGHT_KG = 0.25
"""A feed that nobody weighed a measure of is mixed in steps of this. Common practice. [kg]"""
MOST_KG = 25.0
"""More of one feed for one head in one meal is a slip, whatever it is. Common practice. [kg]"""
NEEDED = ("dm_percent", "cp_percent", "ndf_percent", "fat_percent", "ca_percent", "p_percent")
NEW_FEED_KG = 1.0
"""To begin a feed counts as so much change, however little of it is given: it is work, and a risk. Ours. [kg]"""
WITHOUT_PRICE = "has no price"


class Choice(Struct, frozen=True):
    """One feed in one meal. step_kg: of a quarter, as it lies. most, now: in quarters. cost: of one, 0 without a price.

    slot empty: it stands free, and is eaten over the day in any amount.
    """

    feed: RationFeed
    slot: str
    step_kg: float
    most: float
    now: float
    cost: float

    @property
    def whole(self) -> bool:
        """Whether it is given in whole quarters."""
        return bool(self.slot)

    def holds(self, part: str) -> float:
        """Of a part of its dry matter in one quarter: percent as kg, net energy as Mcal."""
        value = self.feed.made.get(part)
        each = 0.0 if value is None else value.amount
        return self.dry_kg * (each if part == "nel_mcal" else each / 100)

    @property
    def dry_kg(self) -> float:
        """Dry matter in one quarter."""
        return self.step_kg * self.feed.made["dm_percent"].amount / 100


def choices(case: Case, least: Least) -> Iterator[Choice]:
    """In the order of the feeds, then of the meals; what stands free comes last, as one. least: what has no price is
    not taken where cost decides.
    """
    for feed in case.feeds:
        if not feed.free and not _why_not(case, feed) and (feed.price_per_kg or least is Least.CHANGE):
            step_kg = _step_kg(feed)
            price = feed.price_per_kg.amount if feed.price_per_kg else 0.0
            for slot in case.slots:
                now = case.now.get((slot, feed.feed.id), 0.0) / step_kg
                yield Choice(feed, slot, step_kg, float(int(MOST_KG / step_kg)), now, price * step_kg)
    free = [feed for feed in case.feeds if feed.free and not _why_not(case, feed)]
    if free:
        mean = _mean_of(free)
        yield Choice(mean, "", 1.0, MOST_KG, 0.0, mean.price_per_kg.amount if mean.price_per_kg else 0.0)


def fresh(found: Sequence[Choice]) -> tuple[tuple[int, ...], ...]:
    """The choices, by place, of each feed that is not given now."""
    by_feed: dict[UUID, list[int]] = {}
    for at, each in enumerate(found):
        if each.whole:
            by_feed.setdefault(each.feed.feed.id, []).append(at)
    return tuple(tuple(ats) for ats in by_feed.values() if not any(found[at].now for at in ats))


def held(case: Case, least: Least) -> Iterator[tuple[RationFeed, str]]:
    """The feeds that stay as they are given now, each with the reason in words."""
    for feed in case.feeds:
        if any(id_ == feed.feed.id and kg for (_, id_), kg in case.now.items()):
            name = feed.feed.name
            if is_mineral(feed):
                yield feed, f"{name} stays as it is: what is in it besides calcium and phosphorus is not counted here."
            elif least is Least.COST and not feed.price_per_kg:
                yield feed, f"{name} {WITHOUT_PRICE} and stays as it is. D, {name}, a delivery with its price."


def left_out(case: Case, least: Least) -> Iterator[Missing]:
    """The feeds that are not looked at, each with the reason."""
    for feed in case.feeds:
        name, reason = feed.feed.name, _why_not(case, feed)
        if reason:
            yield Missing(name, reason)
        elif least is Least.COST and not feed.price_per_kg:
            how = "is counted as costing nothing" if feed.free else "is left out of the least cost"
            yield Missing(name, f"{name} {WITHOUT_PRICE} and {how}.")


def _mean_of(free: Sequence[RationFeed]) -> RationFeed:
    """What stands free as one feed, in dry matter, as much of each. [a kg of it is a kg of dry matter]"""
    parts = {"dm_percent": given(100.0, "dry matter", "%", "counted as dry matter")}
    for part in {part for each in free for part in each.made} - {"dm_percent"}:
        known = [each.made[part] for each in free if part in each.made]
        if len(known) == len(free):
            parts[part] = given(
                sum(each.amount for each in known) / len(known), known[0].name, known[0].unit, "their mean"
            )
    prices = [each.price_per_kg.amount * 100 / each.made["dm_percent"].amount for each in free if each.price_per_kg]
    price = given(sum(prices) / len(prices), "price", "", "their mean") if len(prices) == len(free) else None
    return replace(free[0], made=parts, price_per_kg=price)


def energy_part(case: Case) -> str:
    """The column that her energy is told of: net energy for dairy cows, TDN for the others."""
    need = next((each for each in case.needs if each.part is Part.ENERGY), None)
    return "nel_mcal" if need is None or need.unit == "Mcal" else "tdn_percent"


def _why_not(case: Case, feed: RationFeed) -> str:
    if feed.barred:
        return feed.barred
    if feed.free and not feed.forage:
        return f"{feed.feed.name} stands free."
    if said := against_forage_only(case, feed):
        return said
    lacking = [part for part in (*NEEDED, energy_part(case)) if part not in feed.made]
    if lacking:
        return f"Nobody knows what is in {feed.feed.name}."
    if feed.there_kg and feed.there_kg.amount <= 0 and not any(id_ == feed.feed.id for _, id_ in case.now):
        return f"There is no {feed.feed.name} left."
    return ""


def _step_kg(feed: RationFeed) -> float:
    holds_kg = feed.told.holds_kg if feed.told else None
    return holds_kg / QUARTERS if holds_kg else BY_WEIGHT_KG
