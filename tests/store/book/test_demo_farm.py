"""The farm of the demo: its folder has no mistake, and its pretend morning shows every kind of step."""

from collections.abc import Iterator
from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest

from store.book.desk import FileDesk
from store.book.folder.put_out import put_out
from store.book.folder.take_in import new_book_from, take_in
from store.book.opening import Book
from store.book.reading import last_written, read_snapshot
from store.book.snapshot import Snapshot
from store.book.turn import turn_at
from store.book.words import Kind, State
from store.round.plan import plan
from store.round.steps import (
    ApartStep,
    CoolStep,
    CountStep,
    DoseStep,
    FeedStep,
    LookStep,
    MilkStep,
    PastStep,
    QuarterStep,
    SoakCheckStep,
    SoakStartStep,
    TaskStep,
    UdderStep,
)
from store.round.summary import summarise
from tests.demo import DEMO_FOLDER, demo_book
from tests.farm import morning
from tests.store.book.tools import all_rows

EVERY_STEP = {
    ApartStep, CoolStep, CountStep, DoseStep, FeedStep, LookStep, MilkStep, QuarterStep, SoakCheckStep, SoakStartStep,
    TaskStep, UdderStep,
}  # fmt: skip

OUTSIDE_OF_ROUNDS = {Kind.DELIVERY, Kind.STOCK, Kind.LOSS, Kind.WEATHER, Kind.BIRTH, Kind.WATCH, Kind.JAR}
"""Kinds of entry that have neither a day nor a slot, and name their own step."""


@pytest.fixture(scope="module", name="demo_book")
def opened(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Book]:
    """For all tests of this module."""
    with demo_book(tmp_path_factory.mktemp("demo")) as book:
        yield book


@pytest.fixture(scope="module")
def pretend(demo_book: Book) -> Snapshot:
    """Its pretend morning."""
    return morning(demo_book)


def test_its_folder_has_no_mistake(demo_book: Book) -> None:
    """Taken in once more it adds nothing."""
    assert take_in(DEMO_FOLDER, demo_book.desk).rows == 0
    assert last_written(demo_book.desk)


def test_its_pretend_morning_has_a_plan_with_every_kind_of_step(pretend: Snapshot) -> None:
    """All of it still open."""
    steps = plan(pretend)
    assert {type(step) for step in steps} - {PastStep} == EVERY_STEP
    assert {step.kind for step in steps} == set(Kind) - {Kind.NOTE, Kind.ROUND} - OUTSIDE_OF_ROUNDS
    assert {step.state for step in steps} == {State.OPEN}
    assert len({step.step_id for step in steps}) == len(steps)


def test_its_past_ends_the_evening_before(demo_book: Book, pretend: Snapshot) -> None:
    """Nothing in it was written after its morning begins, and its last round is the one before."""
    last = last_written(demo_book.desk)
    assert last is not None
    assert last < demo_book.clock.now()
    assert turn_at(last, pretend.farm.zone, pretend.farm.evening_from_h) == pretend.turn.before()


def test_every_round_of_its_last_week_was_recorded(demo_book: Book, pretend: Snapshot) -> None:
    """Each entry of them belongs to a step that was planned then."""
    turn = pretend.turn
    for _ in range(14):
        turn = turn.before()
        found = read_snapshot(demo_book.desk, turn, turn.facts_at(pretend.farm.zone, pretend.farm.evening_from_h))
        steps = plan(found)
        closing_list = summarise(found, steps)
        assert [step for step in steps if isinstance(step, PastStep) and step.place == "Dropped"] == []
        assert closing_list.done
        assert len(closing_list.not_recorded) < len(steps) / 4


def test_its_calves_milk_and_soak_have_a_past_that_makes_sense(pretend: Snapshot) -> None:
    """Whoever shares was parted, whoever is milked was milked, what is soaked stands in its bucket."""
    steps = plan(pretend)
    assert all(step.calf.last for step in steps if isinstance(step, ApartStep))
    assert any(step.emptied_at for step in steps if isinstance(step, MilkStep))
    assert any(len(step.rates_kg_h) >= 3 for step in steps if isinstance(step, MilkStep))
    now = max(share.partings[0].at for share in pretend.shares if share.partings) + timedelta(days=1)
    assert all(step.batch and step.batch.started_at < now for step in steps if isinstance(step, SoakCheckStep))


def test_it_comes_out_of_the_book_and_back_the_same(demo_book: Book, tmp_path: Path) -> None:
    """Row for row."""
    put_out(demo_book.desk, tmp_path / "out")
    new_book_from(tmp_path / "out", tmp_path / "again.penwalk")
    with closing(FileDesk(tmp_path / "again.penwalk")) as again:
        assert all_rows(again) == all_rows(demo_book.desk)
