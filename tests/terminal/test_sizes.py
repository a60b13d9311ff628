"""The screen at every size, and a window that changes its size in the middle of the round."""

from collections.abc import Callable

import pytest

from tests.terminal.terminal import Terminal
from tests.terminal.walking import MORNING, OTHER_KEY, demo, entries, wait_for_step, walk


def drawn_since(terminal: Terminal) -> Callable[[], bool]:
    """Whether anything was drawn after this moment."""
    before = len(terminal.wire)
    return lambda: len(terminal.wire) > before


@pytest.mark.parametrize("size", [(80, 24), (120, 36), (200, 60)])
def test_the_whole_morning_can_be_walked_at_this_size(env: dict[str, str], size: tuple[int, int]) -> None:
    with demo(env, size=size) as terminal:
        walk(terminal)
        terminal.wait_for("18 steps = 16 done + 2 skipped + 0 NOT RECORDED")
        assert "Q leave" in terminal.screen
        terminal.press("q")
        assert terminal.left() == 0


@pytest.mark.parametrize("size", [(40, 12), (20, 5), (8, 3), (2, 1)])
def test_a_tiny_window_crashes_nothing_and_still_takes_the_keys(env: dict[str, str], size: tuple[int, int]) -> None:
    with demo(env, size=size) as terminal:
        terminal.press("\r2\r7\r3.5\r" + "s" + "\x7f" + "h\x7fu\x7f" + "\x1b[C\x1b[D" + "7.2\r" + "q")
        assert terminal.left() == 0
        assert b"Traceback" not in terminal.wire
    assert [entry.name for entry in entries(env)] == [
        "lucerne pellets",
        "Stall",
        "Stall",
        "Fennel",
        "Fennel",
    ]


def test_a_window_that_changes_its_size_is_drawn_anew_and_loses_nothing(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=3)
        terminal.press("3.5")
        terminal.wait_for("= 3 1/2 scoops")
        for columns, rows in ((120, 36), (40, 12), (2, 1), (80, 24)):
            terminal.resize(columns, rows)
            terminal.wait_until(drawn_since(terminal), f"a screen of {columns} by {rows}")
        terminal.wait_for("= 3 1/2 scoops")
        terminal.wait_for("3 done  0 skipped  15 to do")
        terminal.press("\r")
        wait_for_step(terminal, 4)
    assert entries(env) == [step.writes for step in MORNING[:4]]


def test_a_larger_window_shows_larger_letters(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=3)
        assert "▄▄" not in terminal.screen
        terminal.resize(120, 36)
        terminal.wait_for("████")
        terminal.press(OTHER_KEY + "q")
        assert terminal.left() == 0
