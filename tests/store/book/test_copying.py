"""A copy of the book on another disk: whole, read again, also while the round goes on; old ones thinned out."""

import shutil
from contextlib import closing
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.book.copying import EVERY_ONE, ONE_A_DAY, UNFINISHED, copies_begin, copies_of, copy_book, to_thin_out
from store.book.desk import FileDesk
from store.book.errors import DamagedBook, NoBook
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.round.confirm import done
from tests.farm import hand, morning, step_of
from tests.store.book.tools import all_rows
from tests.store.round.made import unhurried

NOW = datetime(2026, 3, 11, 8, 0, tzinfo=UTC)


def stick(tmp_path: Path) -> Path:
    """A folder that is not there yet."""
    return tmp_path / "stick" / "penwalk"


def test_a_copy_of_an_open_book_holds_every_row(book: Book, tmp_path: Path) -> None:
    """Also the step that was written the moment before."""
    found: Snapshot = morning(book)
    book.append(done(hand(book, found), step_of(found, "Feed room shut and chained", "task")))
    made = copy_book(Path(book.desk.place), stick(tmp_path), NOW, "bench")
    with closing(FileDesk(made.place)) as copy:
        assert all_rows(copy) == all_rows(book.desk)
    assert (made.rounds, made.newest) == (15, (date(2026, 3, 11), "morning"))
    assert made.place.parent == stick(tmp_path)


def test_a_copy_of_a_book_that_is_not_open_is_the_same(book: Book, tmp_path: Path) -> None:
    """And copying changes nothing of the book."""
    before, place = all_rows(book.desk), Path(book.desk.place)
    book.close()
    content = place.read_bytes()
    made = copy_book(place, stick(tmp_path), NOW, "bench")
    assert place.read_bytes() == content
    with closing(FileDesk(made.place)) as copy:
        assert all_rows(copy) == before


def test_without_a_book_there_is_nothing_to_copy(tmp_path: Path) -> None:
    """And no folder is made."""
    with pytest.raises(NoBook, match="no farm book"):
        copy_book(tmp_path / "none.penwalk", stick(tmp_path), NOW, "bench")
    assert not stick(tmp_path).exists()


def test_a_stick_that_cannot_be_written_is_said(book: Book, tmp_path: Path) -> None:
    """A file lies where the folder should be."""
    (tmp_path / "stick").write_text("not a folder")
    with pytest.raises(DamagedBook, match=r"No copy was made in .*stick"):
        copy_book(Path(book.desk.place), stick(tmp_path), NOW, "bench")


def test_a_copy_that_reads_otherwise_is_taken_away(book: Book, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A worn stick: what was written is not what is read."""
    monkeypatch.setattr("store.book.copying.CHECK", "SELECT 'row 7 missing from index'")
    with pytest.raises(DamagedBook, match="Take another stick"):
        copy_book(Path(book.desk.place), stick(tmp_path), NOW, "bench")
    assert list(stick(tmp_path).iterdir()) == []


def test_what_is_no_book_is_not_copied(tmp_path: Path) -> None:
    """A damaged file does not take the place of a good copy."""
    place = tmp_path / "farm.penwalk"
    place.write_bytes(b"SQLite format 3" + bytes(1000))
    with pytest.raises(DamagedBook, match="No copy was made"):
        copy_book(place, stick(tmp_path), NOW, "bench")
    assert list(stick(tmp_path).iterdir()) == []


def test_older_copies_are_thinned_and_nothing_else_is_touched(book: Book, tmp_path: Path) -> None:
    """Two copies of one old day become one; another book's copies and other files stay."""
    folder = stick(tmp_path)
    for days, hours in ((0, 1), (5, 1), (5, 2)):
        copy_book(Path(book.desk.place), folder, NOW - timedelta(days=days, hours=hours), "bench")
    others = [folder / name for name in ("other-20250101-070000.penwalk", "bench-notes.penwalk", f"x{UNFINISHED}")]
    for other in others:
        other.write_text("mine")
    made = copy_book(Path(book.desk.place), folder, NOW, "bench")
    assert made.thinned == 1
    assert sorted(copies_of(copies_begin(Path(book.desk.place), "bench"), folder).values()) == [
        NOW - timedelta(days=5, hours=1), NOW - timedelta(hours=1), NOW
    ]  # fmt: skip
    assert all(other.read_text() == "mine" for other in others)


def test_a_copy_of_another_book_of_the_same_name_is_never_taken_away(book: Book, tmp_path: Path) -> None:
    """On one stick: another book of the farm, another laptop's, and copies made before there was a mark."""
    folder, long_ago = stick(tmp_path), NOW - timedelta(days=30)
    (tmp_path / "away").mkdir()
    away = Path(shutil.copy(book.desk.place, tmp_path / "away" / "bench.penwalk"))
    kept = [copy_book(away, folder, long_ago, "bench").place]
    kept.append(copy_book(Path(book.desk.place), folder, long_ago + timedelta(hours=1), "kitchen").place)
    for other in (folder / "bench-20250101-070000.penwalk", folder / "bench-20250101-080000.penwalk"):
        kept.append(other)
        other.write_text("mine")
    for hours in (2, 3):
        copy_book(Path(book.desk.place), folder, long_ago + timedelta(hours=hours), "bench")
    made = copy_book(Path(book.desk.place), folder, NOW, "bench")
    assert made.thinned == 1
    assert all(each.exists() for each in kept)


@given(st.lists(st.integers(0, 200 * 24 * 3600), min_size=1, max_size=60, unique=True))
@unhurried
def test_thinning_keeps_the_newest_every_recent_one_and_one_of_each_day_before(ages_s: list[int]) -> None:
    """Whatever was copied when; and a second time nothing more goes."""
    made_at = [NOW - timedelta(seconds=age) for age in ages_s]
    gone = set(to_thin_out(made_at, NOW))
    kept = [at for at in made_at if at not in gone]
    assert max(made_at) in kept
    assert not any(NOW - at <= EVERY_ONE for at in gone)
    days = {at.date() for at in made_at if EVERY_ONE < NOW - at <= ONE_A_DAY}
    assert days <= {at.date() for at in kept}
    assert list(to_thin_out(kept, NOW)) == []
