"""The terminal before and after: keys typed while the program still loads are not lost, and it is left as found."""

import os
import signal
import sys
import termios
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, NoReturn

from store.book.errors import BookError

ENDING = (signal.SIGTERM, signal.SIGHUP, signal.SIGINT)
"""Signals that end the program; its status is then 128 and the signal, as a shell has it."""


def refuse_dumb() -> None:
    """Raise BookError where no screen can be drawn."""
    if not all(stream.isatty() for stream in (sys.stdin, sys.stdout, sys.stderr)):
        raise BookError(
            "Penwalk needs a terminal to show the round on. Start it in a terminal window, not through a pipe."
        )
    if os.environ.get("TERM", "dumb") in ("dumb", "unknown", ""):
        raise BookError(
            "This terminal cannot draw a screen (TERM is dumb). Start Penwalk in an ordinary terminal window."
        )


def _leave(number: int, _: object) -> NoReturn:
    """A signal before the screen stands: leave through every `finally`, with the status that a shell knows."""
    raise SystemExit(128 + number)


@contextmanager
def signals_held() -> Iterator[None]:
    """Signals wait until the screen stands and takes them: before, one would break off a library half loaded."""
    signal.pthread_sigmask(signal.SIG_BLOCK, ENDING)
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_UNBLOCK, ENDING)


@contextmanager
def keys_kept() -> Iterator[None]:
    """Raw mode without echo from the first moment, so that early keys wait as keys; then the modes as they were.

    Enter before raw mode would arrive as a line feed and Backspace not at all.
    """
    if not sys.stdin.isatty():
        yield
        return
    for number in ENDING:
        signal.signal(number, _leave)
    descriptor = sys.stdin.fileno()
    before = termios.tcgetattr(descriptor)
    early = termios.tcgetattr(descriptor)
    early[0] &= ~(termios.ICRNL | termios.IXON)
    early[3] &= ~(termios.ICANON | termios.ECHO | termios.ISIG | termios.IEXTEN)
    termios.tcsetattr(descriptor, termios.TCSANOW, early)
    try:
        yield
    finally:
        _put_back(descriptor, before)


def _put_back(descriptor: int, modes: list[Any]) -> None:
    """The modes as they were; where the window is closed, what is still unsaid goes nowhere.

    Python would leave with 120 if it could not write out the rest of a frame at its end.
    """
    try:
        termios.tcsetattr(descriptor, termios.TCSADRAIN, modes)
    except termios.error:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        for stream in (sys.stdout, sys.stderr):
            os.dup2(nowhere, stream.fileno())
