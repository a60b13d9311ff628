"""From the key to the next step on the screen, the disk between: python -m tests.bench.step [mornings]

Beside it, key by key in one run: the smallest Textual counter, and one durable row written by sqlite3 alone.
Keys are 70 ms apart; an other key stands before each Enter, so that it counts.
"""

import sqlite3
import sys
from collections import defaultdict
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from tests.bench.start import FIRST_STEP, environment, ours
from tests.bench.telling import Figures, ratio, say, tell
from tests.bench.wire import Wire
from tests.terminal.walking import DEMO, MORNING, OTHER_KEY, PENWALK

MORNINGS = 20
APART_S = 0.07
LOADED_S = 1.5
"""After this long the libraries that write are loaded. [s]"""
ROW_BYTES = 400
"""About what a step takes in the book."""
TYPED = ("feed", "hay", "milk", "count")
"""Kinds of steps at which a digit is drawn large, with all that depends on it."""
Times = dict[str, list[float]]


@contextmanager
def raw_book(folder: Path) -> Iterator[sqlite3.Connection]:
    """A table that takes rows durably, set as the book is."""
    with closing(sqlite3.connect(folder / "raw", isolation_level=None)) as raw:
        raw.execute("PRAGMA journal_mode=WAL")
        raw.execute("PRAGMA synchronous=FULL")
        raw.execute("CREATE TABLE row (id INTEGER PRIMARY KEY, content BLOB)")
        yield raw


def raw_commit_s(raw: sqlite3.Connection) -> float:
    """One row, durably. [s]"""
    began_s = perf_counter()
    raw.execute("INSERT INTO row (content) VALUES (?)", (bytes(ROW_BYTES),))
    return perf_counter() - began_s


def press_s(wire: Wire, keys: str, *texts: str) -> float:
    """Keys, 70 ms after the last, until the texts are painted. [s]"""
    wire.pause(APART_S)
    wire.press(keys)
    return wire.painted_s(*texts)


def morning(demo: Wire, counter: Wire, raw: sqlite3.Connection, presses: int, times: Times) -> int:
    """Walk one pretend morning, the counter and the raw row between its keys; the counter's figure at the end."""
    for number, step in enumerate(MORNING, 1):
        nobody = step.writes.kind == "count" and step.keys == "\r"
        if step.writes.kind in TYPED and not nobody:
            times["digit"].append(press_s(demo, "9" if step.writes.kind == "milk" else "2", "Backspace"))
        else:
            demo.pause(APART_S)
            demo.press("2" if step.writes.kind == "udder" else OTHER_KEY)
        presses += 1
        times["counter"].append(press_s(counter, " ", f"figure {presses}."))
        demo.pause(APART_S)
        times["raw commit"].append(raw_commit_s(raw))
        which = "step" if number > 1 else "first step"
        times[which].append(press_s(demo, "\r", f"{number} done  0 skipped"))
    return presses


def main() -> None:
    """Measure and tell."""
    mornings = int(sys.argv[1]) if len(sys.argv) > 1 else MORNINGS
    times: Times = defaultdict(list)
    with TemporaryDirectory() as folder, raw_book(Path(folder)) as raw:
        env, presses = environment(Path(folder)), 0
        with Wire(ours("counter"), env) as counter:
            counter.painted_s("figure 0.")
            for _ in range(mornings):
                with Wire([PENWALK, *DEMO, "--afresh"], env) as demo:
                    demo.painted_s(*FIRST_STEP)
                    demo.pause(LOADED_S)
                    presses = morning(demo, counter, raw, presses, times)
                    demo.leave(OTHER_KEY + "q")
            counter.leave("q")
    figures = {name: Figures(name, taken) for name, taken in times.items()}
    tell(*figures.values())
    step, count, raw_row = figures["step"], figures["counter"], figures["raw commit"]
    say(f"step / counter: {ratio(step, count)}")
    p50 = (step.p50_s - 2 * count.p50_s) / raw_row.p50_s
    p95 = (step.p95_s - 2 * count.p95_s) / raw_row.p95_s
    say(f"(step - 2 x counter) / raw commit: {p50:.2f} (p95 {p95:.2f})")
    say(f"digit / counter: {ratio(figures['digit'], count)}")
    say(f"first step of a sitting / counter: {ratio(figures['first step'], count)}")


if __name__ == "__main__":
    main()
