"""Out to a folder and back: the same book, row for row; out again: the same folder, byte for byte."""

import csv
from pathlib import Path

import pytest
from sqlmodel import Session

from store.book.clock import EPOCH, new_id
from store.book.desk import Desk, FileDesk, ServerDesk
from store.book.errors import FolderError
from store.book.folder.cells import cells_of
from store.book.folder.put_out import put_out
from store.book.folder.take_in import take_in
from store.book.opening import Book
from store.book.records import RECORDS, Farm
from store.book.records.yard import Animal, AnimalAs
from store.book.words import Stage
from store.round.plan import plan
from tests.farm import FOLDER, MORNING, HandClock, morning
from tests.store.book.folders import contents, copy_farm, edit
from tests.store.book.tools import all_rows, table_of
from tests.store.book.walking import confirmed, walk_morning


def test_a_folder_comes_out_as_it_went_in(still_desk: Desk, bare: Desk, tmp_path: Path) -> None:
    """From either kind of desk, by way of either kind."""
    first, second = tmp_path / "first", tmp_path / "second"
    written = put_out(still_desk, first)
    assert take_in(first, bare).rows == written + len(lines_of_farm(first))
    assert all_rows(bare) == all_rows(still_desk)
    assert put_out(bare, second) == written
    assert contents(second) == contents(first)


def test_both_kinds_of_desk_write_the_same_folder(file_desk: FileDesk, server_desk: ServerDesk, tmp_path: Path) -> None:
    """Byte for byte."""
    put_out(file_desk, tmp_path / "filed")
    put_out(server_desk, tmp_path / "served")
    assert contents(tmp_path / "filed") == contents(tmp_path / "served")


def test_a_walked_morning_comes_out_and_back(desk: Desk, bare: Desk, tmp_path: Path) -> None:
    """With what was typed, corrected, skipped and undone; then both books show the same."""
    walk_morning(Book(desk, HandClock()))
    put_out(desk, tmp_path / "out")
    take_in(tmp_path / "out", bare)
    assert all_rows(bare) == all_rows(desk)
    assert morning(Book(bare, HandClock())) == morning(Book(desk, HandClock()))


def test_a_text_comes_back_as_it_was(desk: Desk, bare: Desk, tmp_path: Path) -> None:
    """Commas, quotes, letters of any kind, a broken line."""
    for name in (
        "Ash, the 2nd",
        'the "Old" one',
        "Élan Ďábel 牛",
        "two\nlines",
        "two\r\nlines",
        "a;b",
        "=1+1",
        "'",
        "a\tb",
    ):
        add_animal(desk, name)
    put_out(desk, tmp_path / "out")
    take_in(tmp_path / "out", bare)
    assert all_rows(bare) == all_rows(desk)


def test_a_lone_carriage_return_in_a_text_comes_back_as_it_was(file_desk: FileDesk, tmp_path: Path) -> None:
    """An old line end inside of a cell is a character like any other."""
    add_animal(file_desk, "old\rlines")
    put_out(file_desk, tmp_path / "out")
    assert take_in(tmp_path / "out", file_desk).rows == 0


def test_what_was_typed_with_a_blank_beside_it_comes_back_as_it_was(desk_book: Book, tmp_path: Path) -> None:
    """`3.5 ` was typed, the book keeps it so; out and in again it is the same row still."""
    snapshot = morning(desk_book)
    step = next(each for each in plan(snapshot) if each.kind == "milk")
    desk_book.append(confirmed(desk_book, snapshot, step, "3.5 "))
    put_out(desk_book.desk, tmp_path / "out")
    assert take_in(tmp_path / "out", desk_book.desk).rows == 0


def test_a_folder_holds_a_file_for_each_record_class_and_no_other(file_desk: FileDesk, tmp_path: Path) -> None:
    """With a column for each field, in order; the farm itself is farm.toml; rounds.txt is for people."""
    put_out(file_desk, tmp_path / "out")
    names = {f"{table_of(record)}.csv" for record in RECORDS if record is not Farm}
    assert contents(tmp_path / "out").keys() == names | {"farm.toml", "rounds.txt"}
    for record in RECORDS:
        if record is not Farm:
            with (tmp_path / "out" / f"{table_of(record)}.csv").open(encoding="utf-8", newline="") as file:
                assert next(csv.reader(file)) == list(cells_of(record))


def test_what_comes_out_is_csv_as_rfc_4180_has_it(file_desk: FileDesk, tmp_path: Path) -> None:
    """Lines end with CR LF; a cell with a comma, a quote or a line end stands in quotes, its quotes doubled."""
    add_animal(file_desk, 'the "Old", one')
    put_out(file_desk, tmp_path / "out")
    for path in (tmp_path / "out").glob("*.csv"):
        assert path.read_bytes().endswith(b"\r\n")
        assert path.read_bytes().count(b"\n") == path.read_bytes().count(b"\r\n"), path.name
    assert b',"the ""Old"", one",' in (tmp_path / "out" / "animal_as.csv").read_bytes()


def test_the_same_folder_twice_adds_nothing_the_second_time(bare: Desk) -> None:
    """And nothing is changed by it."""
    first = take_in(FOLDER, bare).rows
    before = all_rows(bare)
    assert first == sum(map(len, before.values())) > 300
    assert take_in(FOLDER, bare).rows == 0
    assert all_rows(bare) == before


def test_a_longer_folder_adds_what_is_new(desk: Desk, tmp_path: Path) -> None:
    """The way to change the farm: a new line, the old ones stay."""
    folder = copy_farm(tmp_path / "farm")
    edit(folder, "animal.csv", "id\n", "id\nmoss\n")
    columns, *rest = (folder / "animal_as.csv").read_text(encoding="utf-8").splitlines()
    line = "moss-1,moss,2026-03-01,Moss,,cattle,steer,2025-05-05,"
    (folder / "animal_as.csv").write_text("\n".join([columns, *rest, line]) + "\n", encoding="utf-8")
    assert take_in(folder, desk).rows == 2
    assert "Moss" in [animal.name for animal in morning(Book(desk, HandClock())).animals]


def test_a_file_saved_with_a_byte_order_mark_and_windows_lines_is_the_same_file(bare: Desk, tmp_path: Path) -> None:
    """As some editors save it."""
    folder = copy_farm(tmp_path / "farm", past=True)
    for path in folder.glob("*.csv"):
        path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"\n", b"\r\n"))
    assert take_in(FOLDER, bare).rows > take_in(folder, bare).rows == 0


def test_export_writes_nothing_over(file_desk: FileDesk, tmp_path: Path) -> None:
    """A folder with anything in it, or a file, is refused and left as it is; an empty folder is taken."""
    full, file = tmp_path / "full", tmp_path / "file"
    full.mkdir()
    (full / "mine.txt").write_text("mine")
    file.write_text("mine too")
    for place in (full, file):
        with pytest.raises(FolderError, match=r"is not empty\. Name a new folder: nothing is written over\.$"):
            put_out(file_desk, place)
    assert contents(full) == {"mine.txt": b"mine"}
    assert file.read_text() == "mine too"
    (tmp_path / "empty").mkdir()
    assert put_out(file_desk, tmp_path / "empty") > 0


def add_animal(desk: Desk, name: str) -> None:
    """One more animal."""
    animal, named = new_id(MORNING), new_id(MORNING)
    values = {"id": named, "animal_id": animal, "name": name, "stage": Stage.STEER}
    with Session(desk.engine()) as session, session.begin():
        session.add(Animal(id=animal))
        session.flush()
        session.add(AnimalAs.model_validate(values | {"begins_at": EPOCH, "written_at": EPOCH}))


def lines_of_farm(folder: Path) -> list[str]:
    """The rows that stand in farm.toml: the farm, and its settings."""
    lines = (folder / "farm.toml").read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line.split(" ")[0] in ("id", "name", "zone", "units", "evening_from")]
