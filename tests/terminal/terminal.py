"""A real terminal around a real command: keys go in as bytes, the screen is what a terminal shows of the answer."""

import os
import select
import termios
from collections.abc import Callable, Mapping, Sequence
from time import monotonic
from types import TracebackType
from typing import Any, Self

import pexpect  # type: ignore[import-untyped]
import pyte

PATIENCE_S = 30.0
"""How long a screen may take to come before a test says that it never came. [s]"""
GLANCE_S = 0.02


class Terminal:
    """One command on its own pseudo-terminal."""

    def __init__(
        self,
        command: Sequence[str],
        env: Mapping[str, str],
        size: tuple[int, int] = (80, 24),
        preexec: Callable[[], None] | None = None,
    ) -> None:
        """Start a command. size: columns and rows. preexec: run in the child just before the command."""
        columns, rows = size
        self.wire = b""
        self._screen = pyte.Screen(columns, rows)
        self._stream = pyte.ByteStream(self._screen)
        self._child: Any = pexpect.spawn(
            *(command[0], list(command[1:])), env=dict(env), dimensions=(rows, columns), preexec_fn=preexec
        )
        self._open = True

    def __enter__(self) -> Self:
        """Itself."""
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        """Close it, whatever happened."""
        self.close()

    @property
    def pid(self) -> int:
        """Of the command."""
        return int(self._child.pid)

    @property
    def screen(self) -> str:
        """What stands on the screen now."""
        return "\n".join(line.rstrip() for line in self._screen.display)

    @property
    def said(self) -> list[str]:
        """Every line that came over the wire, for a command that draws no screen."""
        return self.wire.decode(errors="replace").replace("\r", "").strip().split("\n")

    @property
    def modes(self) -> list[Any]:
        """The terminal's modes, as the command has set them."""
        return termios.tcgetattr(self._child.child_fd)

    def press(self, keys: str) -> None:
        """Press keys, in one write."""
        self.press_bytes(keys.encode())

    def press_bytes(self, sent: bytes) -> None:
        """What a terminal sends, whatever it is."""
        os.write(self._child.child_fd, sent)

    def hold(self, key: str, times: int, gap_s: float) -> None:
        """Press one key again and again, as a held key does; the screen goes on meanwhile."""
        for _ in range(times):
            self.press(key)
            self.watch(gap_s)

    def watch(self, time_s: float) -> None:
        """Press nothing for a while; the screen goes on."""
        until_s = monotonic() + time_s
        while self._open and monotonic() < until_s:
            self.glance(until_s - monotonic())

    def resize(self, columns: int, rows: int) -> None:
        """Another size of the window; the command is told as a window tells it."""
        self._screen.resize(rows, columns)
        self._child.setwinsize(rows, columns)

    def glance(self, wait_s: float = GLANCE_S) -> bool:
        """Take in what has come, waiting a little; False once the command has let the terminal go."""
        if self._open and select.select([self._child.child_fd], [], [], max(wait_s, 0.0))[0]:
            try:
                found = os.read(self._child.child_fd, 65536)
            except OSError:  # Linux says so where the other end is closed
                found = b""
            self._open = bool(found)
            self.wire += found
            self._stream.feed(found)
        return self._open

    def wait_until(self, holds: Callable[[], bool], what: str, patience_s: float = PATIENCE_S) -> None:
        """Look at the screen until something holds; the test fails with the screen if it never does."""
        until_s = monotonic() + patience_s
        while not holds():
            running = self.glance()
            if not holds() and (monotonic() > until_s or not running):
                raise AssertionError(f"never came: {what}; {'running' if running else 'left'}:\n{self.screen}")

    def wait_for(self, text: str, patience_s: float = PATIENCE_S) -> None:
        """Look at the screen until a text stands on it."""
        self.wait_until(lambda: text in self.screen, text, patience_s)

    def left(self) -> int:
        """Wait until the command has left by itself; its exit status, as a shell says it."""
        self.wait_until(lambda: not self._open, "the end of the command")
        self._child.wait()
        return self._status()

    def kill(self) -> None:
        """Take the power away from the command."""
        os.kill(self.pid, 9)
        self.left()

    def hang_up(self) -> int:
        """Close the window under the command and wait until it has left; its exit status."""
        self._child.ptyproc.fileobj.close()
        self._child.ptyproc.closed = self._child.closed = True
        self._open, until_s = False, monotonic() + PATIENCE_S
        while self._child.isalive():
            if monotonic() > until_s:
                os.kill(self.pid, 9)
                raise AssertionError("the window is closed and the command runs on")
            select.select([], [], [], GLANCE_S)
        return self._status()

    def close(self) -> None:
        """End the command if it still runs, and let the terminal go."""
        if not self._child.closed:
            if self._child.isalive():
                os.kill(self.pid, 9)
            self._child.close()

    def _status(self) -> int:
        ended, signal_number = self._child.exitstatus, self._child.signalstatus
        return int(ended) if ended is not None else 128 + int(signal_number)
