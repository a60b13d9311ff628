"""Mistakes of a whole folder: all of them are named at once, each with file, line and column; none is written."""

from pathlib import Path

import pytest

from store.book.desk import FileDesk
from store.book.folder.take_in import take_in
from tests.store.book.folders import PAST, add, change, edit, mistakes


def test_all_mistakes_of_all_files_are_named_at_once(folder: Path, file_desk: FileDesk) -> None:
    """Inside of rows, between rows and against the book."""
    change(folder, "weighing.csv", 2, id="w-1", holds_kg="much")
    change(folder, "weighing.csv", 3, id="w-2", holds_kg="501")
    change(folder, "pen_as.csv", 2, id="p-1", position="first", begins_at="soon")
    change(folder, "standing.csv", 3, id="s-1", pen_id="loft")
    change(folder, "person_as.csv", 2, name="Anna")
    edit(folder, "feed.csv", "id\n", "id,colour\n")
    assert [said.split(":")[0] for said in mistakes(folder, file_desk)] == [
        "pen_as.csv line 2, begins_at",
        "pen_as.csv line 2, position",
        "feed.csv line 1",
        "weighing.csv line 2, holds_kg",
        "weighing.csv line 3, holds_kg",
        "person_as.csv line 2",
        "standing.csv line 3, pen_id",
    ]


def test_an_unknown_column_is_named_with_the_ones_there_are(folder: Path, file_desk: FileDesk) -> None:
    """A misspelt column would else be left out without a word."""
    edit(folder, "pen_as.csv", "position", "positon")
    assert mistakes(folder, file_desk) == [
        "pen_as.csv line 1: found a column «positon»; "
        "expected one of id, begins_at, written_at, pen_id, name, position, in_use.",
        "pen_as.csv line 1: found no column «position»; expected it.",
    ]


def test_an_unknown_table_is_named_with_the_ones_there_are(folder: Path, file_desk: FileDesk) -> None:
    """A misspelt one would else be left out without a word."""
    (folder / "pens.csv").write_text("id\nloft\n", encoding="utf-8")
    (said,) = mistakes(folder, file_desk)
    assert said.startswith("pens.csv: found a table of this name; expected one of animal.csv, animal_as.csv, ")


def test_a_missing_column_is_named(folder: Path, file_desk: FileDesk) -> None:
    """Unless the record can do without it."""
    edit(folder, "weighing.csv", "id,measure_id", "id")
    for word in ("scoop,", "scoop,", "scoop,", "flake,"):
        edit(folder, "weighing.csv", f",{word}", ",")
    assert mistakes(folder, file_desk) == ["weighing.csv line 1: found no column «measure_id»; expected it."]


def test_a_missing_cell_and_one_too_many_are_named(folder: Path, file_desk: FileDesk) -> None:
    """A comma forgotten, a comma in a name."""
    edit(folder, "pen_as.csv", "Stall,10", "Stall")
    edit(folder, "pen_as.csv", "Orchard,30", "Orchard, lower,30")
    said = "found another number of cells; expected one for each column of line 1."
    assert mistakes(folder, file_desk) == [f"pen_as.csv line 2: {said}", f"pen_as.csv line 4: {said}"]


def test_an_id_that_stands_twice_is_named_with_both_places(folder: Path, file_desk: FileDesk) -> None:
    """A line copied and its id forgotten."""
    add(folder, "pen.csv", id="stall")
    assert mistakes(folder, file_desk) == [
        "pen.csv line 5, id: found «stall»; expected another, it stands in pen.csv line 2."
    ]


def test_a_known_id_with_other_content_is_refused(folder: Path, file_desk: FileDesk) -> None:
    """Nothing that is in the book is changed: not by an import either."""
    change(folder, "animal_as.csv", 3, name="Hasel")
    assert mistakes(folder, file_desk) == [
        "animal_as.csv line 3: the book holds this id with other content; expected a new id for a new row."
    ]


def test_a_file_that_is_no_text_is_named(folder: Path, file_desk: FileDesk) -> None:
    """Neither UTF-8 nor what an old spreadsheet writes."""
    (folder / "animal_as.csv").write_bytes(b"id,name\r\n\x81\x8d,\xff\r\n")
    (said,) = mistakes(folder, file_desk)
    assert said.startswith("animal_as.csv: cannot be read as text: ")
    assert said.endswith("Save it again as CSV, UTF-8.")


@pytest.mark.parametrize("content", ["", "\n", "name;position\n"])
def test_a_file_without_its_columns_is_named(folder: Path, file_desk: FileDesk, content: str) -> None:
    """Empty, or with another mark between the cells."""
    (folder / "pen.csv").write_text(content, encoding="utf-8")
    assert "pen.csv line 1: found no column «id»; expected it." in mistakes(folder, file_desk)


def test_the_folder_of_these_tests_is_a_good_one(folder: Path, file_desk: FileDesk) -> None:
    """Else the mistakes above would be its own."""
    assert take_in(folder, file_desk).rows == 0
    assert not any((folder / name).exists() for name in PAST)
