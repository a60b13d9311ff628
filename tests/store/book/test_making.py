"""A new book: whole at its place or not there, whatever the disk does; never one with the log of another."""

import os
import shutil
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from store.book.beginning import begin_book
from store.book.errors import BookError, DamagedBook
from store.book.folder.take_in import new_book_from
from store.book.opening import open_book
from store.book.reading import read_facts
from store.book.restoring import restore_book
from store.book.words import SettingName
from tests.farm import FOLDER, HandClock, built, small_book
from tests.store.book.walking import walk_morning

SETTINGS = {
    SettingName.NAME: "Hollow Farm",
    SettingName.ZONE: "Europe/Dublin",
    SettingName.UNITS: "metric",
    SettingName.EVENING_FROM: "12",
}


class PowerCut(BaseException):
    """Nothing runs after it."""


def begun(place: Path) -> None:
    """Of a new farm."""
    begin_book(place, SETTINGS, "Ann", HandClock())


def imported(place: Path) -> None:
    """Of a folder."""
    new_book_from(FOLDER, place)


def restored(place: Path) -> None:
    """Of a copy."""
    restore_book(built(), place, datetime(2026, 3, 11, tzinfo=UTC))


@pytest.fixture(params=[begun, imported, restored])
def make(request: pytest.FixtureRequest) -> Callable[[Path], None]:
    """Each way in which a book comes to be."""
    found: Callable[[Path], None] = request.param
    return found


def test_the_log_of_a_book_that_was_moved_away_is_never_taken_into_a_new_one(
    tmp_path: Path, make: Callable[[Path], None]
) -> None:
    """It stays, and once it is moved to its book the new one is made."""
    with closing(small_book(tmp_path)) as book:
        walk_morning(book)
        (tmp_path / "cut").mkdir()
        shutil.copy(tmp_path / "bench.penwalk-wal", tmp_path / "cut" / "farm.penwalk-wal")
    place, log = tmp_path / "cut" / "farm.penwalk", tmp_path / "cut" / "farm.penwalk-wal"
    before = log.read_bytes()
    with pytest.raises(BookError, match=r"farm\.penwalk-wal lies there without its book"):
        make(place)
    assert log.read_bytes() == before
    assert not place.exists()
    log.rename(tmp_path / "cut" / "moved.penwalk-wal")
    make(place)
    open_book(str(place), HandClock()).close()


@pytest.mark.parametrize("make", [begun, imported])
def test_a_power_cut_before_it_is_whole_leaves_no_book_and_it_can_be_made_again(
    tmp_path: Path, make: Callable[[Path], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    """What was half made has another name, and does not stand in the way."""

    def cut(*_: object) -> None:
        raise PowerCut

    place = tmp_path / "farm.penwalk"
    with monkeypatch.context() as power:
        power.setattr("store.book.making.clear_away", lambda _: None)
        power.setattr("store.book.making._name", cut)
        with pytest.raises(PowerCut):
            make(place)
    assert not place.exists()
    assert (tmp_path / "farm.penwalk.half").exists()
    make(place)
    with closing(open_book(str(place), HandClock())) as book:
        assert read_facts(book.desk, book.clock.now()).name
    assert {path.name for path in tmp_path.iterdir()} <= {"farm.penwalk", "farm.penwalk.lock"}


@pytest.mark.parametrize("make", [begun, imported])
def test_below_a_file_no_book_can_be_made_and_that_is_said(tmp_path: Path, make: Callable[[Path], None]) -> None:
    (tmp_path / "letter").write_text("Dear Ann")
    with pytest.raises(BookError, match=r"^No book was made: .*letter"):
        make(tmp_path / "letter" / "farm.penwalk")


@pytest.mark.parametrize("make", [begun, imported])
def test_a_place_that_cannot_even_be_looked_at_is_said(
    tmp_path: Path, make: Callable[[Path], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A folder that is shut to this person."""

    def shut(path: Path) -> bool:
        raise PermissionError(13, "Permission denied", str(path))

    with monkeypatch.context() as closed:
        closed.setattr(Path, "exists", shut)
        with pytest.raises(BookError, match=r"^No book was made: Permission denied \(.*farm\.penwalk\)\.$"):
            make(tmp_path / "farm.penwalk")


@pytest.mark.parametrize("make", [begun, imported])
@pytest.mark.parametrize("most_kb", [100, 400, 600, 640, 660, 680])
def test_a_full_disk_is_said_and_leaves_nothing(tmp_path: Path, make: Callable[[Path], None], most_kb: int) -> None:
    """In a process of its own, whose files may not grow; else it is whole."""
    child = os.fork()
    if child == 0:
        os._exit(_made_on_a_small_disk(tmp_path / "farm.penwalk", make, most_kb))
    status = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    left = {path.name for path in tmp_path.iterdir()}
    assert (status, left) in ((SAID, set()), (MADE, {"farm.penwalk"}))
    if status == MADE:
        with closing(open_book(str(tmp_path / "farm.penwalk"), HandClock())) as book:
            assert read_facts(book.desk, book.clock.now()).name


MADE, SAID, BROKEN = 0, 1, 2


def _made_on_a_small_disk(place: Path, make: Callable[[Path], None], most_kb: int) -> int:
    import resource  # noqa: PLC0415 only in the child
    import signal  # noqa: PLC0415

    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (most_kb * 1024, most_kb * 1024))
    try:
        make(place)
    except DamagedBook:
        return SAID
    except BaseException:  # noqa: BLE001 anything but a sentence
        return BROKEN
    return MADE
