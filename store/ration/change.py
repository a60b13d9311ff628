"""A ration from now to new in dated steps: each feed by its own limits, all of them together."""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from itertools import pairwise

from msgspec import Struct

from store.book.turn import Turn
from store.book.words import SLOTS
from store.herd.days import day_words
from store.husbandry.change import STEP_DAYS, Steps, Way, days_for_rise, last_day, together
from store.husbandry.measures import QUARTERS
from store.husbandry.why import Value, given
from store.ration.parts import Amounts, Case
from store.ration.step_limits import (
    Meal,
    Rules,
    changed,
    days_between,
    feed_of,
    fits,
    holds_kg,
    meal_kg,
    rise_of,
    shares_rise,
    step_limit,
)  # fmt: skip


class DayPlan(Struct, frozen=True):
    """What a head gets from a day on. [kg]"""

    on: date
    amounts: Amounts


class Change(Struct, frozen=True):
    """A change before it starts. days: those on which something steps. lasts: on which day the last step is. [d]

    limits: what holds each meal's step back, where it does. biggest: the most loose feed in one meal on the way.
    """

    start: Turn
    days: tuple[DayPlan, ...]
    steps: int
    step_days: int
    lasts: Value | None
    limits: tuple[Value, ...]
    biggest: Value


def steps(case: Case, new: Amounts, rules: Rules, start: Turn) -> tuple[DayPlan, ...]:
    """The days on which something steps, the last of them with the new amounts; none where nothing changes."""
    return preview(case, new, rules, start).days


def preview(case: Case, new: Amounts, rules: Rules, start: Turn) -> Change:
    """The change as it would be written. start: the first round with another amount.

    Begun in an evening the mornings are a day behind; where a day of that breaks a cap it begins the next morning.
    """
    meals = changed(case, new)
    ways = [_way(case, new, rules, meal) for meal in meals]

    def days_of(found: Steps) -> tuple[DayPlan, ...]:
        return tuple(_days(case, meals, found, start, int(_step_days(case, new, rules, found).amount)))

    def keeps(found: Steps) -> bool:
        return fits(case, new, (day.amounts for day in days_of(found)))

    found = together(ways, keeps)
    if start.slot != SLOTS[0] and not keeps(found):
        return preview(case, new, rules, start.after())
    step_days, days = _step_days(case, new, rules, found), days_of(found)
    limits = tuple(step_limit(case, new, rules, meal) for meal in meals)
    count = given(len(found), "steps", "", "as shown here")
    lasts = last_day.of("day of the last step", steps=count, step_days=step_days) if found else None
    return Change(start, days, len(found), int(step_days.amount), lasts, limits, _biggest(case, days))


def _step_days(case: Case, new: Amounts, rules: Rules, found: Steps) -> Value:
    """From one step to the next, of all meals alike: as the feeds ask, or more, so that no day's rise is too much."""
    meals, sharing = changed(case, new), shares_rise(case, new, rules)
    longest = max((days_between(case, rules, id_, len(found)) for _, id_ in meals), default=STEP_DAYS)
    begin = tuple(case.now.get(meal, 0.0) for meal in meals)
    ways = zip(meals, zip(begin, *found, strict=True), strict=True)
    rises = (max(to - was for was, to in pairwise(way)) for meal, way in ways if meal in sharing)
    rise = given(sum(rises), "rise of all that is no forage", "kg", "the most of each meal at one step")
    slow = days_for_rise.of("days from step to step", rise_kg=rise, most_kg=rise_of(case))
    return max(given(longest, slow.name, "d", "the longest of these feeds"), slow, key=lambda value: value.amount)


def _way(case: Case, new: Amounts, rules: Rules, meal: Meal) -> Way:
    one_kg = holds_kg(feed_of(case, meal[1]))
    quarter_kg = one_kg / QUARTERS if one_kg else None
    return Way(case.now.get(meal, 0.0), new.get(meal, 0.0), step_limit(case, new, rules, meal).amount, quarter_kg)


def _days(case: Case, meals: Sequence[Meal], found: Steps, start: Turn, step_days: int) -> Iterator[DayPlan]:
    """By day; where the first round is an evening, the mornings go a day later."""
    late = [SLOTS.index(slot) < SLOTS.index(start.slot) for slot, _ in meals]
    days = {step * step_days + is_late for step in range(len(found)) for is_late in late}
    for day in sorted(days):
        amounts = dict(case.now)
        for at, meal in enumerate(meals):
            step = min((day - late[at]) // step_days, len(found) - 1)
            amounts |= {meal: found[step][at]} if step >= 0 else {}
        yield DayPlan(start.day + timedelta(days=day), amounts)


def _biggest(case: Case, days: Sequence[DayPlan]) -> Value:
    """The most loose feed in one meal on the way. [kg]"""
    meals = [(meal_kg(case, each.amounts, slot), slot, each.on) for each in days for slot in case.slots]
    kg, slot, on = max(meals, default=(0.0, "", None))
    return given(kg, "biggest meal on the way", "kg", f"{slot} of {day_words(on)}" if on else "nothing changes")
