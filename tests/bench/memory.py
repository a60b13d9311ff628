"""Memory beside the smallest Textual program, on a real terminal: python -m tests.bench.memory [runs]

At the first frame, and after every screen was visited and a step and a note were written. The demo's own farm.
Linux only.
"""

import sys
from collections import defaultdict
from collections.abc import Sequence
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

from tests.bench.bare import WORD
from tests.bench.proc import load, resident_mb
from tests.bench.start import FIRST_STEP, environment, ours, start_s
from tests.bench.step import LOADED_S
from tests.bench.telling import say
from tests.bench.wire import Wire
from tests.terminal.walking import OTHER_KEY, PENWALK

RUNS = 5
AFRESH = ("demo", "--afresh")
SETTLED_S = 0.5
BACK, LEFT, RIGHT = "\x7f", "\x1b[D", "\x1b[C"
NOTHING_LOADED = """
import sys
from tui import app, cli
app._load_writing = lambda: None
sys.exit(cli.main(sys.argv[1:]))
"""
"""The command without the thread that loads what writing needs: so the first frame's memory stands still."""
VISITS = (
    (OTHER_KEY + "\r", "1 done"),
    ("v", "CALL NOW", BACK),
    ("h", "KEYS HERE", BACK),
    ("w", "WHY", BACK),
    ("m", "MORE", BACK),
    ("s", "SKIP", BACK),
    ("l", "LATER", BACK),
    ("b", "BUCKETS", BACK),
    ("u", "UNDO", BACK),
    ("p", "PERSON", BACK),
    ("t", "TIME", BACK),
    ("z", "LOCKED", "open\r"),
    ("nwater is low\r", "The note is written"),
    ("gorchard hay\r", "> Orchard"),
    ("a", "AS ONE PEN", BACK),
    ("gmilk\r7.2", "Backspace", BACK * 3),
    ("r2\r", "PAST", "h", BACK, LEFT),
    ("r1\r", "PRETEND MORNING"),
    (RIGHT * 100, "CLOSING THE"),
    ("e", "END THE", BACK),
)
"""Keys, what they paint, the keys back: every kind of screen. Right goes through every step to the closing."""


def visit(wire: Wire) -> None:
    """Every screen, and two entries written."""
    for keys, painted, *back in VISITS:
        wire.press(keys)
        wire.painted_s(painted)
        for more in back:
            wire.pause(SETTLED_S)
            wire.press(more)
        wire.pause(SETTLED_S)


def at_first_frame_mb(command: Sequence[str], env: dict[str, str], *texts: str) -> float:
    """What a program has in RAM once its first frame stands. [MB]"""
    with Wire(command, env) as wire:
        wire.painted_s(*texts)
        wire.pause(SETTLED_S)
        return resident_mb(wire.pid)


def later_mb(env: dict[str, str]) -> tuple[float, float]:
    """What the program has in RAM a while after its first frame, and after all was visited. [MB]"""
    with Wire([PENWALK, *AFRESH], env) as wire:
        wire.painted_s(*FIRST_STEP)
        wire.pause(2 * LOADED_S)
        loaded = resident_mb(wire.pid)
        wire.press("\r")  # what the last person left for us is read
        wire.pause(SETTLED_S)
        visit(wire)
        return loaded, resident_mb(wire.pid)


def main() -> None:
    """Measure and tell."""
    say(load())
    found: dict[str, list[float]] = defaultdict(list)
    with TemporaryDirectory() as folder:
        env = environment(Path(folder))
        start_s([PENWALK, *AFRESH], env, *FIRST_STEP)  # the first start of all builds the farm
        for _ in range(int(sys.argv[1]) if len(sys.argv) > 1 else RUNS):
            found["bare"].append(at_first_frame_mb(ours("bare"), env, WORD))
            first = [sys.executable, "-c", NOTHING_LOADED, *AFRESH]
            found["at the first frame"].append(at_first_frame_mb(first, env, *FIRST_STEP))
            loaded, visited = later_mb(env)
            found["once loaded, no key pressed"].append(loaded)
            found["after every screen and two entries"].append(visited)
    bare = median(found["bare"])
    for name, mb in found.items():
        spread = f"n={len(mb)}  {min(mb):.1f} to {max(mb):.1f}"
        say(f"memory, {name:<36} {median(mb):6.1f} MB  / bare {median(mb) / bare:.2f}   {spread}")


if __name__ == "__main__":
    main()
