"""A copy put in the place of the book: checked first, the book before it kept, whole at every moment."""

import os
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import pytest

from store.book.copying import copy_book
from store.book.desk import FileDesk
from store.book.errors import BookError, BookInUse, DamagedBook, NewerBook, NoBook
from store.book.folder.take_in import new_book_from
from store.book.restoring import restore_book
from tests.farm import small_book
from tests.store.book.folders import copy_farm, edit
from tests.store.book.tools import Rows, all_rows
from tests.store.book.walking import walk_morning

NOW = datetime(2026, 3, 11, 8, 0, tzinfo=UTC)
KEPT = "bench-before-20260311-080000.penwalk"


class PowerCut(BaseException):
    """Nothing runs after it, not even what cleans up."""


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the book on a stick, made before the morning was walked."""
    (tmp_path / "made").mkdir()
    with closing(small_book(tmp_path / "made")) as book:
        return copy_book(Path(book.desk.place), tmp_path / "stick", NOW, "bench").place


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """The book, with the morning walked, closed."""
    with closing(small_book(tmp_path)) as book:
        walk_morning(book)
    return tmp_path / "bench.penwalk"


def rows(place: Path) -> Rows:
    """Every row of a book that is closed."""
    with closing(FileDesk(place)) as desk:
        return all_rows(desk)


def test_the_copy_becomes_the_book_and_the_book_before_it_is_kept(place: Path, copy: Path) -> None:
    """Both whole; the copy stays where it was."""
    before, wanted, stick = rows(place), rows(copy), copy.read_bytes()
    found = restore_book(copy, place, NOW)
    assert (found.rounds, found.newest) == (14, (date(2026, 3, 10), "evening"))
    assert found.kept == place.with_name(KEPT)
    assert rows(place) == wanted
    assert rows(found.kept) == before
    assert copy.read_bytes() == stick


def test_without_a_book_the_copy_becomes_one(tmp_path: Path, copy: Path) -> None:
    """On a new laptop: also the folder is new."""
    found = restore_book(copy, tmp_path / "new" / "farm.penwalk", NOW)
    assert found.kept is None
    assert rows(tmp_path / "new" / "farm.penwalk") == rows(copy)


def test_a_damaged_book_is_replaced_and_kept_as_it_was(place: Path, copy: Path) -> None:
    """That is what copies are for; its log is kept beside it."""
    place.write_bytes(b"SQLite format 3\0" + b"rubbish" * 999)
    place.with_name(place.name + "-wal").write_bytes(b"more of it")
    broken = place.read_bytes()
    found = restore_book(copy, place, NOW)
    assert rows(place) == rows(copy)
    assert found.kept is not None
    assert found.kept.read_bytes() == broken


def test_what_stands_only_in_the_log_of_the_book_is_kept_too(tmp_path: Path, copy: Path) -> None:
    """The power went while the round was walked: the newest steps are in the log alone."""
    with closing(small_book(tmp_path)) as book:
        walk_morning(book)
        before = all_rows(book.desk)
        (tmp_path / "cut").mkdir()
        for name in ("bench.penwalk", "bench.penwalk-wal"):
            shutil.copy(tmp_path / name, tmp_path / "cut" / name)
    found = restore_book(copy, tmp_path / "cut" / "bench.penwalk", NOW)
    assert found.kept is not None
    assert rows(found.kept) == before
    assert rows(tmp_path / "cut" / "bench.penwalk") == rows(copy)


def test_a_book_that_is_open_is_not_replaced(tmp_path: Path, copy: Path) -> None:
    """Leave the round first."""
    with closing(small_book(tmp_path)) as book, pytest.raises(BookInUse, match="open in another Penwalk"):
        restore_book(copy, Path(book.desk.place), NOW)
    assert not (tmp_path / KEPT).exists()


def test_what_is_no_good_copy_is_refused_and_the_book_stays(place: Path, copy: Path, tmp_path: Path) -> None:
    """None there, no book, cut off, newer, of another farm, the book itself."""
    folder = copy_farm(tmp_path / "hedgerow", past=True)
    edit(folder, "farm.toml", '"tumblewick"', '"hedgerow"')
    new_book_from(folder, tmp_path / "other.penwalk")
    (tmp_path / "text.penwalk").write_text("two scoops\n" * 100)
    (tmp_path / "cut.penwalk").write_bytes(copy.read_bytes()[:20_000])
    with closing(sqlite3.connect(shutil.copy(copy, tmp_path / "newer.penwalk"))) as newer:
        newer.execute("UPDATE alembic_version SET version_num = '9999'")
        newer.commit()
    before = rows(place)
    for name, error in (("none", NoBook), ("text", DamagedBook), ("cut", DamagedBook), ("newer", NewerBook),
                        ("other", BookError), ("bench", BookError)):  # fmt: skip
        with pytest.raises(error):
            restore_book(tmp_path / f"{name}.penwalk", place, NOW)
        assert rows(place) == before
    assert not (tmp_path / KEPT).exists()


CALLS = ((os, "replace"), (os, "fsync"), (os, "unlink"), (shutil, "copyfile"))


@pytest.fixture
def cut_at(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """The power goes before the so-manieth call that changes a disk; what is left to go is in the list."""
    left = [10**6]

    def counted(call: Callable[..., Any]) -> Callable[..., Any]:
        def act(*given: Any, **named: Any) -> Any:
            left[0] -= 1
            if left[0] < 0:
                raise PowerCut
            return call(*given, **named)

        return act

    for module, name in CALLS:
        monkeypatch.setattr(module, name, counted(getattr(module, name)))
    return left


@pytest.mark.parametrize("disk_call", range(20))
def test_a_power_cut_at_any_moment_leaves_the_old_or_the_new_book_whole(
    place: Path, copy: Path, cut_at: list[int], disk_call: int
) -> None:
    """And nothing that was there is lost; a second attempt finishes it."""
    before, wanted = rows(place), rows(copy)
    cut_at[0] = disk_call
    cut = False
    try:
        restore_book(copy, place, NOW)
    except PowerCut:
        cut = True
    cut_at[0] = 10**6
    assert rows(place) in (before, wanted)
    if rows(place) == wanted:
        assert rows(place.with_name(KEPT)) == before
    assert cut or rows(place) == wanted
    restore_book(copy, place, NOW)
    assert rows(place) == wanted


def test_the_power_is_cut_at_every_call_there_is(place: Path, copy: Path, cut_at: list[int]) -> None:
    """Else the test above would stop too early."""
    restore_book(copy, place, NOW)
    assert 10**6 - cut_at[0] < 20


def test_a_full_disk_is_said_and_the_book_stays(place: Path, copy: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No half copy is left."""
    before, there = rows(place), sorted(path.name for path in place.parent.iterdir())

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("store.book.restoring._copy_durably", full)
    with pytest.raises(DamagedBook, match=r"^Nothing was restored: No space left on device\. The book is as it was\.$"):
        restore_book(copy, place, NOW)
    assert rows(place) == before
    assert sorted(path.name for path in place.parent.iterdir()) == there
