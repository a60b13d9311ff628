"""What would be, if: rows that are tried are seen by the one who looks, and are gone afterwards."""

import pytest

from store.book.clock import MICROSECOND
from store.book.desk import ReadingDesk
from store.book.drafts import RowDraft
from store.book.errors import DamagedBook
from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.register import read_register
from store.book.snapshot import Snapshot
from store.book.words import SettingName
from tests.farm import morning
from tests.store.book.tools import all_rows


def moved(book: Book, name: str) -> RowDraft:
    """An animal in no pen any more."""
    animal = next(each for each in morning(book).animals if each.name == name)
    return RowDraft("standing", {"animal_id": animal.id, "pen_id": None})


def heads(snapshot: Snapshot) -> int:
    """How many stand in a pen."""
    return sum(animal.pen_id is not None for animal in snapshot.animals)


def test_what_is_tried_is_seen_and_then_gone(desk_book: Book) -> None:
    """On a file and on a server alike: not a row is left."""
    before, rows = morning(desk_book), all_rows(desk_book.desk)
    now = desk_book.clock.now()
    tried = desk_book.trial(
        [moved(desk_book, "Hazel")], lambda desk: read_snapshot(desk, before.turn, desk_book.clock.now())
    )
    assert heads(tried) == heads(before) - 1
    assert all_rows(desk_book.desk) == rows
    assert heads(read_snapshot(desk_book.desk, before.turn, now)) == heads(before)


def test_a_trial_that_breaks_leaves_nothing_either(desk_book: Book) -> None:
    rows = all_rows(desk_book.desk)

    def broken(_: ReadingDesk) -> None:
        raise RuntimeError("in the middle")

    with pytest.raises(RuntimeError, match="in the middle"):
        desk_book.trial([moved(desk_book, "Hazel")], broken)
    assert all_rows(desk_book.desk) == rows
    desk_book.change([moved(desk_book, "Hazel")])
    assert all_rows(desk_book.desk) != rows


def test_what_cannot_be_written_cannot_be_tried(desk_book: Book) -> None:
    too_long = RowDraft("setting", {"name": SettingName.VET, "value": "x" * 201})
    with pytest.raises(DamagedBook, match="That cannot be written"):
        desk_book.trial([too_long], lambda _: None)


def test_a_change_is_all_or_nothing(desk_book: Book) -> None:
    """The first row would have done; the second does not."""
    rows = all_rows(desk_book.desk)
    too_long = RowDraft("setting", {"name": SettingName.VET, "value": "x" * 201})
    with pytest.raises(DamagedBook, match="Nothing was written"):
        desk_book.change([moved(desk_book, "Hazel"), too_long])
    assert all_rows(desk_book.desk) == rows


def test_the_register_holds_the_row_in_force_of_each_thing(desk_book: Book) -> None:
    """Of two weighings of one scoop the later one; what is written now counts from now on."""
    found = read_register(desk_book.desk, desk_book.clock.now())
    weighed = {row["holds_kg"] for row in found.all("weighing")}
    assert 0.675 in weighed
    assert 0.64 not in weighed
    desk_book.change([moved(desk_book, "Hazel")])
    after = read_register(desk_book.desk, desk_book.clock.now() + MICROSECOND)
    assert sum(row["pen_id"] is None for row in after.all("standing")) == 1
