"""The other book of a merge is only read: on a stick that cannot be written, in an older form, its log beside it."""

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from store.book.desk import FileDesk
from store.book.errors import BookInUse, DamagedBook, NewerBook
from store.book.form import KNOWN_FORMS
from store.book.merging import merge
from store.book.migrating import migrate
from store.book.opening import form_of
from tests.farm import HandClock, small_book
from tests.store.book.folders import contents
from tests.store.book.test_merging import union
from tests.store.book.tools import Rows, all_rows
from tests.store.book.walking import walk_morning


@pytest.fixture
def stick(tmp_path: Path) -> Path:
    """An empty stick."""
    (tmp_path / "stick").mkdir()
    return tmp_path / "stick"


def walked(folder: Path) -> Rows:
    """A book in a folder in which the morning was walked; its rows."""
    clock = HandClock()
    clock.move(minutes=20)
    with closing(small_book(folder, clock, "kitchen")) as book:
        walk_morning(book)
        return all_rows(book.desk)


def took_in(desk: FileDesk, stick: Path, name: str = "kitchen.penwalk") -> Rows:
    """The rows after a merge from a stick that cannot be written; it is byte for byte as it was."""
    before = contents(stick)
    for path in (*stick.iterdir(), stick):
        path.chmod(path.stat().st_mode & 0o555)
    try:
        merge(desk, stick / name)
    finally:
        stick.chmod(0o755)
    assert contents(stick) == before
    return all_rows(desk)


def test_a_stick_that_cannot_be_written_is_read(file_desk: FileDesk, stick: Path) -> None:
    """No lock, no log, nothing beside it."""
    mine, its = all_rows(file_desk), walked(stick)
    (stick / "kitchen.penwalk.lock").unlink()
    assert took_in(file_desk, stick) == union(mine, its)
    assert [path.name for path in stick.iterdir()] == ["kitchen.penwalk"]


def test_what_stands_only_in_the_log_beside_a_copy_comes_in_too(
    file_desk: FileDesk, stick: Path, tmp_path: Path
) -> None:
    """The files of an open book were copied as they lay: the newest entries are in the log alone."""
    mine = all_rows(file_desk)
    with closing(small_book(tmp_path, HandClock(), "kitchen")) as book:
        walk_morning(book)
        its = all_rows(book.desk)
        for name in ("kitchen.penwalk", "kitchen.penwalk-wal"):
            shutil.copy(tmp_path / name, stick / name)
    bare = stick / "bare.penwalk"
    shutil.copy(stick / "kitchen.penwalk", bare)
    with closing(sqlite3.connect(bare)) as without_log:
        found = without_log.execute("SELECT count(*) FROM entry").fetchone()
    assert found[0] < len(its["entry"])
    bare.unlink()
    assert took_in(file_desk, stick) == union(mine, its)


@pytest.mark.parametrize("form", KNOWN_FORMS[:-1])
def test_a_book_of_an_older_form_is_read_and_keeps_its_form(file_desk: FileDesk, stick: Path, form: str) -> None:
    """It is brought to today's form in a copy; its own farm is another one, which is found only then."""
    old = stick / "kitchen.penwalk"
    with closing(FileDesk(old, new=True)) as desk:
        migrate(desk, form)
        (farm,) = file_desk.rows("SELECT id FROM farm", {})[0]
        desk.connection.execute("INSERT INTO farm (id) VALUES (?)", (farm,))
        desk.connection.execute("INSERT INTO animal (id) VALUES (zeroblob(16))")
    before = all_rows(file_desk)
    after = took_in(file_desk, stick)
    assert after == before | {"animal": sorted([*before["animal"], (bytes(16),)])}
    with closing(FileDesk(old)) as desk:
        assert form_of(desk) == form


def test_a_book_of_a_newer_form_is_refused_by_its_own_name(file_desk: FileDesk, stick: Path) -> None:
    """Not by that of the copy which was looked into."""
    walked(stick)
    with closing(sqlite3.connect(stick / "kitchen.penwalk")) as newer:
        newer.execute("UPDATE alembic_version SET version_num = '9999'")
        newer.commit()
    before = all_rows(file_desk)
    with pytest.raises(NewerBook, match=f"^The book {stick / 'kitchen.penwalk'} has form 9999"):
        merge(file_desk, stick / "kitchen.penwalk")
    assert all_rows(file_desk) == before


def test_a_book_that_is_cut_off_is_refused(file_desk: FileDesk, stick: Path) -> None:
    """The stick was pulled out while it was written."""
    walked(stick)
    whole = (stick / "kitchen.penwalk").read_bytes()
    (stick / "kitchen.penwalk").write_bytes(whole[: len(whole) // 2])
    before = all_rows(file_desk)
    with pytest.raises(DamagedBook, match=r"kitchen\.penwalk"):
        merge(file_desk, stick / "kitchen.penwalk")
    assert all_rows(file_desk) == before


def test_a_book_that_is_open_elsewhere_is_not_read(file_desk: FileDesk, stick: Path) -> None:
    """What is being written just now would be half of it."""
    with closing(small_book(stick, HandClock(), "kitchen")), pytest.raises(BookInUse, match="is open in another"):
        merge(file_desk, stick / "kitchen.penwalk")
