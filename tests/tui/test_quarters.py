"""A quarter on the screen: the four as one sees them from behind, what is picked, and who is milked last."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.figures import QuarterFigure
from store.book.records.yard import Withheld
from store.book.words import Kind, Quarter, Sign, State
from tests.farm import MORNING, HandClock
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn
from tests.tui.keys import Sitting
from tui.walk.lamp import Lamp
from tui.walk.quarters import QuarterPage

HARD_HOT = ("m", "2", "enter", "3", "2", "3", "enter")


@pytest.fixture
def asked(sitting: Sitting, clock: HandClock) -> Sitting:
    """Hazel's left hind was hard and hot in the morning; it is evening."""
    sitting.to_step("Hazel", "milk").press(*HARD_HOT)
    sitting.place = sitting.house.closing()
    sitting.press("e", "enter")
    clock.at = MORNING + timedelta(hours=12)
    return sitting.begin()


SCREENS: dict[str, Callable[[Sitting], Sitting]] = {
    "a marked quarter": lambda s: s.to_step("Hazel", "look"),
    "a marked quarter with signs": lambda s: s.to_step("Hazel", "look").press("1", "3", "8"),
    "which quarter": lambda s: s.to_step("Hazel", "milk").press("m", "2", "enter"),
    "two quarters marked": lambda s: s.to_step("Hazel", "milk").press("m", "2", "enter", "2", "5", "down", "1", "4"),
    "milked last": lambda s: s.to_step("Hazel", "milk"),
}


@pytest.mark.parametrize("name", SCREENS)
def test_the_screen_of_a_quarter_is_as_kept(asked: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert SCREENS[name](asked).text() == screen


def test_left_and_right_are_her_own_and_the_hind_ones_are_nearer(asked: Sitting) -> None:
    rows = asked.to_step("Hazel", "look").text().splitlines()
    front = next(at for at, row in enumerate(rows) if "left front" in row)
    hind = next(at for at, row in enumerate(rows) if "> 3 LEFT HIND" in row)
    assert front < hind
    assert rows[front].index("left front") < rows[front].index("right front")
    assert rows[hind].index("LEFT HIND") < rows[hind].index("right hind")
    assert any("seen from behind: left and right are her own" in row for row in rows)


def test_every_sign_and_how_full_it_is_stands_in_words(asked: Sitting) -> None:
    text = asked.to_step("Hazel", "look").press("1", "2", "9").text()
    assert "██░ full, clots, hard" in text
    assert "[x] 9 full" in asked.text()
    assert "[ ] 8 slack" in asked.text()
    assert "███ tight, clots, hard" in asked.press("4").text()


def test_nothing_picked_says_so_and_writes_nothing(asked: Sitting) -> None:
    before = asked.written()
    assert "How is it now?" in asked.to_step("Hazel", "look").press("enter").said
    assert "slack only says how full it is" in asked.press("8", "enter").said
    assert asked.written() == before


def test_several_signs_are_one_entry_and_enter_goes_on_to_her_milk(asked: Sitting) -> None:
    asked.to_step("Hazel", "look").press("1", "2", "enter")
    assert asked.newest().figures == tuple(QuarterFigure(Quarter.LEFT_HIND, sign) for sign in (Sign.CLOTS, Sign.HARD))
    assert isinstance(asked.place, Lamp)
    assert (asked.place.step.name, asked.place.step.kind) == ("Hazel", Kind.MILK)


def test_it_stands_in_the_closing_until_it_is_answered(asked: Sitting) -> None:
    asked.place = asked.house.closing()
    assert "Hazel (left hind, how is it now?)" in asked.text(120, 60)
    asked.to_step("Hazel", "look").press("7", "enter")
    asked.place = asked.house.closing()
    assert "how is it now?" not in asked.text(120, 60)


def test_an_answer_is_corrected_by_picking_again(asked: Sitting) -> None:
    asked.to_step("Hazel", "look").press("2", "enter").to_step("Hazel", "look").press("2", "7", "enter")
    assert asked.newest().figures == (QuarterFigure(Quarter.LEFT_HIND, Sign.CLEAR),)


def test_what_enter_writes_and_who_she_is_stand_above_what_falls_off_a_small_page(sitting: Sitting) -> None:
    cow_id = animal_named(dawn(), "Hazel").id
    put(
        sitting.walker.book.desk,
        Withheld,
        animal_id=cow_id,
        begins_at=MORNING - timedelta(hours=12),
        ends_at=None,
        why="udder tube",
    )
    sitting.walker.look()
    sitting.to_step("Hazel", "milk").press(
        *HARD_HOT, "m", "1", "enter", "m", "6", "enter", "m", "5", "enter", "1", "enter"
    )
    text = sitting.text()
    who = ("!! MILK WITHHELD  MILK LAST", "Stall", "tag ", "MILK LAST: left hind hard, hot since Wed morning")
    for words in (*who, "KEEP NONE", "TOGETHER with Fennel", "MARKED  held back, not milked out", "QUARTER LEFT HIND"):
        assert words in text
    assert "BEFORE" not in sitting.press("9.8").text()


def test_two_quarters_are_marked_in_one_entry(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press("m", "2", "enter", "1", "1", "right", "6", "2", "enter")
    assert sitting.newest().figures == (
        QuarterFigure(Quarter.LEFT_FRONT, Sign.CLOTS),
        QuarterFigure(Quarter.RIGHT_FRONT, Sign.HARD),
        QuarterFigure(Quarter.RIGHT_FRONT, Sign.SORE_TEAT),
    )


def test_backspace_goes_to_the_four_and_then_to_the_step(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press("m", "2", "enter", "4", "backspace")
    assert "which one?" in sitting.text()
    assert isinstance(sitting.press("7").place, QuarterPage)
    assert "Nothing is picked yet" in sitting.press("enter").said
    assert isinstance(sitting.press("backspace").place, Lamp)
    assert sitting.written() == 0


def test_marked_before_her_pail_she_is_milked_last_and_nobody_is_passed_over(sitting: Sitting) -> None:
    """The lamp stays with her, so that a pail that is there already can be typed; then the others come."""
    sitting.to_step("Fennel", "milk").press("m", "3", "enter", "3", "2", "enter")
    assert isinstance(sitting.place, Lamp)
    assert sitting.place.step.name == "Fennel"
    assert "MILK LAST: left hind hard since Wed morning" in sitting.text()
    sitting.press("7.2", "enter")
    skipped_over = [step for step in sitting.walker.steps if step.name == "Hazel" and step.kind is Kind.MILK]
    assert [step.state for step in skipped_over] == [State.OPEN]
    assert isinstance(sitting.place, Lamp)
    assert sitting.place.step.place == "Stall"


@pytest.mark.parametrize("size", [(120, 36), (60, 18), (40, 12), (1, 1), (0, 0)])
@pytest.mark.parametrize("name", SCREENS)
def test_a_quarter_fills_every_size(asked: Sitting, name: str, size: tuple[int, int]) -> None:
    lines = SCREENS[name](asked).text(*size).split("\n") if size[1] else []
    assert len(lines) == size[1]
    assert all(len(row) <= size[0] for row in lines)
