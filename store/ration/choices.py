"""The feeds that a mix may take, in each meal, counted in quarters of their measure."""

from collections.abc import Iterator

from msgspec import Struct

from store.husbandry.measures import QUARTERS
from store.ration.parts import Case, Missing, Part, RationFeed
from store.ration.solving import Least

BY_WEIGHT_KG = 0.25
"""A feed that nobody weighed a measure of is mixed in steps of this. Common practice. [kg]"""
MOST_KG = 25.0
"""More of one feed for one head in one meal is a slip, whatever it is. Common practice. [kg]"""
NEEDED = ("dm_percent", "cp_percent", "ndf_percent", "fat_percent", "ca_percent", "p_percent")


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
    """In the order of the feeds, then of the meals. least: what has no price is not taken where cost decides."""
    for feed in case.feeds:
        if not _why_not(case, feed) and (feed.price_per_kg or least is Least.CHANGE):
            step_kg = _step_kg(feed)
            price = feed.price_per_kg.amount if feed.price_per_kg else 0.0
            for slot in ("",) if feed.free else case.slots:
                now = case.now.get((slot, feed.feed.id), 0.0) / step_kg
                yield Choice(feed, slot, step_kg, float(int(MOST_KG / step_kg)), now, price * step_kg)


def left_out(case: Case) -> Iterator[Missing]:
    """The feeds that are not looked at, each with the reason."""
    for feed in case.feeds:
        reason = _why_not(case, feed)
        if reason:
            yield Missing(feed.feed.name, reason)
        elif not feed.price_per_kg:
            yield Missing(feed.feed.name, f"{feed.feed.name} has no price, so that least cost leaves it out.")


def energy_part(case: Case) -> str:
    """The column that her energy is told of: net energy for dairy cows, TDN for the others."""
    need = next((each for each in case.needs if each.part is Part.ENERGY), None)
    return "nel_mcal" if need is None or need.unit == "Mcal" else "tdn_percent"


def _why_not(case: Case, feed: RationFeed) -> str:
    if feed.barred:
        return feed.barred
    if feed.free and not feed.forage:
        return f"{feed.feed.name} stands free."
    lacking = [part for part in (*NEEDED, energy_part(case)) if part not in feed.made]
    if lacking:
        return f"Nobody knows what is in {feed.feed.name}."
    if feed.there_kg and feed.there_kg.amount <= 0 and not any(id_ == feed.feed.id for _, id_ in case.now):
        return f"There is no {feed.feed.name} left."
    return ""


def _step_kg(feed: RationFeed) -> float:
    if feed.free:
        return 1.0
    holds_kg = feed.told.holds_kg if feed.told else None
    return holds_kg / QUARTERS if holds_kg else BY_WEIGHT_KG
