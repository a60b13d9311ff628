"""One key at a ration, from the press to the picture: python -m tests.bench.ration [presses]

Beside it the smallest Textual counter, a key at a time. The demo farm, on a real terminal: nothing
is missing there, so that every part of the balance is reckoned.
"""

import sys
from collections import defaultdict
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.keys import BACK
from tests.bench.proc import load
from tests.bench.start import FIRST_STEP, environment, ours, start_s
from tests.bench.step import LOADED_S, Times, press_s
from tests.bench.telling import Figures, ratio, say, tell
from tests.bench.wire import Wire
from tests.terminal.walking import PENWALK

PRESSES = 40
AFRESH = (PENWALK, "demo", "--afresh")
DOWN, UP = "\x1b[B", "\x1b[A"
THERE = "\rjfennel"
"""What was left for this round is read; at the soak nobody stands, so letters name her."""
KEYS = {
    "a digit": ("9", "[9_]"),
    "a character back": (BACK, "[3]"),
    "another feed": (DOWN, "[1]"),
    "and back": (UP, "[3]"),
}
"""What is pressed, and what it paints."""


def tell_keys(env: dict[str, str], presses: int) -> None:
    """The keys of the ration, the counter between."""
    times: Times = defaultdict(list)
    with Wire(ours("counter"), env) as counter, Wire(AFRESH, env) as demo:
        counter.painted_s("figure 0.")
        demo.painted_s(*FIRST_STEP)
        demo.pause(LOADED_S)
        demo.press(THERE)
        demo.painted_s("fennel")
        times["opening it"].append(press_s(demo, "\r", "dry matter"))
        for press in range(1, presses + 1):
            for name, (key, painted) in KEYS.items():
                times[name].append(press_s(demo, key, painted))
            times["counter"].append(press_s(counter, " ", f"figure {press}."))
    figures = {name: Figures(name, taken) for name, taken in times.items() if len(taken) > 1}
    tell(*figures.values())
    say(f"opening it / counter: {times['opening it'][0] / figures['counter'].p50_s:.2f}")
    for name in KEYS:
        say(f"{name} / counter: {ratio(figures[name], figures['counter'])}")


def main() -> None:
    """Measure and tell."""
    presses = int(sys.argv[1]) if len(sys.argv) > 1 else PRESSES
    say(load())
    with TemporaryDirectory() as folder:
        env = environment(Path(folder))
        start_s(AFRESH, env, *FIRST_STEP)  # the first start of all builds the farm
        tell_keys(env, presses)


if __name__ == "__main__":
    main()
