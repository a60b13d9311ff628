"""A book in a file is open once at a time, whichever process asks, however the other one ended."""

import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from store.book.desk import FileDesk
from store.book.errors import BookInUse, DamagedBook

HOLDER = """
import sys
from pathlib import Path
from store.book.desk import FileDesk
from store.book.errors import BookInUse
try:
    desk = FileDesk(Path(sys.argv[1]))
except BookInUse as error:
    print(error)
else:
    print("held", flush=True)
    sys.stdin.read()
"""


@contextmanager
def holder(place: Path) -> Iterator["subprocess.Popen[str]"]:
    """Another process that opens the book and holds it until it is told to go."""
    words = [sys.executable, "-c", HOLDER, str(place)]
    with subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as process:
        yield process
        process.kill()


def first_line(process: "subprocess.Popen[str]") -> str:
    """What another process says first; waits for it."""
    assert process.stdout is not None
    return process.stdout.readline().strip()


def test_a_book_is_opened_once_at_a_time(place: Path) -> None:
    """The second one hears why, and what to do."""
    with (
        closing(FileDesk(place)),
        pytest.raises(BookInUse, match=r"is open in another Penwalk\. Leave that one first \(Q\)\.$"),
    ):
        FileDesk(place)
    FileDesk(place).close()


def test_another_process_cannot_open_a_book_that_is_open_here(place: Path) -> None:
    """It says so in a sentence and goes."""
    with closing(FileDesk(place)), holder(place) as other:
        assert first_line(other) == f"The book {place} is open in another Penwalk. Leave that one first (Q)."


def test_a_book_that_another_process_holds_cannot_be_opened_until_that_one_dies(place: Path) -> None:
    """Killed without a goodbye, it leaves no lock behind."""
    with holder(place) as other:
        assert first_line(other) == "held"
        with pytest.raises(BookInUse):
            FileDesk(place)
        other.kill()
        other.wait()
        FileDesk(place).close()


def test_a_failed_opening_lets_the_lock_go(tmp_path: Path) -> None:
    """So that the same program can try again."""
    place = tmp_path / "text.penwalk"
    place.write_text("no book\n" * 200)
    for _ in range(2):
        with pytest.raises(DamagedBook):
            FileDesk(place)
    place.unlink()
    FileDesk(place, new=True).close()
