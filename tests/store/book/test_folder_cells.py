"""A mistake in one cell: named with file, line, column, the word that was typed, and what is expected instead."""

from pathlib import Path

import pytest

from store.book.desk import FileDesk
from store.book.errors import FolderError
from store.book.folder.take_in import new_book_from
from store.book.words import Stage
from tests.store.book.folders import PAST, change, copy_farm, lines_of, mistakes, write_lines

NUMBER, DAY, TIME = "a number with a point, as 3.5", "a day as 2026-03-05", "a time as 2026-03-05 06:31"
UNSETTLED = "and nothing in the file settles it"


@pytest.mark.parametrize(
    ("name", "line", "column", "found", "expected"),
    [
        ("weighing.csv", 3, "holds_kg", "0,675", f"{NUMBER} from 0.001 to 500"),
        ("weighing.csv", 3, "holds_kg", "0.0009", f"{NUMBER} from 0.001 to 500"),
        ("weighing.csv", 3, "holds_kg", "nan", f"{NUMBER} from 0.001 to 500"),
        ("feed_plan.csv", 2, "due_kg", "500.5", f"{NUMBER} from 0 to 500"),
        ("feed_plan.csv", 2, "due_kg", "-1", f"{NUMBER} from 0 to 500"),
        ("feed_plan.csv", 2, "due_kg", "inf", f"{NUMBER} from 0 to 500"),
        ("pen_as.csv", 4, "position", "1000", "a whole number from 0 to 999"),
        ("pen_as.csv", 4, "position", "-1", "a whole number from 0 to 999"),
        ("pen_as.csv", 4, "position", "2.5", "a whole number from 0 to 999"),
        ("animal_as.csv", 2, "born_on", "2026-02-30", DAY),
        ("animal_as.csv", 2, "born_on", "2.4.2020", f"{DAY}: 2.4.2020 can be in month 2 or in month 4, {UNSETTLED}"),
        ("animal_as.csv", 2, "born_on", "31.4.2020", DAY),
        ("animal_as.csv", 2, "born_on", "13.14.2020", DAY),
        ("animal_as.csv", 2, "born_on", "2.4.20", DAY),
        ("weighing.csv", 3, "holds_kg", "1_0", f"{NUMBER} from 0.001 to 500"),
        ("animal_as.csv", 2, "stage", "milking", "one of: " + ", ".join(Stage)),
        ("animal_as.csv", 2, "begins_at", "Sunday", TIME),
        ("animal_as.csv", 2, "begins_at", "2026-03-05 25:00", TIME),
        ("animal_as.csv", 2, "begins_at", "", TIME),
        ("animal_as.csv", 2, "name", "x" * 61, "text of 1 to 60 letters"),
        ("animal_as.csv", 2, "name", "", "text of 1 to 60 letters"),
        ("animal_as.csv", 2, "tag", "x" * 41, "text of 0 to 40 letters"),
        ("task_as.csv", 2, "name", "x" * 121, "text of 1 to 120 letters"),
        ("feed_as.csv", 3, "soaked", "perhaps", "yes or no"),
        ("feed_as.csv", 3, "id", "", "an id: a word or a UUID"),
        ("feed_plan.csv", 3, "animal_id", "fenel", "an id that stands in animal.csv"),
        ("feed_plan.csv", 3, "feed_id", "oats", "an id that stands in feed.csv"),
        ("feed_plan.csv", 3, "measure_id", "shovel", "an id that stands in measure.csv"),
        ("standing.csv", 2, "pen_id", "loft", "an id that stands in pen.csv"),
        ("sharing.csv", 2, "calf_id", "hazle", "an id that stands in animal.csv"),
    ],
)
def test_a_mistake_in_a_cell_is_named(
    folder: Path, file_desk: FileDesk, name: str, line: int, column: str, found: str, expected: str
) -> None:
    """With the word that was typed, as it was typed."""
    change(folder, name, line, **{"id": "a-new-one", column: found})
    said = mistakes(folder, file_desk)
    assert f"{name} line {line}, {column}: found «{found}»; expected {expected}." in said


@pytest.mark.parametrize(
    ("column", "word"),
    [
        ("kind", "walk"),
        ("state", "perhaps"),
        ("person_id", "nobody"),
        ("happened_at", "at six"),
        ("replaces_id", "gone"),
    ],
)
def test_a_mistake_in_an_entry_is_named(tmp_path: Path, empty_desk: FileDesk, column: str, word: str) -> None:
    """An entry written by hand."""
    folder = copy_farm(tmp_path / "farm", past=True)
    write_lines(folder / "entry.csv", [{**lines_of(folder / "entry.csv")[0], "replaces_id": ""}])
    for name in PAST:
        if name != "entry.csv":
            (folder / name).unlink(missing_ok=True)
    change(folder, "entry.csv", 2, **{column: word})
    place = tmp_path / "made.penwalk"
    with pytest.raises(FolderError, match=rf"^entry\.csv line 2, {column}: found «{word}»; expected .*\.$"):
        new_book_from(folder, place)
    assert not place.exists()


@pytest.mark.parametrize("at", ["0001-01-01 00:00+05:00", "9999-12-31 23:59-05:00"])
def test_a_time_beyond_the_calendar_is_named(folder: Path, file_desk: FileDesk, at: str) -> None:
    """It is a time, but no calendar of ours holds it in UTC."""
    change(folder, "animal_as.csv", 2, id="a-new-one", begins_at=at)
    assert f"animal_as.csv line 2, begins_at: found «{at}»; expected {TIME}." in mistakes(folder, file_desk)
