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


TWICE = "both or neither of animal_id and pen_id; expected one of the two"
SUBJECTS = "animal_id, pen_id, task_id, feed_id; expected exactly one"
TURN = "day without slot, or slot without day; expected both or neither"
SEASON = "season_first without season_last, or season_last without season_first; expected both or neither"
FATE = "milk_kg without fate, or fate without milk_kg; expected both or neither"


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
    ("name", "cells", "said"),
    [
        ("entry.csv", {"pen_id": "stall"}, f"2 of {SUBJECTS}"),
        ("entry.csv", {"pen_id": "stall", "animal_id": "hazel"}, f"3 of {SUBJECTS}"),
        ("entry.csv", {"feed_id": ""}, f"0 of {SUBJECTS}"),
        ("entry.csv", {"day": ""}, TURN),
        ("entry.csv", {"slot": ""}, TURN),
        ("milked.csv", {"fate": ""}, FATE),
        ("milked.csv", {"milk_kg": ""}, FATE),
        ("task_due.csv", {"season_first": ""}, SEASON),
        ("task_due.csv", {"season_last": ""}, SEASON),
        ("feed_plan.csv", {"pen_id": "stall"}, TWICE),
        ("feed_plan.csv", {"animal_id": ""}, TWICE),
    ],
)
def test_half_a_fact_is_named_in_words(tmp_path: Path, name: str, cells: dict[str, str], said: str) -> None:
    """Two subjects, none, a slot without a day, milk without a fate: what was found and what is expected."""
    folder, place = copy_farm(tmp_path / "farm", past=True), tmp_path / "made.penwalk"
    change(folder, name, 2, **cells)
    with pytest.raises(FolderError) as error:
        new_book_from(folder, place)
    assert f"{name} line 2: found {said}." in str(error.value).splitlines()


def test_two_entries_that_replace_each_other_are_refused_in_a_sentence(tmp_path: Path) -> None:
    """A circle, which only a hand can write; no book is left behind."""
    folder, place = copy_farm(tmp_path / "farm", past=True), tmp_path / "made.penwalk"
    first, second, *rest = lines_of(folder / "entry.csv")
    first, second = first | {"replaces_id": second["id"]}, second | {"replaces_id": first["id"]}
    write_lines(folder / "entry.csv", [first, second, *rest])
    with pytest.raises(BookError):
        new_book_from(folder, place)
    assert not place.exists()


def test_a_long_chain_of_corrections_is_taken_in_whatever_the_order(tmp_path: Path) -> None:
    """The newest stands first, each replaces the one below it."""
    folder, place = copy_farm(tmp_path / "farm", past=True), tmp_path / "made.penwalk"
    lines = lines_of(folder / "entry.csv")
    chain = [lines[0] | {"id": f"again-{at}", "replaces_id": f"again-{at - 1}"} for at in range(20, 0, -1)]
    write_lines(folder / "entry.csv", [*chain, lines[0] | {"id": "again-0", "replaces_id": lines[0]["id"]}, *lines])
    assert new_book_from(folder, place).rows > len(lines) + 20


def test_an_entry_that_replaces_a_later_line_is_taken_in(tmp_path: Path) -> None:
    """Lines may stand in any order: a folder is a set of rows."""
    folder = copy_farm(tmp_path / "farm", past=True)
    lines = [{**line, "replaces_id": ""} for line in lines_of(folder / "entry.csv")]
    first = {**lines[0], "id": "corrected", "replaces_id": lines[0]["id"], "happened_at": "2026-03-04 09:00"}
    write_lines(folder / "entry.csv", [first, *lines])
    assert new_book_from(folder, tmp_path / "made.penwalk").rows > len(lines)


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
