"""What breaks inside the program, before the first screen or behind an entry: plain words, and nothing is lost."""

import sys
from pathlib import Path

import pytest

from tests.terminal.terminal import Terminal
from tests.terminal.walking import DEMO, MORNING, demo, entries, wait_for_step, walk

BROKEN = """
import sqlite3, sys
from store.book.errors import DamagedBook
from tui import cli, rooms, walker

def breaks(*_):
    raise {error}

{where} = breaks
sys.exit(cli.main(sys.argv[1:]))
"""
"""The command, with one piece of it that breaks."""
CANNOT_READ = "DamagedBook('The book cannot be read: disk I/O error.')"


def broken_demo(env: dict[str, str], where: str, error: str) -> Terminal:
    """The demo, in which something raises an error."""
    return Terminal([sys.executable, "-c", BROKEN.format(where=where, error=error), *DEMO], env)


def details(env: dict[str, str]) -> str:
    """What is kept of the last crash."""
    (found,) = Path(env["HOME"]).rglob("penwalk-crash.txt")
    return found.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("error", "says"),
    [
        (CANNOT_READ, "The book cannot be read: disk I/O error."),
        ("sqlite3.OperationalError('disk I/O error')", "The disk refused: disk I/O error."),
        ("OSError(5, 'Input/output error')", "The disk refused: Input/output error."),
    ],
)
def test_a_book_that_fails_at_the_first_place_is_said_in_one_line(env: dict[str, str], error: str, says: str) -> None:
    with broken_demo(env, "rooms.House.enter", error) as terminal:
        assert terminal.left() == 1
        (sentence,) = terminal.said
        assert sentence.startswith(says)


def test_a_mistake_at_the_first_place_is_said_plainly_and_its_details_are_kept(env: dict[str, str]) -> None:
    with broken_demo(env, "rooms.House.enter", "ZeroDivisionError('broken on purpose')") as terminal:
        assert terminal.left() == 70
        assert terminal.said[0].startswith("Penwalk stopped because of a mistake in it.")
        assert b"Traceback" not in terminal.wire
    assert "broken on purpose" in details(env)


def test_a_mistake_behind_the_first_screen_is_said_plainly_and_its_details_are_kept(env: dict[str, str]) -> None:
    with broken_demo(env, "rooms.House.closing", "ZeroDivisionError('broken on purpose')") as terminal:
        wait_for_step(terminal, 0)
        terminal.press("\x1b[C" * len(MORNING))
        assert terminal.left() == 70
        assert b"Traceback" not in terminal.wire
        assert b"Penwalk stopped because of a mistake in it." in terminal.wire
    assert "broken on purpose" in details(env)


def test_a_book_that_cannot_be_read_again_behind_an_entry_loses_nothing(env: dict[str, str]) -> None:
    with broken_demo(env, "walker.Walker.look_again", CANNOT_READ) as terminal:
        wait_for_step(terminal, 0)
        terminal.press(MORNING[0].keys)
        terminal.wait_until(lambda: b"The book cannot be read: disk I/O error." in terminal.wire, "the sentence")
        assert b"Traceback" not in terminal.wire
    assert entries(env) == [MORNING[0].writes]
    with demo(env) as terminal:
        walk(terminal, first=1, last=3)
    assert entries(env) == [step.writes for step in MORNING[:3]]
