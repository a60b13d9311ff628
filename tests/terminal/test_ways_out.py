"""Every way out leaves the terminal as it was found."""

import os
import signal

import pytest

from tests.terminal.shell import Shell
from tests.terminal.walking import DEMO, MORNING, OTHER_KEY, demo, entries, wait_for_step, walk

HUNG_UP = 129
"""What a shell says of a program whose window was closed: 128 and SIGHUP."""
SIGNALS = [(signal.SIGTERM, 143), (signal.SIGHUP, HUNG_UP), (signal.SIGINT, 130)]


def tidy(shell: Shell) -> bool:
    """The terminal is as it was, and what was switched is switched back."""
    return shell.modes == shell.modes_before and len(shell.switched()) > 4 and not shell.still_switched()


@pytest.mark.parametrize("key", ["q", "Q", "\x03", "\x11"])
def test_every_leaving_key_leaves_with_0_and_a_tidy_terminal(env: dict[str, str], key: str) -> None:
    with Shell(env, *DEMO) as shell:
        wait_for_step(shell, 0)
        assert shell.modes != shell.modes_before, "while it runs the terminal is in another mode"
        shell.press(key)
        assert shell.status() == 0
        assert tidy(shell)


@pytest.mark.parametrize(("number", "status"), SIGNALS)
def test_a_signal_leaves_with_its_status_and_a_tidy_terminal(
    env: dict[str, str], number: signal.Signals, status: int
) -> None:
    with Shell(env, *DEMO) as shell:
        walk(shell, last=2)
        shell.signal(number)
        assert shell.status() == status
        assert tidy(shell)
    assert entries(env) == [step.writes for step in MORNING[:2]]


@pytest.mark.parametrize(("number", "status"), SIGNALS)
def test_a_signal_with_something_typed_leaves_a_tidy_terminal_and_writes_nothing(
    env: dict[str, str], number: signal.Signals, status: int
) -> None:
    with Shell(env, *DEMO) as shell:
        wait_for_step(shell, 0)
        shell.press("\x1b[C\x1b[C3.5")
        shell.wait_for("= 3 1/2 flakes")
        shell.press("\x1b[D")
        shell.wait_for("is typed and not written")
        shell.signal(number)
        assert shell.status() == status
        assert tidy(shell)
    assert entries(env) == []


@pytest.mark.parametrize(("number", "status"), SIGNALS)
def test_a_signal_while_the_program_still_loads_leaves_a_tidy_terminal(
    env: dict[str, str], number: signal.Signals, status: int
) -> None:
    with Shell(env, *DEMO) as shell:
        shell.wait_until(lambda: shell.modes != shell.modes_before, "the keys are kept from the first moment")
        shell.signal(number)
        assert shell.status() == status
        assert shell.modes == shell.modes_before
        assert not shell.still_switched()


def test_something_half_typed_holds_the_leaving_key_back_once(env: dict[str, str]) -> None:
    with Shell(env, *DEMO) as shell:
        walk(shell, last=1)
        shell.press("3\x03")
        shell.wait_for("«3» is typed and not written")
        shell.press("\x7fq")
        assert shell.status() == 0
    assert entries(env) == [MORNING[0].writes]


def test_a_closed_window_ends_the_program_and_the_round_goes_on_later(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=3)
        assert terminal.hang_up() == HUNG_UP
    assert entries(env) == [step.writes for step in MORNING[:3]]
    with demo(env) as terminal:
        wait_for_step(terminal, 3)


def test_a_window_closed_with_something_typed_writes_nothing_of_it(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=1)
        terminal.press("2")
        terminal.wait_for("write the count")
        assert terminal.hang_up() == HUNG_UP
    assert entries(env) == [MORNING[0].writes]


@pytest.mark.parametrize("pause_s", [0.0, 0.01, 0.05])
def test_a_window_closed_right_at_an_enter_leaves_that_step_written_whole_or_not_at_all(
    env: dict[str, str], pause_s: float
) -> None:
    with demo(env) as terminal:
        walk(terminal, last=2)
        terminal.press(OTHER_KEY + MORNING[2].keys)
        terminal.watch(pause_s)
        assert terminal.hang_up() == HUNG_UP
    assert entries(env) in ([step.writes for step in MORNING[:2]], [step.writes for step in MORNING[:3]])


@pytest.mark.parametrize("pause_s", [0.0, 0.2, 0.4])
def test_a_window_closed_while_the_program_still_loads_ends_it(env: dict[str, str], pause_s: float) -> None:
    with demo(env) as terminal:
        before = terminal.modes
        terminal.wait_until(lambda: terminal.modes != before, "the keys are kept from the first moment")
        terminal.watch(pause_s)
        assert terminal.hang_up() == HUNG_UP


def test_told_to_go_on_without_having_been_stopped_the_round_goes_on_with_every_key_once(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        wait_for_step(terminal, 0)
        for number in (signal.SIGCONT, signal.SIGCONT, signal.SIGTSTP, signal.SIGCONT):
            os.kill(terminal.pid, number)
            terminal.watch(0.2)
        walk(terminal, last=4)
        terminal.press("q")
        assert terminal.left() == 0
    assert entries(env) == [step.writes for step in MORNING[:4]]


def test_a_keeper_who_comes_back_is_told_that_the_morning_goes_on(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=1)
        terminal.press("q")
        terminal.left()
    with demo(env) as terminal:
        terminal.wait_for("Going on where you left this pretend morning.")
