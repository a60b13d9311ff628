"""A disk that fails at the one moment that counts: the step is not said to be written, and can be written again."""

import os
import signal
from pathlib import Path

from tests.terminal.tracing import traced
from tests.terminal.walking import MORNING, PAST_ENTRIES, demo, entries, rows, wait_for_step, walk

THIRD_STEP = 5
"""The syncs of a fresh log: its head, its folder, the first step, the second, the third."""


def test_a_sync_that_fails_is_said_in_words_and_the_next_enter_writes_the_step_once(
    strace: str, env: dict[str, str]
) -> None:
    failing = ("-o", "/dev/null", "-e", f"inject=fdatasync:error=EIO:when={THIRD_STEP}")
    with traced(strace, env, *failing) as terminal:
        walk(terminal, last=2)
        terminal.press("4.5\r")
        terminal.wait_for("Nothing was written")
        wait_for_step(terminal, 2)
        terminal.press("\x7f" * 3 + "\r")
        wait_for_step(terminal, 3)
        walk(terminal, first=3)
        terminal.press("q")
        assert terminal.left() == 0
    assert entries(env) == [step.writes for step in MORNING]
    assert rows(env, "entry") == PAST_ENTRIES + len(MORNING)


def test_what_the_screen_called_not_written_does_not_come_back_after_a_power_cut(
    strace: str, env: dict[str, str]
) -> None:
    failing = ("-o", "/dev/null", "-e", f"inject=fdatasync:error=EIO:when={THIRD_STEP}")
    with traced(strace, env, *failing) as terminal:
        walk(terminal, last=2)
        terminal.press("4.5\r")
        terminal.wait_for("Nothing was written")
        (command,) = Path(f"/proc/{terminal.pid}/task/{terminal.pid}/children").read_text().split()
        os.kill(int(command), signal.SIGKILL)
        terminal.left()
    with demo(env) as terminal:
        terminal.wait_for(" to do")
        assert entries(env) == [step.writes for step in MORNING[:2]]
        wait_for_step(terminal, 2)
