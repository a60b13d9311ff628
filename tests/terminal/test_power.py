"""The power goes in the middle of the round: what was confirmed is in the book once, and the round goes on there."""

import pytest

from tests.terminal.terminal import Terminal
from tests.terminal.walking import (
    MORNING,
    OTHER_KEY,
    PAST_ENTRIES,
    demo,
    entries,
    rows,
    wait_for_step,
    walk,
)


def written_steps(terminal: Terminal) -> int:
    """Wait for the first screen; how many steps its header counts as recorded."""
    terminal.wait_for(" to do")
    words = terminal.screen.split("\n")[0].split()
    return int(words[words.index("done") - 1]) + int(words[words.index("skipped") - 1])


@pytest.mark.parametrize("confirmed", [1, 4, 6, 12])
def test_after_a_kill_the_round_goes_on_where_it_stood_and_nothing_is_written_twice(
    env: dict[str, str], confirmed: int
) -> None:
    with demo(env) as terminal:
        walk(terminal, last=confirmed)
        terminal.kill()
    assert entries(env) == [step.writes for step in MORNING[:confirmed]]
    with demo(env) as terminal:
        wait_for_step(terminal, confirmed)
        walk(terminal, first=confirmed)
        terminal.press("q")
        assert terminal.left() == 0
    assert entries(env) == [step.writes for step in MORNING]
    assert rows(env, "entry") == PAST_ENTRIES + len(MORNING)


@pytest.mark.parametrize("pause_s", [0.0, 0.002, 0.01, 0.03])
def test_a_kill_right_at_an_enter_leaves_that_step_written_whole_or_not_at_all(
    env: dict[str, str], pause_s: float
) -> None:
    with demo(env) as terminal:
        walk(terminal, last=3)
        terminal.hold(OTHER_KEY + MORNING[3].keys, times=1, gap_s=pause_s)
        terminal.kill()
    held = entries(env)
    assert held in ([step.writes for step in MORNING[:3]], [step.writes for step in MORNING[:4]])
    with demo(env) as terminal:
        assert written_steps(terminal) == len(held)
        walk(terminal, first=len(held))
    assert entries(env) == [step.writes for step in MORNING]


def test_what_was_typed_and_not_confirmed_is_not_written_by_a_kill(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=4)
        terminal.press("7.2")
        terminal.wait_for("kg milk")
        terminal.kill()
    assert entries(env) == [step.writes for step in MORNING[:4]]


def test_killed_again_and_again_the_morning_still_adds_up(env: dict[str, str]) -> None:
    for number in range(6):
        with demo(env) as terminal:
            wait_for_step(terminal, number)
            walk(terminal, first=number, last=number + 1)
            terminal.kill()
    assert entries(env) == [step.writes for step in MORNING[:6]]
