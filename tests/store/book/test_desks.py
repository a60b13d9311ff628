"""A book on a file and a book on a server are one book: they read the same."""

from datetime import date, datetime, timedelta

import pytest

from store.book.desk import Desk, FileDesk, ServerDesk
from store.book.figures import FIGURES, CooledFigure, DrawnFigure, PouredFigure
from store.book.form import HEAD
from store.book.opening import Book, form_of
from store.book.reading import read_facts, read_snapshot
from store.book.turn import Turn, from_wall
from store.book.words import Kind
from store.round.plan import plan
from tests.farm import MORNING, HandClock, morning
from tests.store.book.tools import all_rows

ROUNDS = (
    (Turn(date(2026, 3, 11), "morning"), MORNING),
    (Turn(date(2026, 3, 11), "evening"), MORNING + timedelta(hours=12)),
    (Turn(date(2026, 3, 9), "evening"), from_wall(datetime(2026, 3, 9, 17, 45), "Europe/Dublin")),  # noqa: DTZ001
    (Turn(date(2026, 3, 5), "morning"), from_wall(datetime(2026, 3, 5, 6, 30), "Europe/Dublin")),  # noqa: DTZ001
    (Turn(date(2026, 3, 5), "evening"), from_wall(datetime(2026, 3, 5, 17, 45), "Europe/Dublin")),  # noqa: DTZ001
    (Turn(date(2026, 1, 5), "morning"), from_wall(datetime(2026, 1, 5, 6, 30), "Europe/Dublin")),  # noqa: DTZ001
)
"""The pretend morning, its evening, two walked rounds, one behind a note, and one before anything was planned."""


@pytest.mark.parametrize(("turn", "now"), ROUNDS)
def test_a_file_and_a_server_give_the_same_snapshot_and_plan(
    file_desk: FileDesk, server_desk: ServerDesk, turn: Turn, now: datetime
) -> None:
    """Every value of it, and so every step."""
    filed, served = read_snapshot(file_desk, turn, now), read_snapshot(server_desk, turn, now)
    assert filed == served
    assert plan(filed) == plan(served)
    assert read_facts(file_desk, now) == read_facts(server_desk, now)


def test_a_walked_round_has_entries_to_be_equal_in(file_desk: FileDesk) -> None:
    """The comparison above compares something: figures of every kind that the week has, what was given before."""
    walked = read_snapshot(file_desk, *ROUNDS[2])
    cooled = sum(step.kind is Kind.COOL for step in plan(walked))  # that week put no milk into ice
    assert len(walked.entries) == len(plan(walked)) - cooled > 8
    read = (read_snapshot(file_desk, *each) for each in ROUNDS)
    kinds = {type(figure) for found in read for entry in found.entries for figure in entry.figures}
    assert kinds >= set(FIGURES) - {CooledFigure, DrawnFigure, PouredFigure}
    assert walked.given_before
    assert walked.portions
    assert walked.milkings


def test_both_desks_hold_the_same_rows_of_the_same_folder(file_desk: FileDesk, server_desk: ServerDesk) -> None:
    """Ids, moments, days, yes and no: all of them."""
    assert all_rows(file_desk) == all_rows(server_desk)


def test_a_book_says_which_form_it_has(still_desk: Desk) -> None:
    """Today's."""
    assert form_of(still_desk) == HEAD


def test_a_snapshot_read_twice_is_the_same(still_desk: Desk, clock: HandClock) -> None:
    """Reading changes nothing and leaves nothing to chance."""
    book = Book(still_desk, clock)
    before = all_rows(still_desk)
    assert morning(book) == morning(book)
    assert all_rows(still_desk) == before
