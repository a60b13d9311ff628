"""From the exec to the first painted step, beside the smallest Textual program: python -m tests.bench.start [runs]

Bare, demo, a book, the long book, and again: one after the other in one run, from compiled files, warm.
"""

import shutil
import sys
from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.bare import NOTE, WORD
from tests.bench.million import ENTRIES, long_book
from tests.bench.telling import Figures, ratio, say, tell
from tests.bench.wire import Wire
from tests.terminal.walking import DEMO, PENWALK, folders

RUNS = 20
ROOT = Path(__file__).parent.parent.parent
FIRST_STEP = (" to do ", "leave")
"""The head of the first step's screen, and the end of its last line."""


def ours(function: str) -> list[str]:
    """The command for a function of tests.bench.bare, from its compiled file."""
    return [sys.executable, "-c", f"from tests.bench.bare import {function}; {function}()"]


def environment(home: Path) -> dict[str, str]:
    """A home of its own, and the way to this package."""
    return folders(home, PYTHONPATH=str(ROOT))


def start_s(command: Sequence[str], env: dict[str, str], *texts: str) -> float:
    """Start, wait for the first screen, leave. [s]"""
    with Wire(command, env) as wire:
        took_s = wire.painted_s(*texts)
        wire.leave("q")
    return took_s


def modules(command: list[str], env: dict[str, str], home: Path, *texts: str) -> int:
    """How many modules are loaded when the first frame stands."""
    note = home / "note"
    note.unlink(missing_ok=True)
    with Wire(command, env | {NOTE: str(note)}) as wire:
        wire.painted_s(*texts)
        while not note.is_file() or not note.read_text(encoding="utf-8"):
            wire.pause(0.01)
        wire.leave("q")
    return int(note.read_text(encoding="utf-8"))


def main() -> None:
    """Measure and tell."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else RUNS
    entries = int(sys.argv[2]) if len(sys.argv) > 2 else ENTRIES
    with TemporaryDirectory() as folder:
        home = Path(folder)
        env, book = environment(home), home / "farm.penwalk"
        shutil.copy(long_book(0), book)
        commands = {
            "bare": (ours("bare"), (WORD,)),
            "demo": ([PENWALK, *DEMO], FIRST_STEP),
            "book": ([PENWALK, "--book", str(book)], FIRST_STEP),
            "long": ([PENWALK, "--book", str(long_book(entries))], FIRST_STEP),
        }
        times_s: dict[str, list[float]] = {name: [] for name in commands}
        for run in range(runs + 1):
            for name, (command, texts) in commands.items():
                took_s = start_s(command, env, *texts)
                if run:  # the first round only warms up
                    times_s[name].append(took_s)
        figures = {name: Figures(f"exec to first frame, {name}", taken) for name, taken in times_s.items()}
        tell(*figures.values())
        for name in ("demo", "book", "long"):
            say(f"start, {name} / bare: {ratio(figures[name], figures['bare'])}")
        say(f"start, long / book: {ratio(figures['long'], figures['book'])}   ({entries} entries)")
        small = modules(ours("bare"), env, home, WORD)
        large = modules([*ours("noted_penwalk"), "--book", str(book)], env, home, *FIRST_STEP)
        say(f"modules at the first frame: {large}, bare {small}: {large / small:.2f}")


if __name__ == "__main__":
    main()
