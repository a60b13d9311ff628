"""What a round moves on is asked for in the next one: once, by the name of what it was."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.records.feeding import TaskAs
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import EVENING, Fate, State
from store.round.confirm import done, moved_on, undone
from store.round.measured import milked
from store.round.plan import plan
from store.round.steps import PastStep, Step, TaskStep
from store.round.summary import summarise
from tests.farm import MORNING, HandClock, morning
from tests.farm import hand as hand_at
from tests.store.book.seeing import put
from tests.store.round.made import dawn, hand, moved, the_step, wrote
from tests.store.round.named import feed_of, milk_of, soak_start_of, steps_of, task_of

SWEEP = "Water trough runs"
LATER = Turn(date(2026, 3, 11), EVENING)


def evening(book: Book, turn: Turn = LATER) -> Snapshot:
    """The round behind the pretend morning, twelve hours later."""
    days = (turn.day - MORNING.date()).days
    return read_snapshot(book.desk, turn, MORNING + timedelta(days=days, hours=12 if turn.slot == EVENING else 0))


def move(book: Book, snapshot: Snapshot, step: Step) -> None:
    """A step is moved on."""
    book.append(moved_on(hand_at(book, snapshot), step))


def carried(snapshot: Snapshot) -> list[TaskStep]:
    """The steps that came from the round before."""
    return [step for step in steps_of(snapshot, TaskStep) if "moved on from" in step.name]


def test_a_step_moved_on_is_no_longer_open_and_not_done_either() -> None:
    """It stands in a list of its own."""
    after = wrote(dawn(), moved_on(hand(dawn()), task_of(dawn(), SWEEP)))
    step = task_of(after, SWEEP)
    assert step.state is State.MOVED_ON
    found = summarise(after, plan(after))
    assert found.moved_on == (step,)
    assert step not in (*found.done, *found.not_recorded, *found.skipped)


def test_the_next_round_asks_for_it_in_its_own_pen_behind_all_else(book: Book) -> None:
    """Open, named after what it was and where it came from."""
    found = morning(book)
    for step in (milk_of(found, "Hazel"), feed_of(found, "Stall")):
        move(book, found, step)
    steps = [step for step in plan(evening(book)) if step.place == "Stall"][-2:]
    assert [(step.name, step.state) for step in steps] == [
        ("Hazel (milk), moved on from the morning", State.OPEN),
        ("Stall (hay), moved on from the morning", State.OPEN),
    ]
    assert all(isinstance(step, TaskStep) for step in steps)
    assert len({step.step_id for step in plan(evening(book))}) == len(plan(evening(book)))


def test_what_has_no_pen_is_asked_for_first_of_all_at_the_bench(book: Book) -> None:
    """The soak, a job of the bench, an animal that stands nowhere here, a pen that is out of use."""
    found = morning(book)
    for step in (soak_start_of(found, "lucerne pellets"), task_of(found, "Feed room shut and chained")):
        move(book, found, step)
    move(book, found, milk_of(found, "Hazel"))
    later = moved(evening(book), "Hazel", None)
    assert [step.place for step in plan(later)[:3]] == ["Bench"] * 3
    assert [step.name for step in plan(later)[:3]] == [step.name for step in carried(later)]
    unused = replace(evening(book), pens=())
    assert {step.place for step in carried(unused)} == {"Bench"}


def test_it_is_asked_for_once_though_two_pens_have_one_name(book: Book) -> None:
    """Nobody forbids it."""
    move(book, morning(book), feed_of(morning(book), "Stall"))
    later = evening(book)
    twins = replace(later, pens=tuple(replace(pen, name="Stall") for pen in later.pens))
    assert len(carried(twins)) == 1


def test_a_job_of_the_morning_that_is_moved_on_is_asked_for_by_its_name(book: Book) -> None:
    """Though the evening has no such job of its own."""
    move(book, morning(book), task_of(morning(book), SWEEP))
    assert [step.name for step in carried(evening(book))] == [f"{SWEEP}, moved on from the morning"]


@pytest.mark.parametrize("flag", ["adult_only", "two_people"])
def test_a_job_for_an_adult_or_for_two_stays_so_when_it_is_moved_on(book: Book, flag: str) -> None:
    """The evening is no safer than the morning."""
    job = next(job.id for job in morning(book).jobs if job.name == SWEEP)
    put(book.desk, TaskAs, task_id=job, name=SWEEP, slot="morning", **{flag: True})
    found = morning(book)
    assert getattr(task_of(found, SWEEP), flag)
    move(book, found, task_of(found, SWEEP))
    assert [getattr(step, flag) for step in carried(evening(book))] == [True]


def test_nothing_is_asked_for_twice_though_it_was_moved_on_twice(book: Book) -> None:
    """Moved on, undone, moved on again: once."""
    move(book, morning(book), task_of(morning(book), SWEEP))
    found = morning(book)
    book.append(undone(hand_at(book, found), found.entries[-1]))
    assert carried(evening(book)) == []
    move(book, morning(book), task_of(morning(book), SWEEP))
    assert len(carried(evening(book))) == 1


def test_what_was_done_after_all_is_not_asked_for(book: Book) -> None:
    """The keeper came back to it in the same round."""
    move(book, morning(book), milk_of(morning(book), "Hazel"))
    found = morning(book)
    book.append(milked(hand_at(book, found), milk_of(found, "Hazel"), "9.4", Fate.HOUSE))
    assert carried(evening(book)) == []


def test_it_is_not_asked_for_in_the_round_after_the_next(book: Book) -> None:
    """Unless it is moved on again."""
    move(book, morning(book), task_of(morning(book), SWEEP))
    tomorrow = Turn(date(2026, 3, 12), "morning")
    assert carried(evening(book, tomorrow)) == []
    book.clock = HandClock(MORNING + timedelta(hours=12))
    move(book, evening(book), carried(evening(book))[0])
    (step,) = carried(evening(book, tomorrow))
    assert (step.state, step.place) == (State.OPEN, "Orchard")


def test_what_is_moved_on_a_second_time_still_says_what_it_was(book: Book) -> None:
    """A milking moved on twice is a milking still, not just a name."""
    move(book, morning(book), milk_of(morning(book), "Hazel"))
    book.clock = HandClock(MORNING + timedelta(hours=12))
    move(book, evening(book), carried(evening(book))[0])
    (step,) = carried(evening(book, Turn(date(2026, 3, 12), "morning")))
    assert "Hazel (milk)" in step.name


def test_what_was_moved_here_is_done_like_any_job(book: Book) -> None:
    """And stays done, with the animal that it was about."""
    move(book, morning(book), milk_of(morning(book), "Hazel"))
    book.clock = HandClock(MORNING + timedelta(hours=12))
    found = evening(book)
    (step,) = carried(found)
    book.append(done(hand_at(book, found), step))
    after = evening(book)
    assert the_step(after, step).state is State.DONE
    assert the_step(after, step).subject.animal_id == milk_of(morning(book), "Hazel").animal.id
    assert after.milkings == found.milkings


def test_what_was_done_here_counts_though_the_round_before_takes_it_back(book: Book) -> None:
    """It is no longer asked for, and it was done."""
    move(book, morning(book), task_of(morning(book), SWEEP))
    book.clock = HandClock(MORNING + timedelta(hours=12))
    (step,) = carried(evening(book))
    book.append(done(hand_at(book, evening(book)), step))
    found = morning_of(book)
    book.append(undone(replace(hand_at(book, found), turn=found.turn), found.entries[-1]))
    (past,) = steps_of(evening(book), PastStep)
    assert (past.step_id, past.state) == (step.step_id, State.DONE)


def morning_of(book: Book) -> Snapshot:
    """The pretend morning's round, whatever the clock says meanwhile."""
    return read_snapshot(book.desk, Turn(date(2026, 3, 11), "morning"), MORNING)


def test_a_soak_moved_on_is_named_after_the_feed(book: Book) -> None:
    """Every kind has a name, whatever it is about."""
    move(book, morning(book), soak_start_of(morning(book), "lucerne pellets"))
    assert [step.name for step in carried(evening(book))] == ["lucerne pellets (soak), moved on from the morning"]


def test_what_was_moved_on_from_an_animal_that_is_gone_is_still_asked_for() -> None:
    """She is gone, the job is not."""
    after = wrote(dawn(), moved_on(hand(dawn()), milk_of(dawn(), "Hazel")))
    carried_over = replace(dawn(), turn=LATER, animals=(), moved_here=after.entries)
    assert carried(carried_over)[0].name == "Hazel (milk), moved on from the morning"
    nameless = replace(carried_over, names={})
    assert carried(nameless)[0].name == "gone since (milk), moved on from the morning"
