"""A calf and its cow, by keys: left with her for a night, out through a broken latch, shut away by a rule."""

import re
from datetime import timedelta

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.facts.calves import Parting
from store.book.figures import MilkedFigure, PartedFigure
from store.book.opening import Book
from store.book.reading import read_facts
from store.book.records.farm import Setting
from store.book.records.yard import ApartRule, SecondCow
from store.book.words import Apart, Kind, Quarter, SettingName, Sign, State
from store.round.care import quarters_found
from store.round.steps import QuarterStep
from tests.farm import MORNING, HandClock
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn
from tests.store.round.named import milk_of, steps_of
from tests.tui.keys import Sitting
from tests.tui.test_found import in_the_evening, wide
from tui.rooms import House
from tui.walker import Walker

LEFT = ("m", "2", "enter", "3", "enter")
"""M, left with her tonight, a storm."""


def next_morning(sitting: Sitting, clock: HandClock) -> Sitting:
    """The evening is ended, and the morning behind it begun."""
    sitting.place = sitting.house.closing()
    sitting.press("e", "enter")
    clock.at = MORNING + timedelta(days=1)
    return sitting.begin()


def last_of(sitting: Sitting) -> Parting:
    """What the book says of the calf last."""
    (share,) = sitting.walker.snapshot.shares
    return share.partings[0]


@pytest.fixture
def ruled(book: Book) -> Sitting:
    """The pretend morning with a rule for Rook, and the usual times of both rounds."""
    put(book.desk, ApartRule, calf_id=animal_named(dawn(), "Rook").id, apart_h=12, from_day=21, nights="1111110")
    put(book.desk, Setting, name=SettingName.MORNING_AT, value="06:30")
    put(book.desk, Setting, name=SettingName.EVENING_AT, value="18:00")
    return Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))


def test_left_with_her_for_a_night_says_once_what_follows_and_then_writes_it(
    sitting: Sitting, clock: HandClock, screen: SnapshotAssertion
) -> None:
    in_the_evening(sitting, clock).to_step("Rook", "apart").press(*LEFT)
    assert sitting.written() == 0
    assert sitting.text() == screen
    sitting.press("enter")
    entry = sitting.newest()
    assert (entry.state, entry.reason) == (State.DONE, "storm")
    assert entry.the(PartedFigure) == PartedFigure(animal_named(dawn(), "Fennel").id, Apart.TOGETHER)
    assert (last_of(sitting).state, last_of(sitting).why) == (Apart.TOGETHER, "storm")


def test_a_reason_of_ones_own_is_typed(sitting: Sitting, clock: HandClock) -> None:
    in_the_evening(sitting, clock).to_step("Rook", "apart").press("m", "2", "enter", "5", "enter", "enter")
    assert "Nothing is typed" in sitting.said
    sitting.press("the gate is frozen", "enter", "backspace")
    assert "the gate is frozen_" in sitting.text()
    sitting.press("enter", "enter")
    assert sitting.newest().reason == "the gate is frozen"


def test_the_morning_behind_it_feels_her_and_enter_at_her_milk_writes_that_the_calf_had_it(
    sitting: Sitting, clock: HandClock
) -> None:
    in_the_evening(sitting, clock).to_step("Rook", "apart").press(*LEFT, "enter")
    next_morning(sitting, clock)
    assert "TOGETHER  Rook is with Fennel: storm" in wide(sitting)
    kinds = [step.kind for step in sitting.walker.steps if step.name == "Fennel"]
    assert kinds.index(Kind.UDDER) < kinds.index(Kind.MILK)
    assert Kind.APART not in {step.kind for step in sitting.walker.steps}
    sitting.to_step("Fennel", "milk")
    assert "STAYED  storm. No pail: Enter writes: the calf had it" in wide(sitting)
    sitting.press("enter")
    assert sitting.newest().the(MilkedFigure) == MilkedFigure(None, typed="the calf had it")
    assert sitting.newest().state is State.DONE


def test_a_marked_quarter_is_still_asked_about_where_no_milking_is_expected(sitting: Sitting, clock: HandClock) -> None:
    sitting.place = sitting.house.closing()
    found = quarters_found(sitting.walker.hand(), animal_named(dawn(), "Fennel").id, {Quarter.LEFT_HIND: [Sign.CLOTS]})
    assert sitting.walker.write(found) is None
    in_the_evening(sitting, clock).to_step("Rook", "apart").press(*LEFT)
    assert "QUARTERS LEFT HIND was clots Wed morning: still looked at." in wide(sitting)
    sitting.press("enter")
    next_morning(sitting, clock)
    assert [step.name for step in steps_of(sitting.walker.snapshot, QuarterStep)] == ["Fennel"]


def test_a_pail_can_be_typed_all_the_same(sitting: Sitting, clock: HandClock) -> None:
    in_the_evening(sitting, clock).to_step("Rook", "apart").press(*LEFT, "enter")
    next_morning(sitting, clock).to_step("Fennel", "milk").press("3.4")
    assert "No pail" not in wide(sitting)
    sitting.press("enter")
    milked = sitting.newest().the(MilkedFigure)
    assert milked is not None
    assert milked.milk_kg == pytest.approx(2.0)
    assert "No pail" not in wide(sitting.to_step("Fennel", "milk"))


def test_what_was_left_together_is_shut_away_after_all_from_that_moment_on(sitting: Sitting, clock: HandClock) -> None:
    in_the_evening(sitting, clock).to_step("Rook", "apart").press(*LEFT, "enter")
    clock.move(hours=1)
    sitting.to_step("Rook", "apart").press("m", "2", "enter")
    assert last_of(sitting).state is Apart.SHUT_AWAY
    assert last_of(sitting).at > MORNING + timedelta(hours=13)


def test_the_hour_of_its_rule_stands_large_on_the_calfs_card(
    ruled: Sitting, clock: HandClock, screen: SnapshotAssertion
) -> None:
    in_the_evening(ruled, clock).to_step("Rook", "apart")
    assert ruled.text() == screen


def test_a_night_that_the_rule_leaves_out_is_said_at_the_count(ruled: Sitting, clock: HandClock) -> None:
    """Sunday: neither the calf's step nor silence about it."""
    clock.at = MORNING + timedelta(days=4, hours=12)
    ruled.walker.open_turn(ruled.walker.this())
    assert Kind.APART not in {step.kind for step in ruled.walker.steps}
    words = "TONIGHT Rook stays with Fennel: your rule leaves it with her on Sunday nights"
    assert words in wide(ruled.to_step("Calf pen", "count"))


def test_a_calf_with_two_cows_can_be_let_in_to_the_other(book: Book) -> None:
    hazel = animal_named(dawn(), "Hazel").id
    put(book.desk, SecondCow, calf_id=animal_named(dawn(), "Rook").id, cow_id=hazel)
    sitting = Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))
    sitting.to_step("Rook", "apart").press("m", "2", "enter")
    assert sitting.newest().the(PartedFigure) == PartedFigure(hazel, Apart.LET_IN)
    assert "CALF    Rook: let in, since 06:31: not compared" in wide(sitting.to_step("Hazel", "milk"))
    assert "CALF    Rook: with its other cow" in wide(sitting.to_step("Fennel", "milk"))


def test_both_ends_of_a_broken_latch_are_typed_and_the_pail_behind_it_is_kept_and_not_compared(
    sitting: Sitting, clock: HandClock
) -> None:
    """Seen apart until 22:15, found at 06:20."""
    sitting.to_step("Fennel", "milk").press("t", "22:15-06:20", "enter", "m", "1", "enter")
    out = last_of(sitting)
    assert (out.state, out.since) == (Apart.GOT_OUT, MORNING.replace(hour=22, minute=15) - timedelta(days=1))
    assert out.at == MORNING.replace(minute=20)
    assert "Rook: got out, between 22:15 and 06:20: not compared" in wide(sitting.to_step("Fennel", "milk"))
    sitting.press("2.5", "enter")
    milked = sitting.newest().the(MilkedFigure)
    assert milked is not None
    assert milked.milk_kg == pytest.approx(1.1)
    before = len(milk_of(dawn(), "Fennel").rates_kg_h)
    clock.at = MORNING + timedelta(days=1)
    sitting.walker.open_turn(sitting.walker.this())
    assert len(milk_of(sitting.walker.snapshot, "Fennel").rates_kg_h) == before


def test_a_calf_that_had_got_out_before_it_was_seen_apart_last_did_so_at_that_time(sitting: Sitting) -> None:
    """Shut away at 18:02, says the book; at 17:00 it had been let in, and no beginning is made up."""
    sitting.to_step("Fennel", "milk").press("t", "17:00!", "enter", "m")
    assert "Rook had got out: found with Fennel" in sitting.text()
    sitting.press("1", "enter")
    entry = sitting.newest()
    assert (entry.happened_from, entry.happened_at) == (None, MORNING.replace(day=10, hour=17, minute=0))


def test_why_says_what_the_hour_is_made_of(ruled: Sitting, clock: HandClock) -> None:
    in_the_evening(ruled, clock).to_step("Rook", "apart").press("w")
    assert "shut Rook away  Wed 11 Mar 18:30" in re.sub(" {2,}", "  ", wide(ruled))
    ruled.press("enter")
    assert "the time - the hours" in wide(ruled)
    assert "when it usually begins" in wide(ruled)
