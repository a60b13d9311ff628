"""What the program asks of the system, in order, as strace notes it."""

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.terminal.terminal import Terminal
from tests.terminal.walking import DEMO, PENWALK

_SYNC = re.compile(r"(?:fdatasync|fsync)\(\d+<(?P<path>[^>]*)>.*= 0$")
_HALF_SYNC = re.compile(r"^(?P<task>\d+) .*(?:fdatasync|fsync)\(\d+<(?P<path>[^>]*)> <unfinished")
_SYNC_ENDS = re.compile(r"^(?P<task>\d+) .*<\.\.\. (?:fdatasync|fsync) resumed>.*= 0$")
_WRITE = re.compile(r"write\(\d+<(?P<path>[^>]*)>, \"(?P<text>.*)")


@pytest.fixture
def strace() -> str:
    """The system tool that shows what a program asks of the system."""
    found = shutil.which("strace")
    if found is None or subprocess.run([found, "-f", "-o", "/dev/null", "true"], check=False).returncode:
        pytest.skip("strace is missing here, or may not look into another program")
    return found


def traced(strace: str, env: dict[str, str], *more: str) -> Terminal:
    """The demo with its syncs and writes noted."""
    words = [strace, "-f", "-y", "-s", "100000", "-e", "trace=fdatasync,fsync,write", *more, PENWALK, *DEMO]
    return Terminal(words, env)


def what_happened(trace: Path) -> list[tuple[str, str]]:
    """In order: ("synced", path) when a sync came back, ("painted", text) when a write to the terminal began."""
    happened: list[tuple[str, str]] = []
    half: dict[str, str] = {}
    for line in trace.read_text(encoding="utf-8", errors="replace").splitlines():
        if begins := _HALF_SYNC.search(line):
            half[begins["task"]] = begins["path"]
        elif ends := _SYNC_ENDS.search(line):
            happened.append(("synced", half.pop(ends["task"])))
        elif whole := _SYNC.search(line):
            happened.append(("synced", whole["path"]))
        elif (write := _WRITE.search(line)) and ("/dev/pts/" in write["path"] or "/dev/tty" in write["path"]):
            happened.append(("painted", write["text"]))
    return happened
