"""Keys land on the step that they were meant for: early ones, fast ones, held ones."""

import pytest

from tests.terminal.walking import (
    MORNING,
    OTHER_KEY,
    Confirmed,
    demo,
    entries,
    wait_for_step,
    walk,
)

STALL_7_FLAKES = Confirmed("hay", "Stall", (14.35,), why="7")  # 2.05 kg a flake
FENNEL_2_SCOOPS = Confirmed("feed", "Fennel", (1.35, 0.9), why="2")  # 0.675 kg a scoop
ON_PURPOSE_S = 0.8
"""A little longer than tui.guard.ENTER_GAP_S: who has seen the next step takes longer than a held key."""
TOO_QUICK = "That Enter came too soon"


@pytest.mark.parametrize("enter", ["\r", "\n"])
def test_keys_pressed_before_the_first_screen_land_on_their_steps(env: dict[str, str], enter: str) -> None:
    with demo(env) as terminal:
        terminal.press(f"{enter}2{enter}7{enter}2{enter}7.2{enter}")
        wait_for_step(terminal, 5)
        terminal.press("q")
        assert terminal.left() == 0
    assert entries(env) == [*(step.writes for step in MORNING[:2]), STALL_7_FLAKES, FENNEL_2_SCOOPS, MORNING[4].writes]


def test_early_keys_that_only_leave_write_nothing(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        terminal.press("q")
        assert terminal.left() == 0
    assert entries(env) == []


@pytest.mark.parametrize("enter", ["\r", "\n", "\x1b[13u", "\x1b[57414u", "\x1bOM"])
def test_every_enter_that_a_terminal_can_send_writes(env: dict[str, str], enter: str) -> None:
    with demo(env) as terminal:
        wait_for_step(terminal, 0)
        terminal.press(enter)
        wait_for_step(terminal, 1)
        terminal.press("2" + enter)
        wait_for_step(terminal, 2)
    assert entries(env) == [step.writes for step in MORNING[:2]]


def test_a_number_on_the_keypad_of_a_newer_terminal_is_an_amount(env: dict[str, str]) -> None:
    keypad_3_point_5 = "\x1b[57402u\x1b[57409;;46u\x1b[57404;;53u"
    with demo(env) as terminal:
        walk(terminal, last=3)
        terminal.press(keypad_3_point_5 + "\x1b[57414u")
        wait_for_step(terminal, 4)
    assert entries(env)[3:] == [MORNING[3].writes]


def test_two_amounts_with_their_enters_in_one_write_confirm_two_steps(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=2)
        terminal.press("7\r2\r")
        wait_for_step(terminal, 4)
    assert entries(env)[2:] == [STALL_7_FLAKES, FENNEL_2_SCOOPS]


def test_three_steps_in_one_write_land_right_the_pail_among_them(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=3)
        terminal.press("3.5\r7.2\rs1\r")
        terminal.wait_for("5 done  1 skipped  12 to do")
    skipped_calf = Confirmed("apart", "Rook", (), "skipped", "not needed today")
    assert entries(env)[3:] == [MORNING[3].writes, MORNING[4].writes, skipped_calf]


def test_a_held_enter_confirms_exactly_one_step(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        wait_for_step(terminal, 0)
        terminal.hold("\r", times=20, gap_s=0.03)
        terminal.wait_for(TOO_QUICK)
        wait_for_step(terminal, 1)
        terminal.press("h")
        terminal.wait_for("KEYS HERE")
    assert entries(env) == [MORNING[0].writes]


def test_an_enter_held_from_before_the_first_screen_confirms_exactly_one_step(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        terminal.hold("\r", times=50, gap_s=0.03)
        wait_for_step(terminal, 1)
        terminal.press("h")
        terminal.wait_for("KEYS HERE")
    assert entries(env) == [MORNING[0].writes]


def test_twenty_enters_in_one_write_confirm_exactly_one_step(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        wait_for_step(terminal, 0)
        terminal.press("\r" * 20 + "h")
        terminal.wait_for("KEYS HERE")
    assert entries(env) == [MORNING[0].writes]


def test_a_second_enter_on_purpose_after_the_first_confirms_the_next_step(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=5)
        terminal.press(OTHER_KEY + "\r")
        wait_for_step(terminal, 6)
        terminal.watch(ON_PURPOSE_S)
        terminal.press("\r")
        wait_for_step(terminal, 7)
    assert entries(env) == [step.writes for step in MORNING[:7]]


def test_backspace_takes_back_what_was_typed_in_both_of_its_codes(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=3)
        terminal.press("39\x7f7\x08.5\r")
        wait_for_step(terminal, 4)
    assert entries(env)[3:] == [MORNING[3].writes]


def test_text_pasted_with_a_line_end_in_it_writes_nothing(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=1)
        terminal.press("\x1b[200~9\r9\r\x1b[201~" + OTHER_KEY + "h")
        terminal.wait_for("KEYS HERE")
    assert entries(env) == [MORNING[0].writes]
