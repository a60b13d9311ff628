"""What one row alone cannot show to be wrong, or only the database knows: named as well, and nothing is written."""

from collections.abc import Callable
from pathlib import Path

import pytest

from store.book.desk import FileDesk
from store.book.errors import BookError, FolderError
from store.book.folder.take_in import new_book_from
from tests.farm import FOLDER
from tests.store.book.folders import change, copy_farm, edit, lines_of, mistakes, write_lines

Break = Callable[[Path], None]


def _both_subjects(folder: Path) -> None:
    change(folder, "feed_plan.csv", 2, id="a-new-one", pen_id="stall")


def _no_subject(folder: Path) -> None:
    change(folder, "feed_plan.csv", 2, id="a-new-one", animal_id="")


def _long_slot(folder: Path) -> None:
    change(folder, "feed_plan.csv", 2, id="a-new-one", slot="morning " * 5)


def _long_task_slot(folder: Path) -> None:
    change(folder, "task_as.csv", 2, id="a-new-one", slot="morning " * 5)


@pytest.mark.parametrize("spoil", [_both_subjects, _no_subject, _long_slot, _long_task_slot])
def test_what_only_the_database_would_refuse_is_named_too(folder: Path, file_desk: FileDesk, spoil: Break) -> None:
    """With its file and line, not as the database's own words."""
    spoil(folder)
    said = mistakes(folder, file_desk)
    assert said
    assert all(".csv line 2" in each for each in said)


@pytest.mark.parametrize(
    ("name", "cells"),
    [
        ("entry.csv", {"pen_id": "stall"}),
        ("entry.csv", {"feed_id": ""}),
        ("entry.csv", {"day": "", "step_id": "a-step"}),
        ("milked.csv", {"fate": ""}),
        ("milked.csv", {"milk_kg": ""}),
    ],
)
def test_half_a_fact_in_a_written_round_is_named(tmp_path: Path, name: str, cells: dict[str, str]) -> None:
    """Two subjects, none, a slot without a day, milk without a fate."""
    folder, place = copy_farm(tmp_path / "farm", past=True), tmp_path / "made.penwalk"
    lines = lines_of(folder / name)
    write_lines(folder / name, [{"step_id": "", **line} if name == "entry.csv" else line for line in lines])
    change(folder, name, 2, **cells)
    with pytest.raises(FolderError, match=rf"{name} line 2"):
        new_book_from(folder, place)


def test_an_entry_that_replaces_a_later_line_is_taken_in(tmp_path: Path) -> None:
    """Lines may stand in any order: a folder is a set of rows."""
    folder = copy_farm(tmp_path / "farm", past=True)
    lines = [{**line, "replaces_id": ""} for line in lines_of(folder / "entry.csv")]
    first = {**lines[0], "id": "corrected", "replaces_id": lines[0]["id"], "happened_at": "2026-03-04 09:00"}
    write_lines(folder / "entry.csv", [first, *lines])
    assert new_book_from(folder, tmp_path / "made.penwalk") > len(lines)


def test_a_mistake_leaves_no_new_book_behind(folder: Path, tmp_path: Path) -> None:
    """Neither the file nor what lies beside it."""
    change(folder, "weighing.csv", 3, holds_kg="much")
    with pytest.raises(FolderError):
        new_book_from(folder, tmp_path / "made.penwalk")
    assert list(tmp_path.iterdir()) == [folder]


def test_a_new_book_never_takes_the_place_of_one_that_is_there(tmp_path: Path) -> None:
    """A folder of another farm, imported as a new book over this one: the book stays as it is."""
    place = tmp_path / "farm.penwalk"
    new_book_from(FOLDER, place)
    before = place.read_bytes()
    other = copy_farm(tmp_path / "other")
    edit(other, "farm.toml", '"tumblewick"', '"hedgerow"')
    with pytest.raises(BookError):
        new_book_from(other, place)
    assert place.is_file()
    assert place.read_bytes() == before
