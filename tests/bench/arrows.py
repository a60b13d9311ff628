"""How long the last press of a held arrow takes until it is painted: python -m tests.bench.arrows [runs]

Beside it the smallest Textual counter, a key at a time. The small farm of the tests, on a real terminal.
"""

import sys
from collections import defaultdict
from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.keys import A_SECOND, AFRESH, RIGHT, until_done
from tests.bench.proc import load
from tests.bench.start import FIRST_STEP, environment, ours, start_s
from tests.bench.step import LOADED_S, Times, press_s
from tests.bench.telling import Figures, ratio, say, tell
from tests.bench.wire import Wire

RUNS = 10
LEFT = "\x1b[D"
THERE_AND_BACK = (RIGHT * 14 + LEFT * 14) * 3 + RIGHT * 4
"""About three seconds of leafing, to the fifth step; the other step with a pail was passed long before."""
ARROWS = {"leafing through the steps": ("", THERE_AND_BACK, "on the scale")}
"""Keys to get there; the arrows; what only the last of them paints."""


def held_arrow_s(env: dict[str, str], there: str, arrows: str, text: str) -> float:
    """From the last press of a held arrow until it is painted. [s]"""
    with Wire(AFRESH, env) as wire:
        wire.painted_s(*FIRST_STEP)
        wire.pause(LOADED_S)
        wire.press(there)
        until_done(wire)
        wire.hold(one_by_one(arrows), 1 / A_SECOND)
        return wire.painted_s(text)


def one_by_one(arrows: str) -> Sequence[str]:
    """Arrows are three characters each."""
    return [arrows[at : at + 3] for at in range(0, len(arrows), 3)]


def tell_arrows(env: dict[str, str], runs: int) -> None:
    """The arrows, the counter between."""
    times: Times = defaultdict(list)
    with Wire(ours("counter"), env) as counter:
        counter.painted_s("figure 0.")
        for run in range(runs):
            for name, (there, arrows, text) in ARROWS.items():
                times[name].append(held_arrow_s(env, there, arrows, text))
            for press in range(5 * run + 1, 5 * run + 6):
                times["counter"].append(press_s(counter, " ", f"figure {press}."))
    figures = {name: Figures(name, taken) for name, taken in times.items()}
    tell(*figures.values())
    for name in ARROWS:
        say(f"held arrow, {name}, last press to painted / counter: {ratio(figures[name], figures['counter'])}")


def main() -> None:
    """Measure and tell."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else RUNS
    say(load())
    with TemporaryDirectory() as folder:
        env = environment(Path(folder))
        start_s(AFRESH, env, *FIRST_STEP)  # the first start of all builds the farm
        tell_arrows(env, runs)


if __name__ == "__main__":
    main()
