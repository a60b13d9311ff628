"""A job under the lamp: what to do, and when it comes where that is not every day."""

from datetime import date
from typing import Any

import pytest

from store.book.opening import Book
from store.book.reading import read_facts
from store.book.records.feeding import Task, TaskAs, TaskDue
from store.book.words import MORNING, Kind, Stage
from tests.farm import HandClock
from tests.store.book.seeing import put
from tests.store.round.made import some_id
from tests.tui.keys import Sitting
from tui.rooms import House
from tui.walker import Walker

BATH = "Foot bath filled"


def with_bath(book: Book, **how: Any) -> Sitting:
    """The pretend morning with a foot bath that comes in some way."""
    put(book.desk, Task, id=some_id("bath"))
    put(book.desk, TaskAs, task_id=some_id("bath"), name=BATH, slot=MORNING)
    put(book.desk, TaskDue, task_id=some_id("bath"), **how)
    return Sitting(House(Walker(book, read_facts(book.desk, book.clock.now())))).to_step(BATH, "task")


@pytest.mark.parametrize(
    ("how", "words"),
    [
        ({"every_days": 3}, "every 3 days, not done yet"),
        ({"once": True}, "once, until it is done"),
        ({"season_first": "03-01", "season_last": "04-30"}, "day 11 of its season"),
        ({"season_first": "11-01", "season_last": "04-30"}, "day 131 of its season"),
        ({"every_days": 2, "until_on": date(2026, 4, 1)}, "every 2 days, not done yet, until Wed 1 Apr"),
        ({"stage": Stage.DRY}, "while one is there that is: dry"),
    ],
)
def test_it_says_when_it_comes(book: Book, how: dict[str, Any], words: str) -> None:
    assert f"COMES   {words}" in with_bath(book, **how).text()


def test_one_of_every_day_says_nothing(sitting: Sitting) -> None:
    assert "COMES" not in sitting.to_step("Feed room shut and chained", "task").text()


def test_it_says_when_it_was_done_last(book: Book, clock: HandClock) -> None:
    sitting = with_bath(book, every_days=3).press("enter")
    clock.move(days=2)
    sitting.walker.open_turn(sitting.walker.this())
    assert BATH not in {step.name for step in sitting.walker.steps}
    clock.move(days=1)
    sitting.walker.open_turn(sitting.walker.this())
    assert "COMES   every 3 days, last Wed 11 Mar" in sitting.to_step(BATH, "task").text()


def test_what_was_moved_on_says_where_from_instead(book: Book, clock: HandClock) -> None:
    sitting = with_bath(book, every_days=3).press("l2", "enter")
    clock.move(hours=12)
    sitting.walker.open_turn(sitting.walker.this())
    text = sitting.to_step(BATH, "task").text()
    assert "MOVED ON from Wed 11 Mar morning" in text
    assert "COMES" not in text


@pytest.mark.parametrize(("typed", "left_out"), [("10.2", "2"), (".", "."), ("½", "½")])
def test_a_figure_at_a_job_is_refused_in_words(sitting: Sitting, typed: str, left_out: str) -> None:
    task = next(step for step in sitting.walker.steps if step.kind is Kind.TASK)
    sitting.to_step(task.name, "task").press(typed)
    assert sitting.said == f"«{left_out}» is left out: nothing is typed here. Enter: done. N writes a note."
    assert sitting.written() == 0
