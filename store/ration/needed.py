"""Needs and limits of a case as rows of the integer programme: what a head gets besides is taken off beforehand."""

from collections.abc import Callable, Iterator, Sequence
from typing import TypeAlias

from store.ration.choices import Choice, energy_part
from store.ration.model import Kind, Row
from store.ration.parts import Case, Need, Part, RationFeed

Holds: TypeAlias = Callable[[Choice], float]
KINDS = {
    Part.ENERGY: Kind.NEED, Part.PROTEIN: Kind.NEED, Part.CALCIUM: Kind.NEED, Part.PHOSPHORUS: Kind.NEED,
    Part.CA_TO_P: Kind.NEED, Part.FIBRE: Kind.LIMIT, Part.FORAGE: Kind.LIMIT, Part.FAT: Kind.LIMIT,
    Part.DRY_MATTER: Kind.LIMIT,
}  # fmt: skip
"""What may stay short where nothing fits, and what may not."""


def rows(case: Case, found: Sequence[Choice]) -> Iterator[Row]:
    """All of them. found: the choices, in the order of the columns."""
    besides = tuple(_besides(case))
    for need in case.needs:
        yield from _of_need(case, need, found, besides)
    yield from _of_meals(case, found)
    for feed in dict.fromkeys(each.feed.feed.id for each in found):
        yield from _of_feed(case, next(each.feed for each in found if each.feed.feed.id == feed), found, besides)


def _besides(case: Case) -> Iterator[Choice]:
    """What a head gets anyhow, as choices of one kilogram, each taken `now` times."""
    feeds = {each.feed.id: each for each in case.feeds}
    for (slot, id_), kg in case.besides.items():
        yield Choice(feeds[id_], slot, 1.0, kg, kg, 0.0)


def _of_need(case: Case, need: Need, found: Sequence[Choice], besides: Sequence[Choice]) -> Iterator[Row]:
    kind = KINDS.get(need.part)
    if kind is None:
        return
    filled = need.part is Part.DRY_MATTER and any(not each.whole for each in found)
    for bound, at in (("least", need.least), ("most", need.most)):
        if at is not None:
            holds, limit = _holds(case, need.part, at.amount)
            row = _row(need.part, kind, holds, (found, besides))
            yield _bounded(row, limit, at.amount, least=bound == "least" or filled, most=bound == "most")


def _holds(case: Case, part: Part, limit: float) -> tuple[Holds, float]:
    """What a quarter counts toward a need, and the limit of the sum: 0 where a share is meant."""
    grams = {Part.PROTEIN: "cp_percent", Part.CALCIUM: "ca_percent", Part.PHOSPHORUS: "p_percent"}
    if part in grams:
        return lambda each: each.holds(grams[part]) * 1000, limit
    if part is Part.ENERGY:
        return lambda each: each.holds(energy_part(case)), limit
    if part is Part.CA_TO_P:
        return lambda each: (each.holds("ca_percent") - limit * each.holds("p_percent")) * 1000, 0.0
    if part is Part.DRY_MATTER:
        return lambda each: each.dry_kg, limit
    return lambda each: _share_of(part, each) - limit / 100 * each.dry_kg, 0.0


def _share_of(part: Part, each: Choice) -> float:
    if part is Part.FORAGE:
        return each.dry_kg if each.feed.forage else 0.0
    return each.holds("ndf_percent" if part is Part.FIBRE else "fat_percent")


def _of_meals(case: Case, found: Sequence[Choice]) -> Iterator[Row]:
    """The limit of a meal, of all loose feed; what is given besides counts too."""
    limit = case.meal_limit_kg
    baled = {each.feed.id for each in case.feeds if not each.loose}
    for slot in case.slots if limit else ():
        given_kg = sum(kg for (at, id_), kg in case.besides.items() if at == slot and id_ not in baled)
        here = tuple(each.step_kg if each.slot == slot and each.feed.loose else 0.0 for each in found)
        if limit and any(here):
            yield Row(f"all loose feed, {limit.amount:g} kg a meal", Kind.LIMIT, here, None,
                      limit.amount - given_kg, limit.amount)  # fmt: skip


def _of_feed(case: Case, feed: RationFeed, found: Sequence[Choice], besides: Sequence[Choice]) -> Iterator[Row]:
    """What the farm, or the table, says of one feed."""
    most, day, share = feed.limits.most_meal_kg, feed.limits.most_day_kg, feed.limits.share_percent
    name = feed.feed.name
    for slot in case.slots if most else ():
        if most:
            row = _row(f"{name}, {most.amount:g} kg a meal", Kind.LIMIT, _kg_of(feed, slot), (found, besides))
            yield _bounded(row, most.amount, most.amount, most=True)
    if day:
        row = _row(f"{name}, {day.amount:g} kg a day", Kind.LIMIT, _kg_of(feed), (found, besides))
        yield _bounded(row, day.amount, day.amount, most=True)
    if share:
        part = share.amount / 100
        counts: Holds = lambda each: each.dry_kg * ((each.feed.feed.id == feed.feed.id) - part)  # noqa: E731
        row = _row(f"{name}, {share.amount:g} % of the dry matter", Kind.LIMIT, counts, (found, besides))
        yield _bounded(row, 0.0, 1.0, most=True)


def _kg_of(feed: RationFeed, slot: str = "") -> Holds:
    """Kilograms of one feed, in one meal or in all."""
    return lambda each: each.step_kg if each.feed.feed.id == feed.feed.id and slot in ("", each.slot) else 0.0


def _row(name: str, kind: Kind, holds: Holds, of: tuple[Sequence[Choice], Sequence[Choice]]) -> Row:
    """With what is given besides as its least: `_bounded` takes it off."""
    found, besides = of
    return Row(name, kind, tuple(map(holds, found)), sum(holds(each) * each.now for each in besides), None, 1.0)


def _bounded(row: Row, limit: float, scale: float, *, least: bool = False, most: bool = False) -> Row:
    """The same row between its bounds, less what is given besides."""
    bound = limit - (row.least or 0.0)
    return Row(row.name, row.kind, row.per_quarter, bound if least else None, bound if most else None, scale or 1.0)
