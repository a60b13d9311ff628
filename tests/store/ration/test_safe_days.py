"""Every day of any change: no step above its limit, no cap broken that both ends keep, from an evening on too."""

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from msgspec.structs import replace

from store.book.facts.feed import Told
from store.book.turn import Turn
from store.book.words import FEEDING, Stage
from store.husbandry.starting import CHANGE_STEP_PERCENT
from store.ration.change import preview
from store.ration.parts import Head
from store.ration.step_limits import Rules, changed, rise_of, step_limit
from tests.store.ration.any_change import MEALS, Asked, asked, no_further_over
from tests.store.ration.small_ration import COW, GRAIN, made_case, ration_feed, value
from tests.store.round.made import some_id, unhurried

RULES = Rules(CHANGE_STEP_PERCENT)
MORNING_28 = Turn(date(2026, 3, 28), "morning")


@unhurried
@given(asked())
def test_no_day_breaks_a_cap_that_both_ends_keep(any_change: Asked) -> None:
    case, new = any_change.case, any_change.new
    days = preview(case, new, RULES, any_change.start).days
    assert [day.on for day in days if not no_further_over(case, new, day.amounts)] == []


@unhurried
@given(asked())
def test_no_meal_steps_further_than_its_limit_and_the_last_day_is_what_is_wanted(any_change: Asked) -> None:
    case, new = any_change.case, any_change.new
    days = preview(case, new, RULES, any_change.start).days
    course = [case.now, *(day.amounts for day in days)]
    for meal in changed(case, new):
        limit_kg = step_limit(case, new, RULES, meal).amount
        assert max(abs(to[meal] - was[meal]) for was, to in pairwise(course)) <= limit_kg + 1e-6
    assert {meal: course[-1][meal] for meal in MEALS} == pytest.approx({meal: new[meal] for meal in MEALS})


@unhurried
@given(asked())
def test_all_that_is_no_forage_rises_no_more_in_its_days_than_the_usual_however_coarse_the_measure(
    any_change: Asked,
) -> None:
    case = any_change.case
    found = preview(case, any_change.new, RULES, any_change.start)
    for day in found.days:
        before = day.on - timedelta(days=found.step_days)
        was = next((each.amounts for each in reversed(found.days) if each.on <= before), case.now)
        rise_kg = sum(max(day.amounts[meal] - was[meal], 0.0) for meal in MEALS)
        assert rise_kg <= rise_of(case).amount * found.step_days + 1e-6


def test_of_a_calf_whose_bucket_is_too_coarse_the_steps_are_told_by_weight() -> None:
    """By hand: 0.25 kg a day in two meals is 0.125 a meal, 8 steps for 1 kg; a quarter bucket would be 0.75."""
    bucket = replace(ration_feed(GRAIN), told=Told(some_id("bucket"), "bucket", "buckets", 3.0))
    calf = Head(replace(COW, stage=Stage.CALF), "")
    case = replace(made_case(bucket, now={(slot, GRAIN.id): 0.5 for slot in FEEDING}), heads=(calf,))
    found = preview(case, {(slot, GRAIN.id): 1.5 for slot in FEEDING}, RULES, MORNING_28)
    assert found.steps == 8
    assert [day.amounts["morning", GRAIN.id] for day in found.days] == pytest.approx(
        [0.5 + 0.125 * n for n in range(1, 9)]
    )


def test_two_quarter_scoops_that_are_more_than_a_days_rise_come_every_other_day() -> None:
    """By hand: 2 x 0.169 kg is more than 0.25 kg; a quarter of it is 0.169 kg in each meal."""
    scoop = replace(ration_feed(GRAIN), told=Told(some_id("scoop"), "scoop", "scoops", 0.675))
    case = replace(
        made_case(scoop, now={(slot, GRAIN.id): 0.675 for slot in FEEDING}),
        heads=(Head(replace(COW, stage=Stage.CALF), ""),),
    )
    found = preview(case, {(slot, GRAIN.id): 1.35 for slot in FEEDING}, RULES, MORNING_28)
    assert (found.steps, found.step_days, [day.on.day for day in found.days]) == (4, 2, [28, 30, 1, 3])


def test_where_an_evening_would_bring_a_day_above_its_cap_it_begins_the_next_morning() -> None:
    """From the morning to the evening: the evening may go up only once the morning has come down."""
    feed = ration_feed(GRAIN, most_day_kg=2)
    case = made_case(feed, now={("morning", GRAIN.id): 2.0})
    new = {("morning", GRAIN.id): 0.0, ("evening", GRAIN.id): 2.0}
    found = preview(case, new, RULES, Turn(date(2026, 3, 28), "evening"))
    assert found.start == Turn(date(2026, 3, 29), "morning")
    assert [sum(day.amounts.values()) for day in found.days] == pytest.approx([2.0] * found.steps)


def test_what_comes_by_another_plan_counts_in_the_biggest_meal() -> None:
    case = made_case(ration_feed(GRAIN), now={("morning", GRAIN.id): 1.0})
    with_more = replace(case, besides={("morning", GRAIN.id): value(0.5).amount})
    found = preview(with_more, {("morning", GRAIN.id): 1.25}, RULES, MORNING_28)
    assert found.biggest.amount == pytest.approx(1.75)
