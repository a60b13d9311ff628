"""A keeper without a book: the door on a real terminal, in and out, and the first farm made behind it."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from tests.terminal.terminal import Terminal
from tests.terminal.walking import PENWALK

ENTER_GAP_S = 0.8
"""A held Enter counts once; so long is waited between two."""


@pytest.mark.parametrize("words", [(), ("--book", "no/such/folder/farm.penwalk")])
def test_the_door_stands_where_there_is_no_book_and_q_leaves_nothing_behind(
    env: dict[str, str], tmp_path: Path, words: tuple[str, ...]
) -> None:
    before = sorted(tmp_path.rglob("*.penwalk*"))
    with Terminal([PENWALK, *words], env) as terminal:
        terminal.wait_for("No farm book yet.")
        terminal.press("q")
        assert terminal.left() == 0
    assert sorted(tmp_path.rglob("*.penwalk*")) == before


def test_a_farm_is_begun_at_the_door_and_is_there_the_next_time(env: dict[str, str], tmp_path: Path) -> None:
    """Killed behind it, the book stands; the next start leads on where it was."""
    place = tmp_path / "mine" / "farm.penwalk"
    with Terminal([PENWALK, "--book", str(place)], env) as terminal:
        terminal.wait_for("No farm book yet.")
        terminal.press("s")
        terminal.wait_for("A NEW FARM BOOK")
        terminal.press("Hollow Farm\r")
        terminal.watch(ENTER_GAP_S)
        terminal.press("Ann\x1b[6~")
        terminal.wait_for("makes the book")
        terminal.press("\r")
        terminal.wait_for("MY FARM  Hollow Farm")
        terminal.kill()
    with closing(sqlite3.connect(place)) as book:
        assert book.execute("SELECT value FROM setting WHERE name = 'name'").fetchall() == [("Hollow Farm",)]
    with Terminal([PENWALK, "--book", str(place)], env) as terminal:
        terminal.wait_for("Next: PENS")
        terminal.press("q")
        assert terminal.left() == 0


def test_the_demo_opens_from_the_door(env: dict[str, str]) -> None:
    with Terminal([PENWALK], env) as terminal:
        terminal.wait_for("No farm book yet.")
        terminal.press("d")
        terminal.wait_for("PRETEND MORNING", patience_s=60)
        terminal.press("q")
        terminal.left()
