"""What a head gets in a day, feed by feed, and what stands free eaten up to what is left of her appetite."""

from collections.abc import Iterator, Mapping
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.husbandry.mean import as_it_lies_kg, room_left_kg
from store.husbandry.ration.sums import Given, supply
from store.husbandry.why import Value, given
from store.ration.parts import Amounts, Case, Part, RationFeed

FREE, AMOUNT = "free, as far as she can eat it", "as shown here"


class Fed(Struct, frozen=True):
    """What a head gets in a day. unknown: the forages that stand free, of which nobody knows how much she eats."""

    ration: tuple[Given, ...]
    unknown: tuple[str, ...] = ()


def fed(case: Case, amounts: Amounts) -> Fed:
    """What some amounts are, then what she eats of the forage that stands free; of several as much of each."""
    by_id = {each.feed.id: each for each in case.feeds}
    typed = tuple(_given(by_id[id_], given(kg, by_id[id_].feed.name, "kg", AMOUNT))
                  for id_, kg in day_kg(case, amounts).items() if kg > 0)  # fmt: skip
    free = tuple(each for each in case.feeds if each.free and each.forage)
    eaten = tuple(_free(case, typed, free))
    return Fed((*typed, *eaten), tuple(each.feed.name for each in free) if len(eaten) < len(free) else ())


def day_kg(case: Case, amounts: Amounts) -> Mapping[UUID, float]:
    """What of each feed a head gets in a day. [kg]"""
    found: dict[UUID, float] = {}
    for each in (amounts, case.besides):
        for (_, feed_id), kg in each.items():
            found[feed_id] = found.get(feed_id, 0.0) + kg
    return found


def _given(feed: RationFeed, kg: Value) -> Given:
    return Given(feed.feed.name, feed.made, kg, feed.forage, feed.price_per_kg)


def _free(case: Case, typed: tuple[Given, ...], free: tuple[RationFeed, ...]) -> Iterator[Given]:
    """None of it where appetite, or dry matter of any feed, is not known."""
    appetite = next((each.most for each in case.needs if each.part is Part.DRY_MATTER), None)
    rest = supply(typed).get("dry matter") if free else None
    percents = [each.made.get("dm_percent") for each in free]
    if not appetite or not rest or not all(percents):
        return
    count = given(len(free), "feeds that stand free", "", "counted")
    room = room_left_kg.of(most_kg=appetite, rest_kg=rest, feeds=count)
    for feed, percent in zip(free, percents, strict=True):
        if percent:
            kg = as_it_lies_kg.of(feed.feed.name, dry_kg=room, dm_percent=percent)
            yield _given(feed, replace(kg, came=FREE))
