"""The share of a core while no key is pressed, on a real terminal: python -m tests.bench.idle [seconds]

At a step and at the bench between rounds. Beside them, over the same time, the smallest Textual program. Linux only.
"""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from tests.bench.bare import WORD
from tests.bench.proc import cpu_s, load
from tests.bench.start import FIRST_STEP, environment, ours
from tests.bench.telling import say
from tests.bench.wire import Wire
from tests.terminal.walking import DEMO, PENWALK

IDLE_S = 60.0
SETTLED_S = 5.0
"""After this long everything that is loaded behind the first frame is there. [s]"""


def idle_percent(wires: dict[str, Wire], idle_s: float) -> dict[str, float]:
    """How much of a core each program uses over a time without a key. [%]"""
    before_s = {name: cpu_s(wire.pid) for name, wire in wires.items()}
    began_s = perf_counter()
    while perf_counter() - began_s < idle_s:
        for wire in wires.values():
            wire.pause(0.5)
    took_s = perf_counter() - began_s
    return {name: 100 * (cpu_s(wire.pid) - before_s[name]) / took_s for name, wire in wires.items()}


def main() -> None:
    """Measure and tell."""
    idle_s = float(sys.argv[1]) if len(sys.argv) > 1 else IDLE_S
    say(load())
    with TemporaryDirectory() as folder:
        env = environment(Path(folder))
        other = environment(Path(folder) / "other")
        with (
            Wire([PENWALK, *DEMO], env) as demo,
            Wire([PENWALK, *DEMO], other) as bench,
            Wire(ours("bare"), env) as bare,
        ):
            for wire in (demo, bench):
                wire.painted_s(*FIRST_STEP)
            bare.painted_s(WORD)
            bench.press("i")
            bench.painted_s("BENCH")
            demo.pause(SETTLED_S)
            for name, percent in idle_percent({"demo": demo, "bench": bench, "bare": bare}, idle_s).items():
                say(f"idle over {idle_s:g} s, {name}: {percent:.2f} % of a core")


if __name__ == "__main__":
    main()
