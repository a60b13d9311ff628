"""A round that nobody opened: it is asked about, what was left before it is seen, and nothing is lost from sight."""

from datetime import date

import pytest

from store.book.drafts import Subject
from store.book.turn import Turn
from store.book.words import State
from store.round.confirm import noted
from tests.farm import MORNING, HandClock
from tests.tui.keys import Sitting

EVENING = Turn(date(2026, 3, 11), "evening")
SWEEP = "Water trough runs"


@pytest.fixture
def morning_after(sitting: Sitting, clock: HandClock) -> Sitting:
    """The pretend morning was walked and ended, with one job moved on and a note; its evening was never opened."""
    sitting.to_step(SWEEP, "task").press("l2", "enter")
    sitting.walker.write(noted(sitting.walker.hand(), Subject(), "Gate sticks", tell=True))
    sitting.place = sitting.house.closing()
    sitting.press("e", "enter")
    clock.at = MORNING.replace(day=12)
    return sitting.begin()


def test_what_was_left_before_it_is_seen_first_and_then_it_is_asked_about(morning_after: Sitting) -> None:
    text = morning_after.text()
    assert "LEFT FOR YOU by Wed 11 Mar morning" in text
    assert "Gate sticks" in text
    assert f"MOVED ON  {SWEEP}" in text
    morning_after.press("enter")
    assert "Wed 11 Mar evening: nothing was written" in morning_after.text()
    assert morning_after.walker.turn == EVENING


def test_it_was_done_on_paper(morning_after: Sitting) -> None:
    morning_after.press("enter", "2", "enter")
    questions = []
    while "ON PAPER" in morning_after.text():
        questions.append(morning_after.text())
        if "left undone" in questions[-1]:
            morning_after.press("Trough looked at")
        morning_after.press("enter")
    assert len(questions) == 3
    assert "Trough looked at" in morning_after.text()
    assert morning_after.walker.turn == EVENING.after()
    morning_after.walker.open_turn(EVENING, live=False)
    states = {step.state for step in morning_after.walker.steps}
    assert states == {State.ON_PAPER}


def test_it_was_not_done_and_stays_so(morning_after: Sitting) -> None:
    morning_after.press("enter", "3", "enter")
    assert morning_after.walker.turn == EVENING.after()
    assert "NOT RECORDED" in morning_after.text()
    assert "more: R, then 2, opens that round" in morning_after.text()
    morning_after.press("enter")
    assert morning_after.walker.steps[0].state is State.OPEN


def test_it_is_typed_in_now(morning_after: Sitting) -> None:
    morning_after.press("enter", "1", "enter")
    assert morning_after.walker.turn == EVENING
    morning_after.to_step(SWEEP, "task", 1)
    assert "MOVED ON from Wed 11 Mar morning" in morning_after.text()


def test_two_rounds_left_are_asked_about_one_after_the_other(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step(SWEEP, "task").press("enter")
    clock.at = MORNING.replace(day=12)
    sitting.begin()
    assert "Wed 11 Mar morning: 17 steps are not recorded" in sitting.text()
    sitting.press("3", "enter")
    while "nothing was written" not in sitting.text():
        sitting.press("enter")
    assert "Wed 11 Mar evening: nothing was written" in sitting.text()
    sitting.press("3", "enter")
    assert sitting.walker.turn == EVENING.after()


def test_a_new_book_asks_about_nothing(sitting: Sitting, clock: HandClock) -> None:
    clock.at = MORNING.replace(year=2027)
    assert sitting.begin().walker.turn == Turn(date(2027, 3, 11), "morning")
    assert "What about them" not in sitting.text()
