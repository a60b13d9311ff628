"""Any change held, stepped back or ended on any rounds: caps and step limits hold all the way, what is fed stays."""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from itertools import pairwise
from uuid import UUID

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from store.book.facts.feed import PlanRow
from store.book.turn import Turn
from store.book.words import FEEDING, MORNING
from store.husbandry.starting import CHANGE_STEP_PERCENT
from store.ration.change import Change, preview
from store.ration.following import Act, Here, Meal, changed_by
from store.ration.parts import Amounts, Case
from store.ration.step_limits import Rules, changed, step_limit
from store.round.change import due_kg_at, with_rows
from tests.store.ration.any_change import Asked, asked, no_further_over
from tests.store.ration.small_ration import GRAIN, made_case, ration_feed
from tests.store.round.made import unhurried

ZONE, RULES, LONG_D = "Europe/Dublin", Rules(CHANGE_STEP_PERCENT), 90
LONG_AGO = Turn(date(2026, 1, 1), MORNING).day_begins(ZONE)
ACTS = st.tuples(st.sampled_from(Act), st.integers(0, 12), st.sampled_from(FEEDING), st.booleans())


def planned(case: Case, found: Change, new: Amounts) -> tuple[Meal, ...]:
    """The meals that change, with the rows that the book would hold."""

    def course(slot: str, feed_id: UUID) -> Iterator[PlanRow]:
        was_kg = case.now.get((slot, feed_id), 0.0)
        yield PlanRow(LONG_AGO, was_kg or None)
        for day in found.days:
            kg = day.amounts.get((slot, feed_id), 0.0)
            if kg != was_kg:
                yield PlanRow(Turn(day.on, slot).day_begins(ZONE), kg or None)
            was_kg = kg

    return tuple(Meal(slot, id_, "", None, tuple(course(slot, id_))) for slot, id_ in changed(case, new))


def acted(meals: Sequence[Meal], act: Act, here: Here) -> tuple[Meal, ...]:
    """The same meals with the rows of an act."""
    added = changed_by(act, meals, here)
    return tuple(
        Meal(meal.slot, meal.feed_id, "", None, with_rows(meal.rows, more))
        for meal, more in zip(meals, added, strict=True)
    )


def on_day(case: Case, meals: Sequence[Meal], on: date) -> Amounts:
    """What a head gets on a day."""
    due = {(each.slot, each.feed_id): due_kg_at(each.rows, Turn(on, each.slot).begins(ZONE)) or 0.0 for each in meals}
    return {**case.now, **due}


@unhurried
@given(asked(), st.lists(ACTS, min_size=1, max_size=4))
def test_whatever_is_done_with_it_no_day_breaks_a_cap_and_no_meal_goes_further_than_its_step(
    any_change: Asked, acts: list[tuple[Act, int, str, bool]]
) -> None:
    case, new = any_change.case, any_change.new
    found = preview(case, new, RULES, any_change.start)
    assume(found.days)
    meals = planned(case, found, new)
    first = any_change.start.day
    for act, day, slot, is_fed in sorted(acts, key=lambda each: (each[1], FEEDING.index(each[2]))):
        here, before = Here(Turn(first + timedelta(days=day), slot), is_fed, ZONE), meals
        meals = acted(meals, act, here)
        for was, now in zip(before, meals, strict=True):
            turn = here.turn if is_fed and was.slot == slot else Turn(here.turn.day - timedelta(days=1), was.slot)
            assert due_kg_at(was.rows, turn.begins(ZONE)) == due_kg_at(now.rows, turn.begins(ZONE))
    course = [on_day(case, meals, first + timedelta(days=day)) for day in range(-1, LONG_D)]
    assert [amounts for amounts in course if not no_further_over(case, new, amounts)] == []
    for meal in changed(case, new):
        limit_kg = step_limit(case, new, RULES, meal).amount
        assert max(abs(to[meal] - was[meal]) for was, to in pairwise(course)) <= limit_kg + 1e-6
    if Act.END not in [act for act, *_ in acts]:
        assert {meal: course[-1][meal] for meal in changed(case, new)} == pytest.approx(
            {meal: new.get(meal, 0.0) for meal in changed(case, new)}
        )


@pytest.mark.parametrize("act", [Act.HOLD, Act.BACK])
def test_an_evening_is_not_above_its_plan_where_the_morning_is_up_already(act: Act) -> None:
    """From the evening to the morning, 2 kg a day at most: this morning was raised, so the evening comes down."""
    case = made_case(ration_feed(GRAIN, most_day_kg=2), now={("evening", GRAIN.id): 2.0})
    new = {("morning", GRAIN.id): 2.0, ("evening", GRAIN.id): 0.0}
    found = preview(case, new, RULES, Turn(date(2026, 3, 11), MORNING))
    meals = planned(case, found, new)
    on = found.days[1].on
    after = acted(meals, act, Here(Turn(on, "evening"), False, ZONE))
    assert on_day(case, after, on) == on_day(case, meals, on)
    assert sum(on_day(case, after, on + timedelta(days=1)).values()) == pytest.approx(2)
