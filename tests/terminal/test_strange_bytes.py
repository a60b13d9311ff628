"""Bytes that are no key, as a terminal with another coding or a bad line sends them."""

import os
import signal
import sys

import pytest

from tests.farm import FOLDER
from tests.terminal.terminal import Terminal
from tests.terminal.walking import MORNING, demo, entries, wait_for_step, walk

WAITS = "import signal, sys, tui.moving\ntui.moving.import_folder = lambda *_: (print('begun'), signal.pause())\n"
MAIN = "from tui.cli import main\nsys.exit(main(sys.argv[1:]))"


@pytest.mark.parametrize("strange", [b"\xff", b"\xe9", b"\xc3\x28", b"\xf0\x28\x8c\xbc", b"\x00\x80"])
def test_a_byte_that_is_no_letter_is_dropped_and_the_round_goes_on(env: dict[str, str], strange: bytes) -> None:
    with demo(env) as terminal:
        wait_for_step(terminal, 0)
        for _ in range(3):
            terminal.press_bytes(strange)
            terminal.watch(0.1)
        walk(terminal, last=3)
        terminal.press("q")
        assert terminal.left() == 0
        assert b"Traceback" not in terminal.wire
    assert entries(env) == [step.writes for step in MORNING[:3]]


def test_a_command_that_is_broken_off_says_so_in_one_line(env: dict[str, str]) -> None:
    with Terminal([sys.executable, "-c", WAITS + MAIN, "import", str(FOLDER)], env) as terminal:
        terminal.wait_for("begun")
        os.kill(terminal.pid, signal.SIGINT)
        assert terminal.left() == 130
        assert terminal.said[-1] == "Stopped. Nothing half done is left in the book."
        assert b"Traceback" not in terminal.wire
