"""What a step costs and proves, seen from below: the disk has it before the screen goes on."""

from itertools import pairwise
from pathlib import Path

from tests.terminal.tracing import traced, what_happened
from tests.terminal.walking import MORNING, entries, wait_for_step, walk

SHOWN_NEXT = ("heads you see", "2 heads: Fennel, Hazel", "LUCERNE PELLETS, RED", "on the scale")
"""What only the second step shows, the third, the fourth and the fifth."""
DISK_IS_SLOW_US = 1_500_000


def test_a_step_is_synced_to_the_disk_before_the_next_step_is_painted(
    strace: str, env: dict[str, str], tmp_path: Path
) -> None:
    with traced(strace, env, "-o", str(tmp_path / "trace")) as terminal:
        walk(terminal, last=len(SHOWN_NEXT))
        terminal.press("7.2")
        terminal.wait_for("kg milk")
        terminal.press("\x7f" * 3 + "q")
        assert terminal.left() == 0
    happened = what_happened(tmp_path / "trace")
    painted = [
        next(at for at, (what, text) in enumerate(happened) if what == "painted" and words in text)
        for words in SHOWN_NEXT
    ]
    synced = [at for at, (what, path) in enumerate(happened) if what == "synced" and path.endswith(".penwalk-wal")]
    assert any(at < painted[0] for at in synced), "the first step was painted before it was on the disk"
    for before, after in pairwise(painted):
        assert sum(before < at < after for at in synced) == 1, "a confirmed step costs exactly one sync"


def test_typing_and_leafing_sync_nothing(strace: str, env: dict[str, str], tmp_path: Path) -> None:
    with traced(strace, env, "-o", str(tmp_path / "trace")) as terminal:
        wait_for_step(terminal, 0)
        terminal.press("\x1b[C" + "3.5" + "\x7f" * 3 + "\x1b[C\x1b[D" + "s2\x7f" + "h")
        terminal.wait_for("KEYS HERE")
        terminal.press("q")
        assert terminal.left() == 0
    book_synced = [path for what, path in what_happened(tmp_path / "trace") if what == "synced"]
    assert not any(path.endswith("-wal") for path in book_synced)


def test_an_enter_held_while_the_disk_is_slow_confirms_exactly_one_step(strace: str, env: dict[str, str]) -> None:
    slow = ("-o", "/dev/null", "-e", f"inject=fdatasync:delay_enter={DISK_IS_SLOW_US}")
    with traced(strace, env, *slow) as terminal:
        wait_for_step(terminal, 0)
        terminal.hold("\r", times=20, gap_s=0.03)
        terminal.press("h")
        terminal.wait_for("KEYS HERE")
        terminal.press("q")
        terminal.left()
    assert entries(env) == [MORNING[0].writes]
