"""How far one step of a change may go: whose limit, and the caps of a meal that hold on the way.

Whose limit: the feed's own, then the farm's, then a starting value. What is forage, or taken away, has no limit in
kilograms; the percent holds both ways, because what takes the place of a feed taken away is a change too.
"""

from collections.abc import Iterable, Iterator
from math import inf
from typing import TypeAlias
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.book.register import Register
from store.book.words import SLOTS, SettingName, Species, Stage
from store.husbandry.change import (
    COW_RISE_KG_DAY,
    RISE,
    ROUNDING_KG,
    STEP_DAYS,
    YOUNG_RISE,
    YOUNG_RISE_KG_DAY,
    days_for_new,
    least_step_kg,
    share_of_rise_kg,
    step_of_percent_kg,
)
from store.husbandry.starting import CAME, CHANGE_STEP_PERCENT
from store.husbandry.why import Value, given
from store.ration.parts import Amounts, Case, RationFeed

Meal: TypeAlias = tuple[str, UUID]
"""A slot and a feed."""
GROWN = frozenset(Stage) - {Stage.CALF, Stage.HEIFER, Stage.STEER, Stage.OTHER}


class Rules(Struct, frozen=True):
    """The farm's own rules of every change; None: not set."""

    percent: Value
    step_kg: Value | None = None
    step_days: Value | None = None


def rules_of(register: Register) -> Rules:
    """What the farm has set; the percent has a starting value."""

    def setting(name: SettingName, words: str, unit: str) -> Value | None:
        row = register.get("setting", name)
        return given(float(row["value"]), words, unit, "your setting") if row else None

    return Rules(
        setting(SettingName.CHANGE_STEP_PERCENT, "most of one step", "%") or CHANGE_STEP_PERCENT,
        setting(SettingName.CHANGE_STEP_KG, "most more in one step", "kg"),
        setting(SettingName.CHANGE_STEP_DAYS, "days from step to step", "d"),
    )


def changed(case: Case, new: Amounts) -> tuple[Meal, ...]:
    """The meals of which a head gets another amount, in the order of the day."""
    meals = dict.fromkeys((*case.now, *new))
    other = (meal for meal in meals if abs(new.get(meal, 0.0) - case.now.get(meal, 0.0)) > ROUNDING_KG)
    return tuple(sorted(other, key=lambda meal: SLOTS.index(meal[0])))


def feed_of(case: Case, feed_id: UUID) -> RationFeed:
    """A feed of a case. Raises ValueError for a feed that is not in it."""
    found = next((each for each in case.feeds if each.feed.id == feed_id), None)
    if found is None:
        raise ValueError(f"feed_id is {feed_id}; {case.name} has no such feed")
    return found


def step_limit(case: Case, new: Amounts, rules: Rules, meal: Meal) -> Value:
    """The most of one step of a meal, and why. [kg]"""
    feed, now_kg, wanted_kg = feed_of(case, meal[1]), case.now.get(meal, 0.0), new.get(meal, 0.0)
    name = f"{feed.feed.name}, {meal[0]}"
    found = step_of_percent_kg.of(
        name, now_kg=given(now_kg, "given now", "kg", "your plan"),
        wanted_kg=given(wanted_kg, "comes to", "kg", "as shown here"), percent=rules.percent,
    )  # fmt: skip
    found = max(found, _least(feed, name), key=_amount)
    rise = _most_more(case, new, rules, meal, name) if wanted_kg > now_kg else None
    return min(found, replace(rise, name=name), key=_amount) if rise else found


def _least(feed: RationFeed, name: str) -> Value:
    """The smallest step that the bench can tell. [kg]"""
    told = f"a quarter of the {feed.told.name}" if holds_kg(feed) and feed.told else "the least that is weighed out"
    return given(least_step_kg(holds_kg(feed)), name, "kg", told)


def _amount(value: Value) -> float:
    return value.amount


def _own_step(feed: RationFeed, rules: Rules) -> Value | None:
    """The farm's own step, of the feed or of every one that is no forage. [kg]"""
    return feed.limits.step_kg or (None if feed.forage else rules.step_kg)


def _most_more(case: Case, new: Amounts, rules: Rules, meal: Meal, name: str) -> Value | None:
    """The most more at one step: the farm's own, else a part of the usual rise; None: of forage there is none. [kg]

    A part that is less than the measure tells is a quarter of it every few days; but never more than a day's rise.
    """
    feed = feed_of(case, meal[1])
    own, least, most = _own_step(feed, rules), _least(feed, name), rise_of(case)
    if own or feed.forage:
        return own
    part = _part_of_rise(case, new, rules, meal, most)
    return part if least.amount > most.amount else max(part, least, key=_amount)


def _part_of_rise(case: Case, new: Amounts, rules: Rules, meal: Meal, most: Value) -> Value:
    rises = {each: new.get(each, 0.0) - case.now.get(each, 0.0) for each in shares_rise(case, new, rules)}
    all_kg = given(sum(rises.values()), "rise of all that is no forage", "kg", "as shown here")
    own_kg = given(rises[meal], "its own rise", "kg", "as shown here")
    return share_of_rise_kg.of(most_kg=most, own_kg=own_kg, all_kg=all_kg)


def shares_rise(case: Case, new: Amounts, rules: Rules) -> tuple[Meal, ...]:
    """The meals that share the usual rise of a day: more of what is no forage and has no step of the farm's own."""
    feeds = {
        meal: feed_of(case, meal[1]) for meal in changed(case, new) if new.get(meal, 0.0) > case.now.get(meal, 0.0)
    }
    return tuple(meal for meal, feed in feeds.items() if not feed.forage and _own_step(feed, rules) is None)


def rise_of(case: Case) -> Value:
    """How much more a day of all that is no forage, until the farm has a step of its own. [kg]"""
    grown = all(head.animal.species is Species.CATTLE and head.animal.stage in GROWN for head in case.heads)
    kg, source = (COW_RISE_KG_DAY, RISE) if grown else (YOUNG_RISE_KG_DAY, YOUNG_RISE)
    return given(kg, "more a day of all that is no forage", "kg", CAME, source)


def holds_kg(feed: RationFeed) -> float | None:
    return feed.told.holds_kg if feed.told else None


def days_between(case: Case, rules: Rules, feed_id: UUID, steps: int) -> int:
    """From step to step: the feed's own, the farm's; else longer where the feed is new to them and the steps few."""
    own = feed_of(case, feed_id).limits.step_days or rules.step_days
    is_new = not any(kg > 0 for (_, id_), kg in case.now.items() if id_ == feed_id)
    return int(own.amount) if own else days_for_new(steps) if is_new else STEP_DAYS


def fits(case: Case, new: Amounts, on_the_way: Iterable[Amounts]) -> bool:
    """Whether no cap is broken on any day that is not broken at either end."""
    ends, caps = [dict(_capped(case, each)) for each in (case.now, new)], dict(_caps(case))
    return all(
        kg <= max(caps.get(cap, inf), *(end.get(cap, 0.0) for end in ends)) + ROUNDING_KG
        for amounts in on_the_way
        for cap, kg in _capped(case, amounts)
    )


def _capped(case: Case, amounts: Amounts) -> Iterator[tuple[Meal | UUID | str, float]]:
    """What the caps are of: a feed in a meal, a feed in a day, all loose feed of a meal. [kg]"""
    given_kg = with_besides(case, amounts)
    yield from given_kg.items()
    for feed in case.feeds:
        yield feed.feed.id, sum(kg for (_, id_), kg in given_kg.items() if id_ == feed.feed.id)
    for slot in case.slots:
        yield slot, meal_kg(case, amounts, slot)


def _caps(case: Case) -> Iterator[tuple[Meal | UUID | str, float]]:
    for feed in case.feeds:
        of_meal, of_day = feed.limits.most_meal_kg, feed.limits.most_day_kg
        yield from (((slot, feed.feed.id), of_meal.amount) for slot in case.slots if of_meal)
        yield from ([(feed.feed.id, of_day.amount)] if of_day else [])
    yield from ((slot, case.meal_limit_kg.amount) for slot in case.slots if case.meal_limit_kg)


def with_besides(case: Case, amounts: Amounts) -> Amounts:
    """Some amounts with what is given by another plan. [kg]"""
    meals = dict.fromkeys((*amounts, *case.besides))
    return {meal: amounts.get(meal, 0.0) + case.besides.get(meal, 0.0) for meal in meals}


def meal_kg(case: Case, amounts: Amounts, slot: str) -> float:
    """The loose feed of a meal, what comes by another plan counted. [kg]"""
    given_kg = with_besides(case, amounts)
    return sum(given_kg.get((slot, each.feed.id), 0.0) for each in case.feeds if each.loose)
