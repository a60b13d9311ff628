"""The terminal before and after: keys typed while the program still loads are not lost, and it is left as found."""

import os
import signal
import sys
import termios
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import NoReturn

from store.book.errors import BookError


def refuse_dumb() -> None:
    """Raise BookError where no screen can be drawn."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
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
def keys_kept() -> Iterator[None]:
    """Raw mode without echo from the first moment, so that early keys wait as keys; then the modes as they were.

    Enter before raw mode would arrive as a line feed and Backspace not at all.
    """
    if not sys.stdin.isatty():
        yield
        return
    for number in (signal.SIGTERM, signal.SIGHUP):
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
        with suppress(termios.error):
            termios.tcsetattr(descriptor, termios.TCSADRAIN, before)
