"""A pseudo-terminal for measuring: nothing is drawn, only the moment counts at which a text has come over the wire."""

import os
import select
import signal
from collections.abc import Mapping, Sequence
from time import perf_counter
from types import TracebackType
from typing import Any, Self

import pexpect  # type: ignore[import-untyped]

PATIENCE_S = 60.0


class Wire:
    """A command on a terminal of 80 by 24."""

    def __init__(self, command: Sequence[str], env: Mapping[str, str]) -> None:
        """Start it; `began_s` is the moment at which the exec is done."""
        self._child: Any = pexpect.spawn(command[0], list(command[1:]), env=dict(env), dimensions=(24, 80))
        self.began_s = perf_counter()
        self._seen = b""

    def __enter__(self) -> Self:
        """Itself."""
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        """Let it go."""
        if self._child.isalive():
            os.kill(self._child.pid, signal.SIGKILL)
        self._child.close()

    @property
    def pid(self) -> int:
        """Of the command."""
        return int(self._child.pid)

    def press(self, keys: str) -> None:
        """Write keys; what came before does not count any more."""
        self._drain()
        self._seen = b""
        self.began_s = perf_counter()
        os.write(self._child.child_fd, keys.encode())

    def painted_s(self, *texts: str) -> float:
        """How long after the start, or after the last key, these texts had come, one behind the other. [s]"""
        until_s = perf_counter() + PATIENCE_S
        while not self._in_order(texts):
            if perf_counter() > until_s or not self._take_in(1.0):
                raise AssertionError(f"never came: {texts}; {self._seen[-300:]!r}")
        return perf_counter() - self.began_s

    def pause(self, wait_s: float) -> None:
        """Let time go by and take in what comes."""
        until_s = perf_counter() + wait_s
        while (left_s := until_s - perf_counter()) > 0:
            self._take_in(left_s)

    def hold(self, keys: Sequence[str], gap_s: float) -> None:
        """Press one key after the other, as a held key does; the last one is pressed when this ends."""
        began_s = perf_counter()
        for number, key in enumerate(keys):
            self.pause(began_s + number * gap_s - perf_counter())
            self.press(key)

    def leave(self, keys: str) -> None:
        """Press keys and wait until it has left."""
        self.press(keys)
        while self._take_in(1.0):
            pass
        self._child.wait()

    def _in_order(self, texts: Sequence[str]) -> bool:
        at = 0
        for text in texts:
            at = self._seen.find(text.encode(), at)
            if at < 0:
                return False
        return True

    def _take_in(self, wait_s: float) -> bool:
        if not select.select([self._child.child_fd], [], [], wait_s)[0]:
            return True
        try:
            found = os.read(self._child.child_fd, 65536)
        except OSError:  # Linux says so where the other end is closed
            return False
        self._seen += found
        return bool(found)

    def _drain(self) -> None:
        while select.select([self._child.child_fd], [], [], 0)[0] and self._take_in(0):
            pass
