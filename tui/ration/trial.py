"""Amounts that are tried over the plan, read and said in the measure of each feed. Nothing here is written."""

from collections.abc import Mapping, Sequence
from typing import TypeAlias
from uuid import UUID

from store.book.words import Units
from store.ration.parts import Amounts, Case, RationFeed
from store.round.amount import Unreadable, feed_amount
from store.round.saying import bare, weight
from tui.words import in_quarters, measure_word

Cell: TypeAlias = tuple[str, UUID]
"""A meal of a feed: its slot, and the feed's id."""
SAME_KG = 0.005
"""Two amounts that differ by less are one. [kg]"""
NEAR_QUARTER = 0.02
"""So close to a quarter of a measure it is said as that quarter."""


def read(text: str, feed: RationFeed, slots: Sequence[str], slot: str, units: Units) -> dict[Cell, float]:
    """What a text makes of the marked meal, or of every meal with + between: `3 1/2`, `4 + 4`. Raises Unreadable."""
    parts = text.split("+")
    meals = (slot,) if len(parts) == 1 else tuple(slots)
    if len(parts) != len(meals):
        found, meant = f"«{text.strip()}» has {len(parts)} amounts", f"the meals are {' and '.join(slots)}"
        raise Unreadable(f"{found}; {meant}. Type one for the marked meal, or one for each with + between.")
    by_weight = _holds_kg(feed) is None
    amounts = (feed_amount(part, feed.feed, feed.told, units, by_weight=by_weight) for part in parts)
    return {(meal, feed.feed.id): amount.kg for meal, amount in zip(meals, amounts, strict=True)}


def changed(case: Case, tried: Mapping[Cell, float]) -> dict[Cell, float]:
    """What of it is another amount than now. [kg]"""
    return {cell: kg for cell, kg in tried.items() if abs(kg - case.now.get(cell, 0.0)) >= SAME_KG}


def rows(case: Case, tried: Mapping[Cell, float]) -> tuple[RationFeed, ...]:
    """The feeds that have a line: given now, standing free, or tried."""
    named = {feed_id for _, feed_id in (*case.now, *tried)}
    return tuple(feed for feed in case.feeds if feed.free or feed.feed.id in named)


def meals_kg(amounts: Amounts, feed: RationFeed, slots: Sequence[str]) -> list[float]:
    """What each meal gives of a feed. [kg]"""
    return [amounts.get((slot, feed.feed.id), 0.0) for slot in slots]


def number(kg: float, feed: RationFeed, units: Units, *, decimal: bool = False) -> str:
    """An amount without its unit: in the measure of the feed, else by weight. decimal: `2.5` for `2 1/2`."""
    holds_kg = _holds_kg(feed)
    if holds_kg is None:
        return weight(kg, units).split()[0].removesuffix(".0")
    measures = kg / holds_kg
    quarters = round(4 * measures) / 4
    if abs(quarters - measures) > NEAR_QUARTER:
        return bare(measures)
    return f"{quarters:g}" if decimal else in_quarters(quarters) or bare(measures)


def unit(feed: RationFeed, units: Units) -> str:
    """What the numbers of a feed count."""
    if feed.told and _holds_kg(feed):
        return feed.told.plural
    return weight(0, units).split()[1]


def in_words(kg: float, feed: RationFeed, units: Units) -> str:
    """An amount with its measure and weight: `4 scoops = 2.7 kg`."""
    holds_kg, dry = _holds_kg(feed), " dry" if feed.feed.soaked else ""
    weighs = f"{weight(kg, units)}{dry}"
    if feed.told is None or holds_kg is None:
        return weighs
    return f"{number(kg, feed, units)} {measure_word(kg / holds_kg, feed.told)} = {weighs}"


def _holds_kg(feed: RationFeed) -> float | None:
    return feed.told.holds_kg if feed.told else None
