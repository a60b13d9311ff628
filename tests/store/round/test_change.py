"""A feed change as dated rows of a plan: where it stands, and how it is held for a day."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from store.book.facts.feed import PlanRow
from store.book.opening import Book
from store.book.records.feeding import FeedPlan
from store.book.snapshot import Snapshot
from store.round.change import (
    FeedChange,
    change_of,
    days_back,
    days_on,
    ended,
    held,
    step_after_hold,
    with_rows,
)  # fmt: skip
from tests.farm import MORNING, morning
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, unhurried
from tests.store.round.named import feed_of

MIDNIGHT = MORNING.replace(hour=0, minute=0)
DAY = timedelta(days=1)
ZONE = "Europe/Dublin"


def rows(*steps: tuple[float, float | None]) -> tuple[PlanRow, ...]:
    """Days from the pretend day's midnight, and amounts."""
    return tuple(PlanRow(MIDNIGHT + timedelta(days=days), due_kg) for days, due_kg in steps)


FOUR_DAYS = rows((-40, 1.0), (-1, 1.2), (0, 1.4), (1, 1.6), (2, 1.8))


def at(plan: tuple[PlanRow, ...], moment: datetime) -> float | None:
    """What a plan says at a moment: the newest beginning, and of two the one that was added later."""
    begun = [row for row in plan if row.begins_at <= moment]
    return max(enumerate(begun), key=lambda each: (each[1].begins_at, each[0]))[1].due_kg if begun else None


@pytest.mark.parametrize(("plan", "expected"), [
    (FOUR_DAYS, FeedChange(2, 4, 1.2, FOUR_DAYS[3])),
    (rows((-40, 1.0), (0, 1.4)), FeedChange(1, 1, 1.0, None)),
    (rows((-40, 1.0), (-3, 1.2), (3, 1.4)), FeedChange(4, 7, 1.0, PlanRow(MIDNIGHT + 3 * DAY, 1.4))),
    (rows((-40, 1.0), (-2, 1.2), (0, 1.4), (20, 9.0)), FeedChange(3, 3, 1.2, None)),
    (rows((-40, None), (0, 1.2), (1, 1.4)), FeedChange(1, 2, 0.0, PlanRow(MIDNIGHT + DAY, 1.4))),
    (rows((-0.5, None), (0, 1.2), (1, 1.4)), FeedChange(1, 2, 0.0, PlanRow(MIDNIGHT + DAY, 1.4))),
])  # fmt: skip
def test_a_change_says_which_day_it_is_what_was_before_and_what_comes(
    plan: tuple[PlanRow, ...], expected: FeedChange
) -> None:
    """Rows within a week of each other are one change; what stood before it is no step of it."""
    assert change_of(plan, MORNING, ZONE) == expected


@pytest.mark.parametrize("plan", [
    rows(), rows((-40, 1.0)), rows((0, 1.0)), rows((0, 1.0), (1, 1.2)), rows((-40, 1.0), (-3, 1.2)),
    rows((-40, 1.0), (20, 1.2)), rows((-40, 1.0), (-20, 1.2), (20, 1.4)),
    rows((0, None), (1, 1.2)),
])  # fmt: skip
def test_no_change_is_seen_where_nothing_changes_these_days(plan: tuple[PlanRow, ...]) -> None:
    """A first plan, a change that is over, one that is weeks off, one that begins tomorrow."""
    assert change_of(plan, MORNING, ZONE) is None


def test_held_today_is_as_yesterday_and_every_step_a_day_later() -> None:
    """By hand: 1.4 was due today, 1.6 tomorrow, 1.8 the day after."""
    after = (*FOUR_DAYS, *held(FOUR_DAYS, MIDNIGHT, ZONE))
    days = [at(after, MORNING + n * DAY) for n in range(5)]
    assert days == [1.2, 1.4, 1.6, 1.8, 1.8]


def test_held_between_two_steps_today_stays_and_the_next_comes_later() -> None:
    """Nothing began today, so that nothing is taken back."""
    plan = rows((-40, 1.0), (-3, 1.2), (3, 1.4))
    after = (*plan, *held(plan, MIDNIGHT, ZONE))
    assert [at(after, MORNING + n * DAY) for n in (0, 2, 3, 4, 5)] == [1.2, 1.2, 1.2, 1.4, 1.4]


@given(
    gaps=st.lists(st.integers(1, 3), min_size=1, max_size=8),
    amounts=st.lists(st.floats(0.1, 4), min_size=9, max_size=9),
    begun_days=st.integers(0, 9),
    holds=st.lists(st.integers(0, 3), max_size=4, unique=True),
)
@example(gaps=[1, 1, 1], amounts=[1.0] * 9, begun_days=0, holds=[0, 1])
@unhurried
def test_a_plan_held_on_some_days_is_the_plan_so_many_days_earlier(
    gaps: list[int], amounts: list[float], begun_days: int, holds: list[int]
) -> None:
    """Held once or several times, over the day on which the clock goes forward: no meal is further than its step."""
    start = datetime(2026, 3, 27, tzinfo=UTC)
    begun = [days_on(start, sum(gaps[:n]) - begun_days, ZONE) for n in range(len(gaps))]
    times = [days_on(start, -40, ZONE), *begun]
    original = plan = tuple(PlanRow(time, due_kg) for time, due_kg in zip(times, amounts, strict=False))
    for shifted, day in enumerate(sorted(holds), start=1):
        plan = with_rows(plan, held(plan, days_on(start, day, ZONE), ZONE))
        for ahead in range(8):
            breakfast = days_on(start, day + ahead, ZONE) + timedelta(hours=7)
            assert at(plan, breakfast) == at(original, days_on(breakfast, -shifted, ZONE))


def after_of(plan: tuple[PlanRow, ...], added: tuple[PlanRow, ...], days: range) -> list[float | None]:
    """What is given on some days, counted from the pretend day."""
    return [at(with_rows(plan, added), MORNING + n * DAY) for n in days]


def stepped_back(plan: tuple[PlanRow, ...]) -> tuple[PlanRow, ...]:
    """The rows to add so that today is as before the step fed last."""
    return held(plan, MIDNIGHT, ZONE, days_back(plan, MIDNIGHT, ZONE) or 1)


def test_stepped_back_it_is_as_before_the_step_fed_last_and_that_one_comes_again_tomorrow() -> None:
    """By hand: 1.2 was fed yesterday, 1.4 was due today; 1.0 was before."""
    assert after_of(FOUR_DAYS, stepped_back(FOUR_DAYS), range(6)) == [1.0, 1.2, 1.4, 1.6, 1.8, 1.8]


def test_stepped_back_between_two_steps_the_present_one_comes_again_with_all_its_days() -> None:
    """1.2 began two days ago and would have become 1.4 tomorrow."""
    plan = rows((-40, 1.0), (-2, 1.2), (1, 1.4))
    assert after_of(plan, stepped_back(plan), range(6)) == [1.0, 1.2, 1.2, 1.2, 1.4, 1.4]


@pytest.mark.parametrize("plan", [
    rows((-40, 1.0), (0, 1.2), (1, 1.4)), rows((-60, 0.5), (-40, 1.0), (0, 1.2), (1, 1.4)),
    rows((-0.5, None), (0, 1.2), (1, 1.4)),
])  # fmt: skip
def test_stepped_back_before_anything_of_it_was_fed_it_is_held(plan: tuple[PlanRow, ...]) -> None:
    assert days_back(plan, MIDNIGHT, ZONE) is None


def test_stepped_back_to_nothing_where_it_began_from_nothing() -> None:
    plan = rows((-1.5, None), (-1, 1.2), (0, 1.4))
    assert after_of(plan, stepped_back(plan), range(3)) == [None, 1.2, 1.4]


def test_a_feed_that_was_taken_away_with_the_last_step_comes_back() -> None:
    plan = rows((-40, 1.0), (-2, 0.5), (-1, None))
    assert after_of(plan, stepped_back(plan), range(3)) == [0.5, None, None]


def test_on_the_first_day_no_more_than_is_planned_for_it_where_that_is_asked() -> None:
    """By hand: 1.0 was to come today after 1.2 and 1.4; held it would be 1.2."""
    plan = rows((-40, 1.4), (-1, 1.2), (0, 1.0), (1, 0.8))
    assert after_of(plan, held(plan, MIDNIGHT, ZONE, no_more=True), range(4)) == [1.0, 1.0, 0.8, 0.8]


def test_ended_it_stays_as_today_and_is_no_change_any_more() -> None:
    plan = with_rows(FOUR_DAYS, ended(FOUR_DAYS, MIDNIGHT))
    assert [at(plan, MORNING + n * DAY) for n in range(4)] == [1.4] * 4
    assert change_of(plan, MORNING, ZONE) == FeedChange(2, 2, 1.2, None)
    assert change_of(plan, MORNING + DAY, ZONE) is None


def test_a_day_later_is_the_same_hour_where_the_clock_changes() -> None:
    """Dublin goes back on 25 October 2026: midnight stays midnight."""
    midnight = datetime(2026, 10, 24, 23, 0, tzinfo=UTC)
    assert days_on(midnight, 1, ZONE) == datetime(2026, 10, 26, 0, 0, tzinfo=UTC)
    assert days_on(days_on(midnight, 1, ZONE), -1, ZONE) == midnight


def changing(book: Book) -> Snapshot:
    """The small farm's pretend morning, on which Hazel's nuts are raised step by step."""
    found = morning(book)
    due = feed_of(found, "Hazel").due[0]
    for days, kg in ((-1, 1.6), (0, 1.8), (1, 2.1)):
        put(
            book.desk, FeedPlan, slot="morning", animal_id=animal_named(found, "Hazel").id, feed_id=due.feed.id,
            due_kg=kg, measure_id=due.told.id if due.told else None, begins_at=MIDNIGHT + timedelta(days=days),
        )  # fmt: skip
    return morning(book)


def test_a_change_is_read_with_the_plan(book: Book) -> None:
    step = feed_of(changing(book), "Hazel")
    assert step.due[0].due_kg == 1.8
    assert change_of(step.due[0].rows, MORNING, ZONE) == FeedChange(2, 3, 1.6, PlanRow(MIDNIGHT + DAY, 2.1))


def test_the_day_on_which_it_is_held_is_known_and_what_comes_then() -> None:
    """A plan that stays as it is, or is written again with nothing to come, is not held."""
    for plan in (FOUR_DAYS, rows((-40, 1.0), (0, 1.2), (1, 1.4))):
        on_hold = with_rows(plan, held(plan, MIDNIGHT, ZONE))
        found = step_after_hold(on_hold, MORNING, ZONE)
        assert found is not None
        assert (found.begins_at, found.due_kg) == (MIDNIGHT + DAY, at(plan, MORNING))
        assert step_after_hold(on_hold, MORNING + DAY, ZONE) is None
        assert step_after_hold(plan, MORNING, ZONE) is None
    assert step_after_hold(rows((-40, 1.0), (0, 1.0)), MORNING, ZONE) is None
