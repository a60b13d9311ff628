"""What is told of a whole book is the same on both kinds of desk: slips, and what benches wrote differently."""

from pathlib import Path

from store.book.contradictions import contradictions
from store.book.desk import FileDesk, ServerDesk
from store.book.folder.put_out import put_out
from store.book.folder.take_in import take_in
from store.book.listing import names_of
from store.book.opening import Book
from store.book.reading.yard import read_yard
from tests.farm import MORNING, HandClock, hand, morning, step_of
from tests.store.keys import pressed


def test_names_and_what_is_looked_over_are_the_same(file_desk: FileDesk, server_desk: ServerDesk) -> None:
    """Weights, volumes, deliveries, tags."""
    assert read_yard(file_desk, MORNING) == read_yard(server_desk, MORNING)
    assert len(read_yard(server_desk, MORNING).weighed) > 0
    assert names_of(file_desk) == names_of(server_desk)


def test_a_milking_that_two_benches_weighed_contradicts_itself_the_same(
    file_desk: FileDesk, server_desk: ServerDesk, tmp_path: Path
) -> None:
    """One on the server, one in a file: on the server the file comes in as a folder."""
    clock = HandClock()
    clock.move(minutes=20)
    for book, typed in ((Book(file_desk, HandClock(), "barn"), "7.4"), (Book(server_desk, clock, "kitchen"), "6.4")):
        seen = morning(book)
        book.append(pressed(hand(book, seen), step_of(seen, "Fennel", "milk"), typed))
    for desk, name in ((file_desk, "barn"), (server_desk, "kitchen")):
        put_out(desk, tmp_path / name)
    take_in(tmp_path / "barn", server_desk)
    take_in(tmp_path / "kitchen", file_desk)
    (found,) = contradictions(server_desk)
    assert (found,) == contradictions(file_desk)
    assert [version.bench for version in found.versions if version.counts] == ["kitchen"]
