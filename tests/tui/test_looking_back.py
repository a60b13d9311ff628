"""Y: her last milkings as a table with a strip, read without colour at any size."""

from datetime import timedelta

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.facts.milk import PastPail
from store.round.looking_back import LookBack
from store.round.timed import TimedPail
from tests.farm import MORNING
from tests.tui.keys import Sitting
from tui.yard.looking_back import strip

HOURS_12 = timedelta(hours=12)
EVENING_BEFORE, A_DAY_BEFORE = MORNING - HOURS_12, MORNING - 2 * HOURS_12


def back_at(sitting: Sitting, name: str, kind: str) -> Sitting:
    """Y, at a step."""
    return sitting.to_step(name, kind).press("y")


@pytest.mark.parametrize("name", ["Fennel", "Hazel"])
def test_a_cow_s_milkings_are_a_table_with_a_strip(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    """At 80 x 24."""
    assert back_at(sitting, name, "milk").text() == screen


def test_a_wide_window_has_a_wide_strip(sitting: Sitting, screen: SnapshotAssertion) -> None:
    """At 120 x 36."""
    assert back_at(sitting, "Hazel", "milk").text(120, 36) == screen


def test_this_round_s_pail_is_the_first_row(sitting: Sitting) -> None:
    """As soon as it is written, with its marks."""
    sitting.to_step("Fennel", "milk").press("m", "2", "enter", "5.6", "enter")
    text = back_at(sitting, "Fennel", "milk").text()
    row = next(each for each in text.splitlines() if "11 Mar" in each and "kg" not in each and "DEMO" not in each)
    assert "4.2  12 h 29   0.336  house" in row or "4.2  12 h 29   0.337  house" in row
    assert "held back" in row
    assert "o" in row[61:] or "<" in row[61:]


def test_a_milking_left_out_says_why_and_has_no_figure(sitting: Sitting) -> None:
    """Never a zero."""
    sitting.to_step("Fennel", "milk").press("m", "4", "enter")
    assert "Wed 11 Mar a.m.   not milked: the calf had it" in back_at(sitting, "Fennel", "milk").text()


def test_at_her_calf_s_step_it_is_about_the_cow(sitting: Sitting) -> None:
    """Rook shares Fennel's milk."""
    assert "FENNEL" in back_at(sitting, "Rook", "apart").text()


def test_an_animal_without_milkings_says_so(sitting: Sitting) -> None:
    """A heifer."""
    assert "SLOE  no milking to look back at." in back_at(sitting, "Sloe", "feed").text()


def test_where_no_animal_stands_it_says_where_to_go(sitting: Sitting) -> None:
    """At a pen's step."""
    back_at(sitting, "Stall", "count")
    assert sitting.said == "Y looks back at a cow: G goes to one of her steps."


@pytest.mark.parametrize("key", ["enter", "y", "escape", "left"])
def test_back_is_where_one_stood_and_nothing_is_written(sitting: Sitting, key: str) -> None:
    """At the same step."""
    back_at(sitting, "Fennel", "milk").press(key)
    assert "GOES TO" in sitting.text()
    assert sitting.written() == 0


@pytest.mark.parametrize(
    ("kg", "cells"),
    [(6.0, "   ---#----"), (5.4, "   -#-|----"), (6.6, "   ---|-#--"), (3.0, "<  ---|----"), (12.0, "   ---|---- >")],
)
def test_the_strip_says_where_a_pail_lies(kg: float, cells: str) -> None:
    """13 cells of 5 %: her usual from 83 to 120 %, 100 in the middle; beyond the ends a sign says so."""
    pails = tuple(
        TimedPail(PastPail(A_DAY_BEFORE, each, held_back=False), A_DAY_BEFORE - HOURS_12, "")
        for each in (5.7, 6.0, 6.3)
    )
    pail = TimedPail(PastPail(MORNING, kg, held_back=False), EVENING_BEFORE, "")
    assert strip(LookBack(pails), pail, 13) == cells
    assert strip(LookBack(pails[:2]), pail, 13) == ""


def test_a_pail_that_does_not_compare_is_an_o() -> None:
    """Of no colour."""
    pails = tuple(
        TimedPail(PastPail(A_DAY_BEFORE, 6.0, held_back=False), A_DAY_BEFORE - HOURS_12, "") for _ in range(3)
    )
    held = TimedPail(PastPail(MORNING, 5.4, held_back=True), EVENING_BEFORE, "held back")
    assert strip(LookBack(pails), held, 13) == "   -o-|---"
