"""Midday and night rounds: jobs and looks of their own slot, between two feeding rounds, which stay what they were."""

from datetime import UTC, date, datetime, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.care import Look
from store.book.facts.jobs import Job
from store.book.figures import NotedFigure
from store.book.opening import Book
from store.book.reading import read_snapshot, was_written
from store.book.records.care import Look as LookRow
from store.book.records.care import LookAs
from store.book.snapshot import Snapshot, notes_of
from store.book.turn import Turn
from store.book.words import EVENING, MIDDAY, MORNING, NIGHT, SLOTS, Asks, Kind, Looks, State
from store.round.care import looked
from store.round.confirm import Hand, ended, moved_on, noted
from store.round.plan import plan
from store.round.steps import LookStep, SoakStartStep, TaskStep
from tests.farm import HandClock
from tests.farm import hand as hand_at
from tests.store.book.seeing import put
from tests.store.keys import pressed
from tests.store.round.made import animal_named, dawn, some_id
from tests.store.round.named import step_of, steps_of

DAY = date(2026, 3, 11)
ROUND = {slot: Turn(DAY, slot) for slot in SLOTS}
NEXT = Turn(date(2026, 3, 12), MORNING)
HOUR = {MORNING: 7, MIDDAY: 13, EVENING: 18, NIGHT: 22}
TANSY = animal_named(dawn(), "Tansy")


def seen(book: Book, turn: Turn) -> Snapshot:
    """A round at its usual hour."""
    book.clock = HandClock(datetime(turn.day.year, turn.day.month, turn.day.day, HOUR[turn.slot], tzinfo=UTC))
    return read_snapshot(book.desk, turn, book.clock.now())


@pytest.fixture
def near(book: Book) -> Book:
    """A cow close to calving: one look in each of the four slots."""
    for slot in SLOTS:
        put(book.desk, LookRow, id=some_id(slot))
        put(
            book.desk,
            LookAs,
            look_id=some_id(slot),
            animal_id=TANSY.id,
            name=f"udder, {slot}",
            asks=Asks.HOW,
            slot=slot,
        )
    return book


def look_at(book: Book, turn: Turn, looks: Looks) -> None:
    """What the look of a round found."""
    snapshot = seen(book, turn)
    (step,) = steps_of(snapshot, LookStep)
    book.append(looked(hand_at(book, snapshot), step, looks))


@pytest.mark.parametrize(
    ("slot", "before", "after"),
    [
        (MORNING, Turn(date(2026, 3, 10), EVENING), ROUND[EVENING]),
        (MIDDAY, ROUND[MORNING], ROUND[EVENING]),
        (EVENING, ROUND[MORNING], NEXT),
        (NIGHT, ROUND[EVENING], NEXT),
    ],
)
def test_before_and_after_a_round_lie_the_feeding_rounds(slot: str, before: Turn, after: Turn) -> None:
    """Whatever lies between them."""
    assert (ROUND[slot].before(), ROUND[slot].after()) == (before, after)
    assert ROUND[slot].feeds is (slot in (MORNING, EVENING))


def test_rounds_of_a_day_come_in_their_order() -> None:
    """Morning, midday, evening, night, and the next morning."""
    in_order = [*ROUND.values(), NEXT]
    assert [a.is_before(b) for a in in_order for b in in_order] == [a < b for a in range(5) for b in range(5)]
    assert [ROUND[slot].between().slot for slot in (MORNING, EVENING)] == [MIDDAY, NIGHT]


@pytest.mark.parametrize(
    ("slot", "begins", "ends"), [(MIDDAY, "11 12:00", "11 16:00"), (NIGHT, "11 22:00", "12 05:00")]
)
def test_they_have_hours_of_their_own(slot: str, begins: str, ends: str) -> None:
    """In March the farm's wall clock shows UTC. A midday round is not over before the evening round begins."""
    turn = ROUND[slot]
    assert f"{turn.begins('Europe/Dublin'):%d %H:%M}" == begins
    assert f"{turn.ends('Europe/Dublin', 12):%d %H:%M}" == ends
    assert turn.facts_at("Europe/Dublin", 12) < turn.ends("Europe/Dublin", 12)
    assert ROUND[MIDDAY].ends("Europe/Dublin", 17).hour == 17


@pytest.mark.parametrize("slot", [MIDDAY, NIGHT])
def test_they_ask_for_the_jobs_and_looks_of_their_slot_only(slot: str) -> None:
    """No head is counted, nothing is fed, milked, put to soak, felt or shut away."""
    jobs = tuple(Job(some_id(each), f"Job of the {each}", None, False, each) for each in SLOTS)
    looks = tuple(Look(some_id(each), TANSY.id, each, Asks.HOW, each, 1, None) for each in SLOTS)
    steps = plan(replace(dawn(), turn=ROUND[slot], jobs=jobs, looks=looks))
    assert [(type(step), step.name) for step in steps] == [(TaskStep, f"Job of the {slot}"), (LookStep, "Tansy")]
    assert steps[1].step_id != plan(replace(dawn(), looks=looks))[0].step_id


def test_four_looks_a_day_are_four_steps_of_four_rounds(near: Book) -> None:
    """The one at ten is written in the night round."""
    for slot in SLOTS:
        look_at(near, ROUND[slot], Looks.RIGHT)
    for slot in SLOTS:
        found = seen(near, ROUND[slot])
        assert [(step.look.name, step.state) for step in steps_of(found, LookStep)] == [(f"udder, {slot}", State.DONE)]
    assert [was_written(near.desk, ROUND[slot]) for slot in SLOTS] == [True] * 4
    assert not was_written(near.desk, NEXT)


def test_a_night_round_is_no_feeding_round(near: Book) -> None:
    """The next morning the evening is still the last round: for what soaks, for what was fed last, for what it left."""
    evening = seen(near, ROUND[EVENING])
    for step in plan(evening):
        if not isinstance(step, LookStep):
            near.append(pressed(hand_at(near, evening), step))
    without = seen(near, NEXT)
    look_at(near, ROUND[NIGHT], Looks.RIGHT)
    snapshot = seen(near, ROUND[NIGHT])
    near.append(
        ended(hand_at(near, snapshot), ROUND[NIGHT].step_id(snapshot.farm.id, Kind.ROUND, snapshot.farm.id), None)
    )
    morning = seen(near, NEXT)
    assert (morning.last.turn, morning.last.entries) == (ROUND[EVENING], without.last.entries)
    assert [each.turn for each in morning.last.between] == [ROUND[NIGHT]]
    alike = replace(morning, last=without.last)
    assert plan(alike) == plan(morning) == plan(without)
    assert (morning.batches, morning.given_before, morning.milkings) == (
        without.batches, without.given_before, without.milkings,
    )  # fmt: skip


def test_the_soak_of_the_evening_is_begun_in_the_morning_and_not_at_midday(near: Book) -> None:
    """A midday round puts nothing to soak."""
    assert steps_of(seen(near, ROUND[MIDDAY]), SoakStartStep) == []
    assert steps_of(seen(near, ROUND[MORNING]), SoakStartStep)[0].for_slot == EVENING


def test_what_was_found_and_told_at_midday_reaches_the_evening(near: Book) -> None:
    """Behind what the morning left."""
    snapshot = seen(near, ROUND[MORNING])
    near.append(noted(hand_at(near, snapshot), steps_of(snapshot, LookStep)[0].subject, "Restless", tell=True))
    look_at(near, ROUND[MIDDAY], Looks.WORSE)
    snapshot = seen(near, ROUND[MIDDAY])
    near.append(noted(hand_at(near, snapshot), steps_of(snapshot, LookStep)[0].subject, "Bag tight", tell=True))
    last = seen(near, ROUND[EVENING]).last
    assert [each.turn for each in last.with_between] == [ROUND[MORNING], ROUND[MIDDAY]]
    told = [note.the(NotedFigure) for note in notes_of(last.all_entries)]
    assert [note.words for note in told if note] == ["Restless", "Bag tight"]
    assert seen(near, ROUND[MIDDAY]).last.between == ()


def test_rounds_that_nobody_opened_hide_no_midday_round(near: Book) -> None:
    """Those since the last feeding round are all read, oldest first."""
    look_at(near, ROUND[MIDDAY], Looks.RIGHT)
    look_at(near, ROUND[NIGHT], Looks.RIGHT)
    last = seen(near, Turn(date(2026, 3, 13), MORNING)).last
    assert last.turn == Turn(date(2026, 3, 10), EVENING)
    assert [each.turn for each in last.between] == [ROUND[MIDDAY], ROUND[NIGHT]]


def test_what_midday_moves_on_stands_in_the_evening(near: Book) -> None:
    """And a midday round does not ask for what the morning moved on: that waits for the evening, too."""
    for slot in (MORNING, MIDDAY):
        snapshot = seen(near, ROUND[slot])
        near.append(moved_on(hand_at(near, snapshot), steps_of(snapshot, LookStep)[0]))
    evening = steps_of(seen(near, ROUND[EVENING]), LookStep)
    assert [step.moved_from for step in evening] == [None, ROUND[MORNING], ROUND[MIDDAY]]


def test_a_past_night_round_is_read_as_it_was(near: Book) -> None:
    """Also what was typed into it after midnight."""
    snapshot = seen(near, ROUND[NIGHT])
    step = step_of(snapshot, LookStep, "Tansy")
    at = datetime(2026, 3, 12, 2, 10, tzinfo=UTC)
    near.clock = HandClock(at)
    near.append(looked(Hand(ROUND[NIGHT], snapshot.people[0].id, at, snapshot.farm.units), step, Looks.BETTER))
    found = read_snapshot(near.desk, ROUND[NIGHT], ROUND[NIGHT].facts_at("Europe/Dublin", 12))
    assert [each.state for each in plan(found)] == [State.DONE]
    assert found.entries[0].happened_at - at < timedelta(seconds=1)
