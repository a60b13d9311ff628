"""A disk without room: a plain sentence, what was typed is kept, and nothing is written in half."""

import resource
import shutil
import sqlite3
import subprocess
from contextlib import closing
from pathlib import Path

import pytest

from tests.farm import FOLDER
from tests.terminal.terminal import Terminal
from tests.terminal.walking import DEMO, MORNING, OTHER_KEY, PENWALK, demo, entries, wait_for_step, walk, walked_book

SMALL_BYTES = 100_000
"""Less than the demo's book needs."""

SENTENCE_LINES = 2
"""A plain sentence takes no more lines than this on a narrow terminal."""


def no_room(terminal: Terminal, book: Path) -> None:
    """From now on no file of the command may grow beyond the size of its log as it is now."""
    log = book.with_name(book.name + "-wal")
    resource.prlimit(terminal.pid, resource.RLIMIT_FSIZE, (log.stat().st_size, resource.RLIM_INFINITY))


def room_again(terminal: Terminal) -> None:
    """Files may grow again."""
    resource.prlimit(terminal.pid, resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))


def little_room() -> None:
    """For a command that begins: no file may grow large."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (SMALL_BYTES, resource.RLIM_INFINITY))


def is_whole(env: dict[str, str]) -> bool:
    """Every feed entry of the working copy has its lines, every line its entry, and the file is sound."""
    bare = "SELECT id FROM entry WHERE kind = 'feed' AND state <> 'open' AND id NOT IN (SELECT entry_id FROM fed)"
    with closing(sqlite3.connect(walked_book(env))) as book:
        sound = book.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        return sound and not book.execute(bare).fetchall() and not book.execute("PRAGMA foreign_key_check").fetchall()


def test_on_a_full_disk_an_enter_says_so_keeps_what_was_typed_and_writes_when_there_is_room(
    env: dict[str, str],
) -> None:
    with demo(env) as terminal:
        walk(terminal, last=3)
        no_room(terminal, walked_book(env))
        terminal.press("3.5\r")
        terminal.wait_for("Nothing was written")
        assert "= 3 1/2 scoops" in terminal.screen
        wait_for_step(terminal, 3)
        assert entries(env) == [step.writes for step in MORNING[:3]]
        room_again(terminal)
        terminal.press("\x1b[B\r")
        walk(terminal, first=4)
        terminal.press("q")
        assert terminal.left() == 0
    assert entries(env) == [step.writes for step in MORNING]
    assert is_whole(env)


def test_a_disk_that_stays_full_can_be_left_and_what_was_confirmed_is_there(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=6)
        no_room(terminal, walked_book(env))
        for keys in ("\r", "s1\r", "2\r"):
            terminal.press(OTHER_KEY)
            terminal.wait_until(lambda: "Nothing was written" not in terminal.screen, "a screen without the sentence")
            terminal.press(keys)
            terminal.wait_for("Nothing was written")
        terminal.press("\x7fq")
        assert terminal.left() == 0
        assert b"Traceback" not in terminal.wire
    assert entries(env) == [step.writes for step in MORNING[:6]]
    assert is_whole(env)


def test_a_kill_on_a_full_disk_loses_nothing_confirmed(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=6)
        no_room(terminal, walked_book(env))
        terminal.press(OTHER_KEY + "\r")
        terminal.wait_for("Nothing was written")
        terminal.kill()
    assert entries(env) == [step.writes for step in MORNING[:6]]
    with demo(env) as terminal:
        walk(terminal, first=6)
    assert is_whole(env)


def test_an_import_without_room_says_so_and_leaves_no_half_book(env: dict[str, str], tmp_path: Path) -> None:
    place = tmp_path / "farm.penwalk"
    with Terminal([PENWALK, "--book", str(place), "import", str(FOLDER)], env, preexec=little_room) as terminal:
        assert terminal.left() == 1
        assert len(terminal.said) <= SENTENCE_LINES
    assert list(tmp_path.glob("farm.penwalk*")) == []


def test_a_restore_or_a_merge_without_room_says_so_and_the_book_stays(env: dict[str, str], tmp_path: Path) -> None:
    place, other = walked_book(env), tmp_path / "copy.penwalk"
    shutil.copy(place, other)
    before = place.read_bytes()
    for command in ("restore", "merge"):
        with Terminal([PENWALK, "--book", str(place), command, str(other)], env, preexec=little_room) as terminal:
            assert terminal.left() == 1
            assert len(terminal.said) <= SENTENCE_LINES + 1
    assert place.read_bytes() == before
    assert list(place.parent.glob("*.part")) == []


def test_a_first_demo_without_room_says_so_in_words(env: dict[str, str]) -> None:
    shutil.rmtree(env["XDG_CACHE_HOME"])
    with Terminal([PENWALK, *DEMO], env, preexec=little_room) as terminal:
        assert terminal.left() == 1
        assert len(terminal.said) <= SENTENCE_LINES
    with demo(env) as terminal:
        wait_for_step(terminal, 0)


def test_a_fresh_demo_copy_without_room_says_so_in_words(env: dict[str, str]) -> None:
    walked_book(env).unlink()
    with Terminal([PENWALK, *DEMO], env, preexec=little_room) as terminal:
        assert terminal.left() == 1
        assert len(terminal.said) <= SENTENCE_LINES
    with demo(env) as terminal:
        wait_for_step(terminal, 0)


def test_a_device_without_room_is_told_apart_from_nothing_and_loses_nothing(
    env: dict[str, str], tmp_path: Path
) -> None:
    """A small file system of its own, filled to the last byte while the round is walked."""
    unshare = shutil.which("unshare")
    if (
        unshare is None
        or subprocess.run([unshare, "-rm", "mount", "-t", "tmpfs", "none", "/mnt"], check=False).returncode
    ):
        pytest.skip("unshare is missing here, or may not make a file system of its own")
    cache, kept = Path(env["XDG_CACHE_HOME"]), tmp_path / "kept"
    shutil.copytree(cache, kept)
    script = f"""mount -t tmpfs -o size=3m none {cache} && cp -r {kept}/. {cache} && trap '' TERM
    {PENWALK} {" ".join(DEMO)}; rm -f {cache}/ballast; cp -r {cache}/. {kept}"""
    with Terminal([unshare, "-rm", "sh", "-c", script], env) as terminal:
        walk(terminal, last=3)
        ballast = Path(f"/proc/{terminal.pid}/root{cache}/ballast")
        fill(ballast)
        terminal.press("3.5\r")
        terminal.wait_for("Nothing was written")
        assert "= 3 1/2 scoops" in terminal.screen
        ballast.unlink()
        terminal.press("\x1b[B\r")
        walk(terminal, first=4, last=6)
        terminal.press("q")
        assert terminal.left() == 0
    assert entries(env | {"XDG_CACHE_HOME": str(kept)}) == [step.writes for step in MORNING[:6]]


def fill(ballast: Path) -> None:
    """Write until not one byte more fits."""
    with ballast.open("wb", buffering=0) as file:
        for size in (4096, 1):
            try:
                while file.write(b"x" * size):
                    pass
            except OSError:
                continue
