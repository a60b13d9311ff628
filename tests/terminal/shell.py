"""A shell that stays on its terminal while the command comes and goes: what the command leaves behind can be seen.

Without it the system itself would tidy the terminal up when its only program ends, and hide a mess.
"""

import os
import re
from collections.abc import Mapping
from typing import Any

from tests.terminal.terminal import Terminal
from tests.terminal.walking import PENWALK

_SCRIPT = """
sh -c 'echo "[command $$]"; read -r go; exec "$@"' sh "$@"
echo "[left $?]"
read -r go
"""
_SWITCHES = ((b"?1049h", b"?1049l"), (b"?25l", b"?25h"), (b"?2004h", b"?2004l"), (b"?1004h", b"?1004l"),
             (b"?7l", b"?7h"), (b">25u", b"<u"))  # fmt: skip
"""What the screen switches on, and what switches it off: alternate screen, cursor hidden, pasted text marked, focus
told, no line wrap (xterm's control sequences), and the keyboard protocol."""


class Shell(Terminal):
    """The command below a shell."""

    def __init__(self, env: Mapping[str, str], *words: str) -> None:
        """Start the shell, then the command as soon as the terminal's modes are noted."""
        super().__init__(["/bin/sh", "-c", _SCRIPT, "sh", PENWALK, *words], env)
        self.wait_for("[command ")
        found = re.search(rb"\[command (\d+)\]", self.wire)
        assert found is not None
        self.command_pid = int(found[1])
        self.modes_before: list[Any] = self.modes
        self.press("\n")

    def signal(self, number: int) -> None:
        """Send the command a signal."""
        os.kill(self.command_pid, number)

    def status(self) -> int:
        """Wait until the command has left; its exit status as the shell has it."""
        self.wait_until(lambda: b"[left " in self.wire and self.wire.rstrip().endswith(b"]"), "the end of the command")
        return int(self.wire.rpartition(b"[left ")[2].strip()[:-1])

    def still_switched(self) -> list[bytes]:
        """Which switches the command has left on."""
        return [on for on, off in _SWITCHES if self.wire.rfind(b"\x1b[" + on) > self.wire.rfind(b"\x1b[" + off)]

    def switched(self) -> list[bytes]:
        """Which switches it has used at all."""
        return [on for on, _ in _SWITCHES if b"\x1b[" + on in self.wire]
