"""Laws of the addition: whatever nights are typed in, in the end the hay is what it was."""

from datetime import UTC, datetime, timedelta
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.book.drafts import Subject
from store.book.facts.feed import Feed, PlanRow, Portion
from store.book.turn import turn_at
from store.herd.course import course_of
from store.herd.more_hay import Limits, more_hay, plan_rows
from store.herd.outside import Hay, OutsidePen
from store.herd.stretch import Stretch
from tests.store.round.made import dawn, pen_named, some_id, unhurried

HAY = Feed(some_id("hay"), "meadow hay", soaked=False, baled=True)
BASE_KG, PLANNED_KG = 5.0, 7.0
BEGAN = datetime(2026, 1, 1, tzinfo=UTC)
FIRST_NIGHT = datetime(2026, 1, 20, 15, tzinfo=UTC)
NIGHTS = st.lists(st.tuples(st.floats(1, 40), st.floats(0, 80), st.integers(1, 6)), min_size=1, max_size=40)
"""Hours since the forecast before, what the cold asks for [%], for how many rounds."""


def due_kg(rows: list[PlanRow], at: datetime) -> float | None:
    """In force: the newest beginning, then the one written later."""
    begun = [(row.begins_at, written, row.due_kg) for written, row in enumerate(rows) if row.begins_at <= at]
    return max(begun)[2]


def as_read(rows: list[PlanRow]) -> tuple[PlanRow, ...]:
    """One row for each beginning, oldest first: the one written last."""
    counts = {row.begins_at: row for row in rows}
    return tuple(counts[at] for at in sorted(counts))


def type_in(rows: list[PlanRow], now: datetime, asked_percent: float, count: int) -> Stretch:
    """A forecast is taken for so many rounds: its rows are added for the evening, as the book would hold them."""
    farm = dawn().farm
    turns = [turn_at(now, farm.zone, farm.evening_from_h)]
    while len(turns) < count:
        turns.append(turns[-1].after())
    stretch = Stretch(farm, now, tuple(turns))
    if "evening" in stretch.slots:
        read = as_read(rows)
        course = course_of(read, now)
        portion = Portion(HAY, course.now_kg, None, rows=read)
        hay = Hay(Subject(pen_id=UUID(int=1)), "Orchard", 2, "evening", portion, course)
        pen = OutsidePen(pen_named(dawn(), "Orchard"), (), (hay,), None, ())
        for more in more_hay(pen, asked_percent, Limits(30.0)):
            for row in plan_rows(more, stretch):
                rows.append(PlanRow(row.values["begins_at"], row.values["due_kg"]))
    return stretch


@unhurried
@given(NIGHTS)
def test_after_any_spell_of_cold_the_hay_is_what_it_was(nights: list[tuple[float, float, int]]) -> None:
    """Also one of forty nights, each typed in before the last one was over; and it is never on top of each other."""
    rows, now = [PlanRow(BEGAN, BASE_KG)], FIRST_NIGHT
    for hours, asked_percent, count in nights:
        now += timedelta(hours=hours)
        stretch = type_in(rows, now, asked_percent, count)
        percent = min(asked_percent, 30.0) if asked_percent >= 1 else 0.0
        for turn in stretch.turns:
            if turn.slot == "evening":
                at = max(now, turn.begins(stretch.farm.zone))
                assert due_kg(rows, at) == pytest.approx(BASE_KG * (1 + percent / 100))
    assert due_kg(rows, now + timedelta(days=4)) == BASE_KG


@unhurried
@given(NIGHTS, st.integers(0, 30))
def test_a_change_planned_between_the_nights_always_comes(nights: list[tuple[float, float, int]], days: int) -> None:
    """And no addition is ever larger than what the keeper allows of the larger amount."""
    planned = PlanRow(FIRST_NIGHT + timedelta(days=days), PLANNED_KG)
    rows, now = [PlanRow(BEGAN, BASE_KG), planned], FIRST_NIGHT
    for hours, asked_percent, count in nights:
        now += timedelta(hours=hours)
        type_in(rows, now, asked_percent, count)
        assert due_kg(rows, max(planned.begins_at, now + timedelta(days=4))) == PLANNED_KG
    assert max(row.due_kg or 0 for row in rows) <= PLANNED_KG * 1.3 + 1e-9


def test_a_change_that_goes_on_does_not_pass() -> None:
    """Two steps still to come: what is given now is no addition, though the end of it was given before."""
    days = ((-9, 3.0), (-5, 5.0), (0, 4.5), (1, 4.0), (2, 3.0))
    steps = [PlanRow(FIRST_NIGHT + timedelta(days=day), kg) for day, kg in days]
    course = course_of(steps, FIRST_NIGHT)
    assert (course.lasting_kg, course.passing, course.planned) == (4.5, (), tuple(steps[3:]))


def test_where_nothing_is_given_there_is_no_course() -> None:
    with pytest.raises(ValueError, match="nothing is given then"):
        course_of([PlanRow(BEGAN, BASE_KG), PlanRow(FIRST_NIGHT, None)], FIRST_NIGHT)
