"""Which limits some amounts break, as plain sentences: what must not be fed, the farm's own limits, then usual ones."""

from collections.abc import Iterator

from store.husbandry.why import Value, given, total
from store.ration.fed import day_kg
from store.ration.forage_only import broken_rule
from store.ration.parts import Amounts, Broken, Case, RationFeed
from store.round.saying import exact

ROUNDING_KG = 0.0005
OF_MEALS = "meal limit"
"""What is over where it is no one feed."""


def biggest_meal(case: Case, amounts: Amounts) -> Value:
    """The most of loose feed in one slot, as it lies. [kg]"""
    return max((_meal(case, amounts, slot) for slot in case.slots), key=lambda meal: meal.amount)


def broken(case: Case, amounts: Amounts, eaten_kg: Value | None) -> Iterator[Broken]:
    """Each limit that is broken. eaten_kg: dry matter of the day; None: not known, so that no share is."""
    by_day = day_kg(case, amounts)
    for each in case.feeds:
        if each.barred and by_day.get(each.feed.id, 0.0) > 0:
            yield Broken(each.feed.name, each.barred, never=True)
    for each in case.feeds:
        yield from _of_meals(case, amounts, each)
        yield from _of_day(case, each, by_day.get(each.feed.id, 0.0))
        if eaten_kg:
            yield from _of_share(each, by_day.get(each.feed.id, 0.0), eaten_kg.amount)
    yield from _of_concentrates(case, amounts)
    yield from broken_rule(case, frozenset(id_ for (_, id_), kg in amounts.items() if kg > 0))


def _meal(case: Case, amounts: Amounts, slot: str) -> Value:
    parts = (
        given(_in_slot(case, amounts, slot, each), each.feed.name, "kg", "as shown here")
        for each in case.feeds
        if each.loose and _in_slot(case, amounts, slot, each)
    )
    return total(f"meal in the {slot}", "kg", parts)


def _in_slot(case: Case, amounts: Amounts, slot: str, feed: RationFeed) -> float:
    key = (slot, feed.feed.id)
    return amounts.get(key, 0.0) + case.besides.get(key, 0.0)


def _of_meals(case: Case, amounts: Amounts, feed: RationFeed) -> Iterator[Broken]:
    most = feed.limits.most_meal_kg
    for slot in case.slots if most else ():
        kg = _in_slot(case, amounts, slot, feed)
        if most and kg > most.amount + ROUNDING_KG:
            said = _said(case, f"{feed.feed.name} in the {slot}", kg, most, "a meal")
            yield Broken(feed.feed.name, said)


def _of_day(case: Case, feed: RationFeed, kg: float) -> Iterator[Broken]:
    most = feed.limits.most_day_kg
    if most and kg > most.amount + ROUNDING_KG:
        yield Broken(feed.feed.name, _said(case, f"{feed.feed.name} in a day", kg, most, "a day"))


def _of_concentrates(case: Case, amounts: Amounts) -> Iterator[Broken]:
    most = case.meal_limit_kg
    for slot in case.slots if most else ():
        kg = sum(_in_slot(case, amounts, slot, each) for each in case.feeds if each.loose)
        if most and kg > most.amount + ROUNDING_KG:
            said = _said(case, f"all loose feed, in the {slot}", kg, most, "a meal")
            yield Broken(OF_MEALS, said)


def _of_share(feed: RationFeed, kg: float, eaten_kg: float) -> Iterator[Broken]:
    most, dry = feed.limits.share_percent, feed.made.get("dm_percent")
    share = kg * dry.amount / eaten_kg if dry and eaten_kg else 0.0
    if most and share > most.amount + ROUNDING_KG:
        said = f"{feed.feed.name}: {share:.0f} % of the dry matter; {most.came} is {most.amount:g} %."
        yield Broken(feed.feed.name, said)


def _said(case: Case, what: str, kg: float, most: Value, of: str) -> str:
    return f"{what}: {exact(kg, case.units)}; {most.came} is {exact(most.amount, case.units)} {of}."
