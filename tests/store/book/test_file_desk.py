"""A book in a file: durable, and left as it was where it cannot be opened."""

import errno
import shutil
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any
from uuid import UUID

import pytest

from store.book.desk import FileDesk
from store.book.errors import DamagedBook, NewerBook, NoBook
from store.book.migrating import migrate
from store.book.opening import Book, form_of, open_book
from store.round.confirm import done
from tests.farm import HandClock, hand, morning, step_of
from tests.store.book.tools import all_rows, count


def press(book: Book) -> UUID:
    """Enter at one step of the morning, over and over if need be; the new entry's id."""
    snapshot = morning(book)
    return book.append(done(hand(book, snapshot), step_of(snapshot, "Water trough runs", "task")))


@pytest.mark.parametrize(
    ("pragma", "value"),
    [
        ("journal_mode", "wal"),
        ("synchronous", 2),
        ("foreign_keys", 1),
        ("recursive_triggers", 1),
        ("busy_timeout", 5000),
    ],
)
def test_what_makes_a_book_durable_is_really_in_force(file_desk: FileDesk, pragma: str, value: str | int) -> None:
    """Asked of the connection itself, as a book is opened and after it was written. synchronous 2 is FULL."""
    for _ in range(2):
        assert list(file_desk.rows(f"PRAGMA {pragma}", {})) == [(value,)]
        press(Book(file_desk, HandClock()))


def test_an_entry_is_in_the_file_before_append_returns(book: Book, tmp_path: Path) -> None:
    """A copy of the file and its log, taken with the book still open, holds it."""
    id_ = press(book)
    for path in tmp_path.glob("bench.penwalk*"):
        shutil.copy(path, tmp_path / path.name.replace("bench", "copy"))
    with closing(sqlite3.connect(tmp_path / "copy.penwalk")) as copy:
        assert copy.execute("SELECT count(*) FROM entry WHERE id = ?", (id_.bytes,)).fetchone() == (1,)
        assert copy.execute("PRAGMA integrity_check").fetchone() == ("ok",)


def test_where_there_is_no_book_it_says_so(tmp_path: Path) -> None:
    """And makes none."""
    place = tmp_path / "none.penwalk"
    with pytest.raises(NoBook, match=r"^There is no farm book at .*none\.penwalk\.$"):
        open_book(str(place), HandClock())
    with pytest.raises(DamagedBook, match=r"cannot be opened: Is a directory\.$"):
        open_book(str(tmp_path), HandClock())
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("content", [b"", b"\n", b"milk\n", b"Fennel got two scoops\n" * 300, bytes(8192)])
def test_a_file_that_is_no_book_is_left_byte_for_byte(tmp_path: Path, content: bytes) -> None:
    """An empty file, a short one, a text, a disk full of zeros."""
    place = tmp_path / "other.penwalk"
    place.write_bytes(content)
    with pytest.raises(DamagedBook, match=r"other\.penwalk"):
        open_book(str(place), HandClock())
    assert place.read_bytes() == content


def test_another_programs_database_is_left_byte_for_byte(tmp_path: Path) -> None:
    """It is SQLite, but no book."""
    place = tmp_path / "other.penwalk"
    with closing(sqlite3.connect(place)) as other:
        other.executescript("CREATE TABLE sward (name TEXT); INSERT INTO sward VALUES ('clover');")
    before = place.read_bytes()
    with pytest.raises(DamagedBook, match=r"other\.penwalk"):
        open_book(str(place), HandClock())
    assert place.read_bytes() == before


def test_a_book_cut_short_is_said_in_a_sentence(place: Path) -> None:
    """Half of it is gone: it cannot be read, and what is left stays."""
    place.write_bytes(place.read_bytes()[: place.stat().st_size // 2])
    before = place.read_bytes()
    with pytest.raises(DamagedBook, match=r"farm\.penwalk cannot be (opened|read): "), closing(FileDesk(place)) as desk:
        all_rows(desk)
    assert place.read_bytes() == before


def test_a_newer_book_is_left_byte_for_byte(place: Path) -> None:
    """Whatever a newer form holds, this program would write it wrongly."""
    with closing(sqlite3.connect(place)) as newer:
        newer.execute("UPDATE alembic_version SET version_num = '9999'")
        newer.commit()
    before = place.read_bytes()
    with pytest.raises(NewerBook, match=r"has form 9999; this Penwalk knows forms up to .* Nothing was changed\."):
        open_book(str(place), HandClock())
    assert place.read_bytes() == before


def test_where_nothing_can_be_written_it_says_so(place: Path) -> None:
    """Something stands where the lock should be."""
    place.with_name(place.name + ".lock").mkdir()
    before = place.read_bytes()
    with pytest.raises(
        DamagedBook, match=r"^Nothing can be written beside the book .*farm\.penwalk: Is a directory\.$"
    ):
        open_book(str(place), HandClock())
    assert place.read_bytes() == before


def test_a_folder_that_is_only_to_be_read_is_said_in_a_sentence(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As the system says it of a disk mounted so."""

    as_ever = Path.open

    def only_read(self: Path, mode: str = "r", *words: Any, **more: Any) -> Any:
        if "a" in mode:
            raise OSError(errno.EROFS, "Read-only file system", str(self))
        return as_ever(self, mode, *words, **more)

    monkeypatch.setattr(Path, "open", only_read)
    with pytest.raises(DamagedBook, match=r"^Nothing can be written beside the book .*: Read-only file system\.$"):
        FileDesk(place)


def test_a_new_book_where_there_is_no_folder_is_said_in_a_sentence(tmp_path: Path) -> None:
    """And no folder is made."""
    with pytest.raises(DamagedBook, match="No such file or directory"):
        FileDesk(tmp_path / "nowhere" / "farm.penwalk", new=True)
    assert list(tmp_path.iterdir()) == []


def test_a_disk_that_is_full_is_said_in_a_sentence_and_nothing_is_written(book: Book) -> None:
    """The file may not grow any more; as soon as it may, the same key press is written."""
    book.desk.rows("PRAGMA max_page_count = 1", {})  # SQLite takes the pages there are, if that is more
    before, written = count(book.desk, "entry"), list[UUID]()
    full = r"^Nothing was written: database or disk is full\.$"
    with pytest.raises(DamagedBook, match=full):
        written.extend(press(book) for _ in range(1000))
    assert count(book.desk, "entry") == before + len(written)
    book.desk.rows("PRAGMA max_page_count = 100000", {})
    press(book)
    assert count(book.desk, "entry") == before + len(written) + 1


def test_a_new_desk_holds_nothing_until_it_is_given_a_form(tmp_path: Path) -> None:
    """No form is no book; with its form it is one."""
    with closing(FileDesk(tmp_path / "new.penwalk", new=True)) as desk:
        with pytest.raises(DamagedBook):
            form_of(desk)
        migrate(desk)
        assert form_of(desk)
