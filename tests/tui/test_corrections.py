"""A correction replaces what was changed and keeps the rest; paper and past rounds are typed in like this one."""

from datetime import timedelta

import pytest

from store.book.figures import FedFigure, FeltFigure, MilkedFigure
from store.book.words import Fate, Fill, State
from tests.farm import MORNING, HandClock
from tests.tui.keys import Sitting
from tui.board.board import Board

AT_THE_END = ["left", *["right"] * 18]


def milked(sitting: Sitting) -> MilkedFigure:
    """The milking written last."""
    found = sitting.newest().the(MilkedFigure)
    assert found is not None
    return found


def test_another_weight_keeps_the_use_the_mark_and_the_time(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Fennel", "milk").press("m", "2", "enter", "4.0", "down", "enter")
    at = sitting.newest().happened_at
    clock.move(minutes=40)
    sitting.to_step("Fennel", "milk").press("4.4", "enter")
    assert (milked(sitting).gross_kg, milked(sitting).fate, milked(sitting).held_back) == (4.4, Fate.CALVES, True)
    assert sitting.newest().happened_at == at


def test_another_use_alone_is_a_correction_too(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("7.2", "enter")
    sitting.to_step("Fennel", "milk").press("down", "enter")
    assert (milked(sitting).gross_kg, milked(sitting).fate) == (7.2, Fate.CALVES)


def test_a_set_time_moves_what_is_corrected(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("enter", "t", "6:10", "enter")
    sitting.to_step("Hazel", "feed").press("2", "enter")
    assert sitting.newest().happened_at == MORNING.replace(minute=10)


@pytest.mark.parametrize(
    ("name", "kind", "keys"),
    [
        ("Stall", "count", "2"),
        ("Stall", "hay", "3"),
        ("Fennel", "milk", "7.2"),
        ("Tansy", "udder", "1"),
        ("Rook", "feed", ""),
    ],
)
def test_a_set_time_alone_moves_what_is_written_and_nothing_else(
    sitting: Sitting, name: str, kind: str, keys: str
) -> None:
    sitting.to_step(name, kind).press(keys, "enter")
    before = sitting.newest()
    sitting.to_step(name, kind).press("t", "6:10", "enter")
    assert "Enter write it at 06:10" in sitting.text()
    sitting.press("enter")
    assert sitting.newest().replaces_id == before.id
    assert sitting.newest().happened_at == MORNING.replace(minute=10)
    assert (sitting.newest().figures, sitting.newest().state) == (before.figures, before.state)


def test_a_skip_that_gets_another_time_stays_a_skip(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press("s", "5", "enter").to_step("Hazel", "milk").press(
        "t", "6:10", "enter", "enter"
    )
    assert (sitting.newest().state, sitting.newest().reason) == (State.SKIPPED, "no time")


def test_another_udder_finding_is_written(sitting: Sitting) -> None:
    sitting.to_step("Tansy", "udder").press("1", "enter")
    sitting.to_step("Tansy", "udder").press("4", "enter")
    felt = sitting.newest().the(FeltFigure)
    assert felt is not None
    assert felt.fill is Fill.TIGHT


def test_what_was_left_stays_when_the_amount_is_corrected(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("m", "1", "enter", "0.6 kg", "enter")
    sitting.to_step("Hazel", "feed").press("2", "enter")
    fed = sitting.newest().the(FedFigure)
    assert fed is not None
    assert fed.left_kg == 0.6


@pytest.mark.parametrize("key", ["up", "down"])
def test_looking_at_another_feed_is_no_correction(sitting: Sitting, key: str) -> None:
    sitting.looked().to_step("Fennel", "feed").press("enter")
    sitting.to_step("Fennel", "feed").press(key, "enter")
    assert sitting.written() == 2


@pytest.mark.parametrize("key", ["m", "s", "l", "a"])
def test_no_list_opens_over_what_is_half_typed(sitting: Sitting, key: str) -> None:
    lamp = sitting.to_step("Fennel", "feed").press("2").place
    assert lamp is not None
    act = next(row.act for row in lamp.KEYS if key in row.names)
    assert act is not None
    assert act(lamp) is lamp
    assert "«2» is typed and not written" in sitting.said


@pytest.mark.parametrize("character", ["²", "٣", "０"])
def test_other_digits_of_the_world_pick_nothing(sitting: Sitting, character: str) -> None:
    sitting.to_step("Tansy", "udder").press(character).press("s", character)
    assert sitting.written() == 0


def test_a_round_on_paper_is_typed_in_with_enter_and_keeps_its_day(sitting: Sitting, clock: HandClock) -> None:
    sitting.press("enter")
    clock.move(hours=12)
    sitting.place = sitting.house.enter()
    sitting.press("2", "enter", "enter", "enter", "enter", "r", "2", "enter")
    assert sitting.states().count(State.ON_PAPER) == 17
    sitting.press("2", "enter", "enter", "3", "enter", "7.2", "enter")
    assert sitting.states().count(State.ON_PAPER) == 13
    assert sitting.newest().happened_at < MORNING + timedelta(hours=2)


def test_a_time_in_a_past_round_is_of_its_own_day(sitting: Sitting) -> None:
    sitting.press("r", "3", "enter", "t", "7:10", "enter", "g", "hazel milk", "enter", "9.0", "enter")
    assert sitting.newest().happened_at == MORNING.replace(hour=7, minute=10) - timedelta(days=1)


def test_every_key_of_a_place_is_in_its_help(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "feed").press("h")
    seen = sitting.text()
    for _ in range(3):
        seen += sitting.press("pagedown").text()
    for sign in "MSLWABGNUPTVRHZQ":
        assert f"\n  {sign}  " in seen, sign


def test_more_heads_than_are_expected_are_asked_about(sitting: Sitting) -> None:
    """Somebody else's heifer, or a slip of the keys."""
    sitting.to_step("Stall", "count").press("30", "enter")
    assert "30 heads, and 2 are expected" in sitting.said
    assert sitting.written() == 0
    assert sitting.press("!", "enter").written() == 1


def test_esc_takes_the_amount_on_a_board_away_as_at_a_step(sitting: Sitting) -> None:
    """99 was a slip: what is typed behind Esc begins anew; from an empty line Esc goes back."""
    board = sitting.to_step("Orchard", "hay").press("a")
    board.press("9", "9", "escape", "4")
    assert isinstance(board.place, Board)
    assert board.place.half_typed == "4"
    board.press("escape")
    assert board.place.half_typed == ""
    assert "written" in board.text()
    board.press("escape")
    assert not isinstance(board.place, Board)
