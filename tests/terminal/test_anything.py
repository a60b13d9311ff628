"""Whatever is pressed, the program runs on or leaves in order, and the book stays whole."""

import random
import sqlite3
from contextlib import closing

import pytest

from tests.terminal.terminal import Terminal
from tests.terminal.walking import MORNING, demo, rows, walked_book

KEYS_A_SEED = 400
LETTERS: list[str] = [chr(code) for code in range(32, 127)]
CONTROLS = [chr(code) for code in range(1, 27) if chr(code) not in "\x11\x03"]
SPECIAL = """\x1b[A \x1b[B \x1b[C \x1b[D \x1b[H \x1b[F \x1b[3~ \x1b[2~ \x1b[5~ \x1b[6~ \x1bOP \x1b[15~ \x1b[Z \x1b[1;5C
\x1b[13u \x1b[57414u \x1b[I \x1b[O ½ ¼ é 牛 🐄 \x1b""".split()
OFTEN = [*"\r\r\r\r\r\r0123456789.,/ suqhkglb", "\x7f", "\x1b[C", "\x1b[D", "\x1b[A", "\x1b[B"]

TAKE_BACK_AND_LEAVE = ("\x7f" * 50 + "\x1b[B") * 2 + "\x03"
"""Out of any list, whatever is typed at either line of a step taken back, then out."""


def any_key(chance: random.Random) -> str:
    """Some key, the ones that do something more often."""
    kinds: list[list[str]] = [OFTEN, OFTEN, OFTEN, LETTERS, CONTROLS, SPECIAL]
    return chance.choice(chance.choice(kinds))


def press_until_left(terminal: Terminal, keys: list[str]) -> None:
    """Press keys while the program runs; it may leave at any of them."""
    terminal.wait_for(" to do")
    while keys and terminal.glance(0.0):
        terminal.press(keys.pop())


@pytest.mark.parametrize("seed", range(6))
def test_any_keys_end_in_no_traceback_and_a_whole_book(env: dict[str, str], seed: int) -> None:
    chance = random.Random(seed)
    keys = [any_key(chance) for _ in range(KEYS_A_SEED)]
    while keys:
        with demo(env) as terminal:
            press_until_left(terminal, keys)
            if not keys:
                terminal.press(TAKE_BACK_AND_LEAVE)
            assert terminal.left() == 0
            assert b"Traceback" not in terminal.wire
    with closing(sqlite3.connect(walked_book(env))) as book:
        assert book.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert book.execute("PRAGMA foreign_key_check").fetchall() == []
        newest = book.execute("SELECT count(DISTINCT step_id) FROM entry WHERE day = '2026-03-11'").fetchone()[0]
    assert newest <= len(MORNING)
    assert rows(env, "person") == 2
