"""Whether keys land on their steps at any pace, and how much a held Enter confirms: python -m tests.bench.keys [runs]

Counts of what the book holds afterwards. The small farm of the tests, on a real terminal.
"""

import sys
from collections import Counter
from contextlib import suppress
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.proc import load
from tests.bench.start import FIRST_STEP, environment, start_s
from tests.bench.telling import say
from tests.bench.wire import Wire
from tests.terminal.walking import DEMO, MORNING, OTHER_KEY, PENWALK, entries

RUNS = 5
AFRESH = (PENWALK, *DEMO, "--afresh")
BACK, RIGHT = "\x7f", "\x1b[C"
WALK = "".join(OTHER_KEY + step.keys for step in MORNING)
"""Every key of the morning: amounts, picks, skips, and an Enter for each step."""
MEASURED = "".join(OTHER_KEY + (RIGHT if step.keys == "\r" else step.keys) for step in MORNING)
"""The same, but what Enter alone would write is left open."""
PLAIN = sum(step.keys == "\r" for step in MORNING)
PACES_S = {"in one write": 0.0, "10 ms a key": 0.01, "60 ms a key": 0.06}
HELD_S, A_SECOND = 3.0, 30
FIRST_REPEAT_S = 0.5


def until_done(wire: Wire) -> None:
    """Wait until every key so far has done its work: the help comes up behind it, and goes away."""
    wire.press("h")
    wire.painted_s("KEYS HERE")
    wire.press(BACK)
    wire.painted_s("leave")


def landed(env: dict[str, str], gap_s: float, *, from_exec: bool) -> tuple[int, int]:
    """Type the morning; how many of its entries the book then holds, and how many others."""
    with Wire(AFRESH, env) as wire:
        if not from_exec:
            wire.painted_s(*FIRST_STEP)
        wire.hold(WALK if gap_s else [WALK], gap_s)
        with suppress(AssertionError):  # where a key was lost the morning may end anywhere
            until_done(wire)
    held, meant = Counter(entries(env)), Counter(step.writes for step in MORNING)
    return (held & meant).total(), (held - meant).total()


def tell_landed(env: dict[str, str], runs: int) -> None:
    """Every pace, begun at the first frame and at the exec."""
    for pace, gap_s in PACES_S.items():
        for from_exec in (False, True):
            right, wrong = map(sum, zip(*(landed(env, gap_s, from_exec=from_exec) for _ in range(runs)), strict=True))
            since = "from exec on" if from_exec else "from the first frame on"
            say(f"{pace}, {since}: {right} of {runs * len(MORNING)} steps landed right, {wrong} others written")


def held_enter(env: dict[str, str], first_s: float) -> int:
    """Hold Enter at the first of the plain steps; how many it confirms. first_s: before the first repeat."""
    with Wire(AFRESH, env) as wire:
        wire.painted_s(*FIRST_STEP)
        wire.press(MEASURED + OTHER_KEY + "g\r")
        until_done(wire)
        before = len(entries(env))
        wire.press("\r")
        wire.pause(first_s)
        wire.hold("\r" * round((HELD_S - first_s) * A_SECOND), 1 / A_SECOND)
        until_done(wire)
    return len(entries(env)) - before


def main() -> None:
    """Measure and tell."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else RUNS
    say(load())
    with TemporaryDirectory() as folder:
        env = environment(Path(folder))
        start_s([PENWALK, *DEMO], env, *FIRST_STEP)
        tell_landed(env, runs)
        for first_s in (1 / A_SECOND, FIRST_REPEAT_S):
            confirmed = " ".join(str(held_enter(env, first_s)) for _ in range(runs))
            say(f"Enter held for {HELD_S:g} s, repeating after {first_s:.2f} s: confirmed {confirmed} of {PLAIN}")


if __name__ == "__main__":
    main()
