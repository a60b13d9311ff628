"""A book that may be read and not written: nothing is written, the keeper reads why, and it mends with the file."""

import ctypes
import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.terminal.terminal import Terminal
from tests.terminal.walking import DEMO, MORNING, OTHER_KEY, PENWALK, demo, entries, wait_for_step, walk, walked_book

DROP_FROM_BOUNDING_SET, OVERRIDES = 24, (1, 2)
"""prctl(2) PR_CAPBSET_DROP; capabilities(7) CAP_DAC_OVERRIDE and CAP_DAC_READ_SEARCH: linux/prctl.h, capability.h."""


def obey_permissions() -> None:
    """Run just before the command: even root is then bound by the permissions of files."""
    if os.geteuid() == 0:
        for override in OVERRIDES:
            ctypes.CDLL(None).prctl(DROP_FROM_BOUNDING_SET, override, 0, 0, 0)


def bound_demo(env: dict[str, str]) -> Terminal:
    """The demo, going on, bound by permissions."""
    return Terminal([PENWALK, *DEMO], env, preexec=obey_permissions)


@pytest.fixture
def book(env: dict[str, str]) -> Iterator[Path]:
    """The working copy with two steps written; whatever a test does, its folder can be tidied up after it."""
    with demo(env) as terminal:
        walk(terminal, last=3)
        terminal.press("q")
        assert terminal.left() == 0
    place = walked_book(env)
    yield place
    place.parent.chmod(0o755)


def try_a_step(env: dict[str, str]) -> None:
    """An amount and an Enter: either refused at the start, or said at the Enter with the amount kept."""
    with bound_demo(env) as terminal:
        terminal.wait_until(lambda: " to do" in terminal.screen or not terminal.glance(), "a screen or a sentence")
        if " to do" in terminal.screen:
            wait_for_step(terminal, 3)
            terminal.press("3.5\r")
            terminal.wait_for("Nothing was written")
            assert "= 3 1/2 scoops" in terminal.screen
            terminal.press("\x7f" * 3 + "q")
            assert terminal.left() == 0
        else:
            assert terminal.left() == 1
            assert len(terminal.said) == 1
        assert b"Traceback" not in terminal.wire


def test_a_file_that_may_not_be_written_is_said_in_words_and_stays_as_it_is(env: dict[str, str], book: Path) -> None:
    before = book.read_bytes()
    book.chmod(0o444)
    try_a_step(env)
    assert book.read_bytes() == before


def test_a_folder_that_may_not_be_written_is_said_in_words_and_the_book_stays_as_it_is(
    env: dict[str, str], book: Path
) -> None:
    before = book.read_bytes()
    book.parent.chmod(0o555)
    try_a_step(env)
    assert book.read_bytes() == before


def test_a_book_that_may_be_written_again_takes_the_round_up_where_it_stood(env: dict[str, str], book: Path) -> None:
    book.chmod(0o444)
    try_a_step(env)
    book.chmod(0o644)
    with bound_demo(env) as terminal:
        wait_for_step(terminal, 3)
        terminal.press(OTHER_KEY + MORNING[3].keys)
        wait_for_step(terminal, 4)
    assert entries(env) == [step.writes for step in MORNING[:4]]
