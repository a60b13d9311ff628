"""What is picked or marked and not written counts as half typed: it is said first, and it stays."""

import pytest

from store.book.figures import MilkedFigure, NotedFigure, QuarterFigure
from store.book.words import Quarter, Sign
from tests.tui.keys import Sitting
from tui.walk.dropped import Dropped
from tui.walk.lamp import Lamp
from tui.walk.quarters import QuarterPage
from tui.yard.vet import Vet

HELD = ("m", "2", "enter")
LEAVES = ("right", "left", "s", "l", "a", "e", "g", "u", "r", "f", "c", "i", "q")


def marks(sitting: Sitting) -> frozenset[str]:
    """What is marked at the step."""
    assert isinstance(sitting.place, Lamp)
    return sitting.place.marks


@pytest.mark.parametrize("key", LEAVES)
def test_a_mark_of_a_milking_is_not_lost_by_leaving_it(sitting: Sitting, key: str) -> None:
    sitting.to_step("Fennel", "milk").press(*HELD, key)
    assert "is not written. Enter writes it, Esc takes it away." in sitting.said
    assert marks(sitting)
    sitting.press("7.2", "enter")
    milked = sitting.newest().the(MilkedFigure)
    assert milked is not None
    assert milked.held_back


@pytest.mark.parametrize("key", ["m", "w", "t", "n", "p", "v", "h", "y"])
def test_what_comes_back_to_the_step_opens_beside_a_mark(sitting: Sitting, key: str) -> None:
    sitting.to_step("Fennel", "milk").press(*HELD, key)
    assert not isinstance(sitting.place, Lamp)
    assert marks(sitting.press("escape"))


def test_esc_takes_marks_and_picks_away(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press(*HELD, "down", "escape")
    assert not marks(sitting)
    assert isinstance(sitting.press("right").place, Lamp)
    assert not sitting.said


def test_a_finding_that_is_picked_is_not_lost_either(sitting: Sitting) -> None:
    sitting.to_step("Tansy", "udder").press("3", "right")
    assert "picked or marked" in sitting.said
    sitting.press("m", "1", "enter", "1", "1", "enter")
    assert sitting.newest().figures == (QuarterFigure(Quarter.LEFT_FRONT, Sign.CLOTS),)
    assert isinstance(sitting.place, Lamp)
    assert sitting.place.row == 2


def test_a_figure_of_another_line_is_not_lost_by_a_letter(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "feed").press("2", "down", "g")
    assert isinstance(sitting.place, Lamp)
    assert "«2» is typed and not written" in sitting.said


def test_signs_of_a_quarter_are_said_before_they_are_left(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("m", "3", "enter", "3", "2", "3", "escape", "escape")
    assert isinstance(sitting.place, QuarterPage)
    assert "«left hind: hard, hot» is picked and not written" in sitting.said
    assert "is picked and not written" in sitting.press("q").said
    assert "is picked and not written" in sitting.press("escape").said
    assert isinstance(sitting.press("escape").place, Lamp)
    assert sitting.written() == 0


def test_picked_reasons_of_a_drop_are_said_before_they_are_left(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("5.6", "enter", "1", "3", "escape")
    assert isinstance(sitting.place, Dropped)
    assert "«water, hot weather» is picked and not written" in sitting.said
    sitting.press("enter")
    assert sitting.newest().the(NotedFigure) == NotedFigure("milk 25 % under usual: water, hot weather")


def test_picked_signs_for_the_vet_are_said_before_they_are_left(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("v", "1", "escape")
    assert isinstance(sitting.place, Vet)
    assert "is picked and not written" in sitting.said
    assert isinstance(sitting.press("escape").place, Lamp)
