"""What a round moves on is asked for in the next one that is walked: once, as the kind of step it was."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from store.book.figures import FedFigure
from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.records.feeding import TaskAs
from store.book.snapshot import LastRound, Snapshot
from store.book.turn import Turn
from store.book.words import EVENING, Fate, Kind, State
from store.round.confirm import done, moved_on, undone
from store.round.measured import fed, milked
from store.round.moved import may_move
from store.round.plan import plan
from store.round.steps import FeedStep, PastStep, Step, TaskStep
from store.round.summary import summarise
from tests.farm import MORNING, HandClock, morning
from tests.farm import hand as hand_at
from tests.store.book.seeing import put
from tests.store.round.made import dawn, hand, moved, the_step, wrote
from tests.store.round.named import feed_of, milk_of, soak_start_of, steps_of, task_of

SWEEP = "Water trough runs"
SHUT = "Feed room shut and chained"
LATER = Turn(date(2026, 3, 11), EVENING)
TOMORROW = Turn(date(2026, 3, 12), "morning")


def evening(book: Book, turn: Turn = LATER) -> Snapshot:
    """The round behind the pretend morning, twelve hours later."""
    days = (turn.day - MORNING.date()).days
    return read_snapshot(book.desk, turn, MORNING + timedelta(days=days, hours=12 if turn.slot == EVENING else 0))


def move(book: Book, snapshot: Snapshot, step: Step) -> None:
    """A step is moved on."""
    book.append(moved_on(hand_at(book, snapshot), step))


def carried(snapshot: Snapshot) -> list[Step]:
    """The steps that came from the last round."""
    return [step for step in plan(snapshot) if step.moved_from]


def test_a_step_moved_on_is_no_longer_open_and_not_done_either() -> None:
    """It stands in a list of its own."""
    after = wrote(dawn(), moved_on(hand(dawn()), task_of(dawn(), SWEEP)))
    step = task_of(after, SWEEP)
    assert step.state is State.MOVED_ON
    found = summarise(after, plan(after))
    assert found.moved_on == (step,)
    assert step not in (*found.done, *found.not_recorded, *found.skipped)


def test_what_the_next_round_does_in_its_stead_may_be_moved() -> None:
    """Jobs, looks and forage. Not a meal of grain, nor what the next round asks for anyway."""
    movable = {step.kind for step in plan(dawn()) if may_move(step)}
    assert movable == {Kind.TASK, Kind.HAY}
    assert {Kind.COUNT, Kind.SOAK, Kind.FEED, Kind.MILK, Kind.APART} <= {step.kind for step in plan(dawn())}


def test_the_next_round_asks_for_it_in_its_own_pen_behind_all_else(book: Book) -> None:
    """Open, of its own kind, with where it came from."""
    found = morning(book)
    for step in (feed_of(found, "Stall"), task_of(found, SWEEP)):
        move(book, found, step)
    (hay,) = [step for step in plan(evening(book)) if step.place == "Stall" and step.moved_from]
    assert (hay.name, hay.kind, hay.state, hay.moved_from) == ("Stall", Kind.HAY, State.OPEN, found.turn)
    assert [step for step in plan(evening(book)) if step.place == "Stall"][-1] == hay
    assert [step.name for step in carried(evening(book)) if step.place == "Orchard"] == [SWEEP]
    assert len({step.step_id for step in plan(evening(book))}) == len(plan(evening(book)))


def test_hay_that_was_moved_on_is_given_with_its_weights(book: Book) -> None:
    """As much as was due in the morning, told in the same measure; it counts as fed."""
    due = feed_of(morning(book), "Stall")
    move(book, morning(book), due)
    book.clock = HandClock(MORNING + timedelta(hours=12))
    (step,) = carried(evening(book))
    assert isinstance(step, FeedStep)
    assert [(each.feed, each.told, each.due_kg) for each in step.due] == [
        (each.feed, each.told, each.due_kg) for each in due.due
    ]
    book.append(fed(hand_at(book, evening(book)), step, {}))
    entry = the_step(evening(book), step).entry
    assert entry
    assert [each.given_kg for each in entry.of(FedFigure)] == [each.as_shown_kg for each in due.due]


def test_what_has_no_pen_is_asked_for_first_of_all_at_the_bench(book: Book) -> None:
    """A job of the bench; also where the pen is out of use."""
    move(book, morning(book), task_of(morning(book), SHUT))
    first = plan(evening(book))[0]
    assert (first.name, first.place, bool(first.moved_from)) == (SHUT, "Bench", True)
    move(book, morning(book), task_of(morning(book), SWEEP))
    unused = replace(evening(book), pens=())
    assert {step.place for step in carried(unused)} == {"Bench"}


def test_it_is_asked_for_once_though_two_pens_have_one_name(book: Book) -> None:
    """Nobody forbids it."""
    move(book, morning(book), feed_of(morning(book), "Stall"))
    later = evening(book)
    twins = replace(later, pens=tuple(replace(pen, name="Stall") for pen in later.pens))
    assert len(carried(twins)) == 1


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
    move(book, morning(book), task_of(morning(book), SWEEP))
    found = morning(book)
    book.append(done(hand_at(book, found), task_of(found, SWEEP)))
    assert carried(evening(book)) == []


def test_it_is_not_asked_for_behind_a_round_that_was_walked(book: Book) -> None:
    """Unless that one moves it on again."""
    move(book, morning(book), task_of(morning(book), SWEEP))
    book.clock = HandClock(MORNING + timedelta(hours=12))
    found = evening(book)
    book.append(milked(hand_at(book, found), milk_of(found, "Hazel"), "9.4", Fate.HOUSE))
    assert carried(evening(book, TOMORROW)) == []
    move(book, evening(book), carried(evening(book))[0])
    (step,) = carried(evening(book, TOMORROW))
    assert (step.name, step.state, step.place, step.moved_from) == (SWEEP, State.OPEN, "Orchard", LATER)


def test_a_round_that_nobody_opened_loses_nothing(book: Book) -> None:
    """What Wednesday evening moved on is asked for on Friday morning, when Thursday went by without the book."""
    found = read_snapshot(book.desk, Turn(date(2026, 3, 11), EVENING), MORNING + timedelta(hours=12))
    late = task_of(found, SHUT)
    book.clock = HandClock(MORNING + timedelta(hours=12))
    book.append(moved_on(replace(hand_at(book, found), turn=found.turn), late))
    friday = read_snapshot(book.desk, Turn(date(2026, 3, 13), "morning"), MORNING + timedelta(days=2))
    (step,) = carried(friday)
    assert (step.name, step.subject, step.moved_from) == (SHUT, late.subject, LATER)


def test_what_the_round_asks_for_anyway_is_not_asked_for_twice(book: Book) -> None:
    """Moved on in the morning, the evening never opened: the next morning has the same job of its own."""
    for step in (task_of(morning(book), SWEEP), feed_of(morning(book), "Stall")):
        move(book, morning(book), step)
    tomorrow = evening(book, TOMORROW)
    assert tomorrow.last.turn == morning(book).turn
    assert carried(tomorrow) == []
    assert [step.name for step in plan(tomorrow)].count(SWEEP) == 1
    assert len(carried(evening(book))) == 2


def test_the_round_between_may_be_typed_in_from_paper_afterwards(book: Book) -> None:
    """It asks for what was moved on to it, and what is done there is done."""
    for name in (SWEEP, SHUT):
        move(book, morning(book), task_of(morning(book), name))
    book.clock = HandClock(MORNING + timedelta(days=1))
    between = evening(book)
    shut = next(step for step in carried(between) if step.name == SHUT)
    book.append(done(replace(hand_at(book, between), turn=LATER), shut))
    assert the_step(evening(book), shut).state is State.DONE
    assert evening(book, TOMORROW).last.turn == LATER
    assert carried(evening(book, TOMORROW)) == []


def test_what_was_done_here_counts_though_the_round_before_takes_it_back(book: Book) -> None:
    """It is no longer asked for, and it was done."""
    move(book, morning(book), task_of(morning(book), SWEEP))
    book.clock = HandClock(MORNING + timedelta(hours=12))
    (step,) = carried(evening(book))
    book.append(done(hand_at(book, evening(book)), step))
    found = read_snapshot(book.desk, Turn(date(2026, 3, 11), "morning"), MORNING)
    book.append(undone(replace(hand_at(book, found), turn=found.turn), found.entries[-1]))
    (past,) = steps_of(evening(book), PastStep)
    assert (past.step_id, past.state) == (step.step_id, State.DONE)


def test_what_an_older_book_moved_on_is_a_job_by_its_name(book: Book) -> None:
    """A soak or a pail that was moved on is not lost, though none can be moved any more."""
    found = morning(book)
    for step in (soak_start_of(found, "lucerne pellets"), milk_of(found, "Hazel")):
        move(book, found, step)
    left = [step for step in carried(evening(book)) if isinstance(step, TaskStep)]
    assert [(step.name, step.kind, step.place) for step in left] == [
        ("lucerne pellets", Kind.SOAK, "Bench"),
        ("Hazel", Kind.MILK, "Stall"),
    ]
    assert [step.place for step in carried(moved(evening(book), "Hazel", None))] == ["Bench", "Bench"]


def test_what_was_moved_on_from_an_animal_that_is_gone_is_still_asked_for() -> None:
    """She is gone, the job is not."""
    after = wrote(dawn(), moved_on(hand(dawn()), feed_of(dawn(), "Hazel")))
    carried_over = replace(dawn(), turn=LATER, animals=(), last=LastRound(dawn().turn, after.entries))
    assert [(step.name, type(step)) for step in carried(carried_over)] == [("Hazel", TaskStep)]
    nameless = replace(carried_over, names={})
    assert carried(nameless)[0].name == "gone since"
