"""Two books of one farm become one: whichever way, however often; another farm's book stays out."""

import re
from contextlib import closing
from pathlib import Path

import pytest

from store.book.desk import FileDesk, ServerDesk
from store.book.errors import BookError, BookInUse, DamagedBook, NoBook
from store.book.folder.put_out import put_out
from store.book.folder.take_in import new_book_from, take_in
from store.book.merging import Merged, merge
from store.book.opening import Book
from store.round.plan import plan
from tests.farm import HandClock, morning, small_book
from tests.store.book.folders import add, copy_farm, edit
from tests.store.book.tools import Rows, all_rows
from tests.store.book.walking import confirmed, walk_morning

BARN, KITCHEN = "barn", "kitchen"


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """The folder of both benches."""
    return tmp_path


@pytest.fixture
def benches(place: Path) -> dict[str, Rows]:
    """Two copies of the small farm's book in which one morning was walked, apart; closed. By bench: its rows."""
    found = {}
    for bench, clock in ((BARN, HandClock()), (KITCHEN, HandClock())):
        clock.move(minutes=0 if bench == BARN else 20)
        with closing(small_book(place, clock, bench)) as book:
            walk_morning(book)
            found[bench] = all_rows(book.desk)
    return found


def merged(place: Path, into: str, *others: str) -> Rows:
    """Every row of a bench's book after others were merged into it."""
    with closing(FileDesk(place / f"{into}.penwalk")) as desk:
        for other in others:
            merge(desk, place / f"{other}.penwalk")
        return all_rows(desk)


def union(*books: Rows) -> Rows:
    """The rows of several books by id, each once."""
    return {table: sorted({row for rows in books for row in rows[table]}) for table in books[0]}


def test_the_walked_books_differ(benches: dict[str, Rows]) -> None:
    """Each has entries that the other one lacks; all else they share."""
    ids = [{row[0] for row in rows["entry"]} for rows in benches.values()]
    assert len(ids[0] - ids[1]) == len(ids[1] - ids[0]) > 10
    assert benches[BARN]["animal_as"] == benches[KITCHEN]["animal_as"]


def test_a_merged_book_holds_every_row_of_both_once(place: Path, benches: dict[str, Rows]) -> None:
    """The union by id, and nothing else."""
    assert merged(place, BARN, KITCHEN) == union(*benches.values())


def test_either_way_gives_the_same_rows(place: Path, benches: dict[str, Rows]) -> None:
    """First this into that, then that into this."""
    assert merged(place, BARN, KITCHEN) == merged(place, KITCHEN, BARN) == union(*benches.values())


def test_a_second_time_adds_nothing(place: Path, benches: dict[str, Rows]) -> None:
    """It says so, too."""
    first = merged(place, BARN, KITCHEN)
    with closing(FileDesk(place / "barn.penwalk")) as desk:
        assert merge(desk, place / "kitchen.penwalk") == Merged(0, (), (), ())
        assert all_rows(desk) == first


def test_it_says_how_many_rows_came_in(place: Path, benches: dict[str, Rows]) -> None:
    """Entries and their lines."""
    expected = sum(map(len, union(*benches.values()).values())) - sum(map(len, benches[BARN].values()))
    with closing(FileDesk(place / "barn.penwalk")) as desk:
        assert merge(desk, place / "kitchen.penwalk").rows == expected


def test_in_whatever_order_three_books_are_merged_the_rows_are_the_same(place: Path, benches: dict[str, Rows]) -> None:
    """One that nobody walked is among them."""
    small_book(place, bench="phone").close()
    one, other = merged(place, BARN, "phone", KITCHEN), merged(place, "phone", KITCHEN, BARN)
    assert one == other


def test_the_other_book_is_only_read(place: Path, benches: dict[str, Rows]) -> None:
    """Byte for byte."""
    before = (place / "kitchen.penwalk").read_bytes()
    merged(place, BARN, KITCHEN)
    assert (place / "kitchen.penwalk").read_bytes() == before


def test_a_merged_book_can_be_written_at_once(place: Path, benches: dict[str, Rows]) -> None:
    """The desk is left as it was found: no transaction is open, the other book is let go."""
    with closing(FileDesk(place / "barn.penwalk")) as desk:
        merge(desk, place / "kitchen.penwalk")
        assert [row[1] for row in desk.rows("PRAGMA database_list", {})] == ["main"]
        book = Book(desk, HandClock(), BARN)
        book.clock = HandClock(morning(book).entries[-1].written_at)
        snapshot = morning(book)
        id_ = book.append(confirmed(book, snapshot, plan(snapshot)[0]))
        assert id_ in {entry.id for entry in morning(book).entries}
        FileDesk(place / "kitchen.penwalk").close()


@pytest.fixture
def hedgerow(place: Path) -> Path:
    """The book of another farm."""
    folder = copy_farm(place / "hedgerow", past=True)
    edit(folder, "farm.toml", '"tumblewick"', '"hedgerow"')
    new_book_from(folder, place / "hedgerow.penwalk")
    return place / "hedgerow.penwalk"


def test_the_book_of_another_farm_is_refused_and_both_stay_as_they_are(file_desk: FileDesk, hedgerow: Path) -> None:
    """In a sentence."""
    before, bytes_before = all_rows(file_desk), hedgerow.read_bytes()
    with pytest.raises(BookError, match=r"hedgerow\.penwalk is the book of another farm\. Nothing was merged\.$"):
        merge(file_desk, hedgerow)
    assert all_rows(file_desk) == before
    assert hedgerow.read_bytes() == bytes_before


def test_what_is_no_book_is_refused_in_a_sentence(file_desk: FileDesk, tmp_path: Path) -> None:
    """Nothing there, a text, a book that is open, this very book."""
    before, text = all_rows(file_desk), tmp_path / "text.penwalk"
    text.write_text("two scoops\n" * 100)
    with pytest.raises(NoBook):
        merge(file_desk, tmp_path / "none.penwalk")
    with pytest.raises(DamagedBook):
        merge(file_desk, text)
    with pytest.raises(BookInUse):
        merge(file_desk, Path(file_desk.place))
    with closing(small_book(tmp_path, bench="open")), pytest.raises(BookInUse):
        merge(file_desk, tmp_path / "open.penwalk")
    assert all_rows(file_desk) == before


def test_a_merge_that_fails_half_way_adds_nothing(place: Path, benches: dict[str, Rows]) -> None:
    """The other book has a figure whose entry is missing."""
    with closing(FileDesk(place / "kitchen.penwalk")) as spoilt:
        spoilt.connection.execute("PRAGMA foreign_keys=OFF")
        spoilt.connection.execute(
            "INSERT INTO fed (id, entry_id, position, feed_id, given_kg, typed)"
            " SELECT zeroblob(16), zeroblob(16), 0, feed_id, 1, '' FROM fed LIMIT 1"
        )
    with closing(FileDesk(place / "barn.penwalk")) as desk:
        with pytest.raises(DamagedBook, match=r"^Nothing was merged: FOREIGN KEY constraint failed\.$"):
            merge(desk, place / "kitchen.penwalk")
        assert all_rows(desk) == benches[BARN]
        walk_morning(Book(desk, HandClock(), BARN))


def test_a_damaged_book_is_found_before_anything_comes_in(place: Path, benches: dict[str, Rows]) -> None:
    """A figure that no key could have written."""
    with closing(FileDesk(place / "kitchen.penwalk")) as spoilt:
        spoilt.connection.execute("PRAGMA ignore_check_constraints=ON")
        spoilt.connection.execute(
            "INSERT INTO fed (id, entry_id, position, feed_id, given_kg, typed)"
            " SELECT zeroblob(16), entry_id, 0, feed_id, -1, '' FROM fed LIMIT 1"
        )
    with closing(FileDesk(place / "barn.penwalk")) as desk:
        with pytest.raises(DamagedBook, match=r"kitchen\.penwalk is damaged: CHECK constraint failed in fed\."):
            merge(desk, place / "kitchen.penwalk")
        assert all_rows(desk) == benches[BARN]


def test_two_books_that_use_one_id_for_two_things_are_refused_in_a_sentence(place: Path) -> None:
    """Both benches added `scoop-hay-1`, with another weight: which one is right only the keeper knows."""
    folders = {bench: copy_farm(place / f"farm-{bench}") for bench in (BARN, KITCHEN)}
    for bench, holds_kg in ((BARN, "0.2"), (KITCHEN, "0.3")):
        cells = {"measure_id": "scoop", "feed_id": "hay", "begins_at": "2026-03-11", "holds_kg": holds_kg}
        add(folders[bench], "weighing.csv", id="scoop-hay-1", **cells)
        with closing(small_book(place, bench=bench)) as book:
            take_in(folders[bench], book.desk)
    for into, other, mine, its in ((BARN, KITCHEN, 0.2, 0.3), (KITCHEN, BARN, 0.3, 0.2)):
        with closing(FileDesk(place / f"{into}.penwalk")) as desk:
            before = all_rows(desk)
            said = (
                "Nothing was merged: rows with one id but other content.\n"
                f"weighing: holds_kg «{mine}» here, «{its}» there."
            )
            with pytest.raises(BookError, match=f"^{re.escape(said)}$"):
                merge(desk, place / f"{other}.penwalk")
            assert all_rows(desk) == before


def test_a_book_on_a_server_takes_no_file_in_and_says_what_to_do_instead(
    server_desk: ServerDesk, place: Path, benches: dict[str, Rows]
) -> None:
    """Export, then import: that works there."""
    before = all_rows(server_desk)
    with pytest.raises(BookError, match=r"^Only a book in a file .* Export the other book, then import its folder\.$"):
        merge(server_desk, place / "kitchen.penwalk")
    assert all_rows(server_desk) == before
    with closing(FileDesk(place / "kitchen.penwalk")) as other:
        put_out(other, place / "out")
    take_in(place / "out", server_desk)
    assert all_rows(server_desk) == union(before, benches[KITCHEN])
