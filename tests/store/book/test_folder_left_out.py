"""What a line written by hand may leave out: when it was written, and the name of its step."""

from contextlib import closing
from pathlib import Path

import pytest

from store.book.desk import FileDesk
from store.book.errors import FolderError
from store.book.folder.take_in import new_book_from
from tests.farm import built
from tests.store.book.folders import change, copy_farm, lines_of, write_lines
from tests.store.book.tools import Rows, all_rows


def rows_of(place: Path) -> Rows:
    """Every row of a closed book."""
    with closing(FileDesk(place)) as desk:
        return all_rows(desk)


def test_a_row_was_written_when_it_begins_or_happened_unless_it_says_otherwise(tmp_path: Path) -> None:
    """No file of the small farm says when it was written."""
    rows = rows_of(Path(new_copy(built(), tmp_path)))
    dated = [row for row in rows["animal_as"] if row[1] != row[2]]
    assert dated == []
    folder = copy_farm(tmp_path / "farm")
    change(folder, "animal_as.csv", 2, written_at="2026-02-02 10:00")
    new_book_from(folder, tmp_path / "late.penwalk")
    assert len([row for row in rows_of(tmp_path / "late.penwalk")["animal_as"] if row[1] != row[2]]) == 1


def new_copy(place: Path, folder: Path) -> Path:
    """A copy of a closed book."""
    copy = folder / "copy.penwalk"
    copy.write_bytes(place.read_bytes())
    return copy


def test_the_step_of_an_entry_is_the_one_the_plan_would_have(tmp_path: Path) -> None:
    """Left out for every kind but those of which one feed or animal has several steps: the very same rows."""
    folder = copy_farm(tmp_path / "farm", past=True)
    lines = [
        line | ({} if line["kind"] in ("soak", "look", "dose") else {"step_id": ""})
        for line in lines_of(folder / "entry.csv")
    ]
    assert {line["kind"] for line in lines if not line["step_id"]} == {
        "count", "hay", "feed", "apart", "udder", "milk", "task", "delivery", "stock", "loss", "weather"
    }  # fmt: skip
    write_lines(folder / "entry.csv", lines)
    new_book_from(folder, tmp_path / "made.penwalk")
    assert rows_of(tmp_path / "made.penwalk") == rows_of(Path(new_copy(built(), tmp_path)))


def test_the_step_of_a_soak_cannot_be_left_out_and_that_is_said(tmp_path: Path) -> None:
    """Whether it was looked into or begun, only the line can say."""
    folder = copy_farm(tmp_path / "farm", past=True)
    assert lines_of(folder / "entry.csv")[0]["kind"] == "soak"
    change(folder, "entry.csv", 2, step_id="")
    with pytest.raises(FolderError, match=r"^entry\.csv line 2, step_id: found «»; expected an id"):
        new_book_from(folder, tmp_path / "made.penwalk")


def test_what_was_typed_the_bench_and_the_reason_may_be_left_out_where_there_is_none(tmp_path: Path) -> None:
    """But the bench is somebody's: without one it is a mistake."""
    folder = copy_farm(tmp_path / "farm", past=True)
    change(folder, "entry.csv", 2, bench="")
    with pytest.raises(FolderError, match=r"^entry\.csv line 2, bench: "):
        new_book_from(folder, tmp_path / "made.penwalk")


def test_an_empty_column_that_is_not_known_does_no_harm(tmp_path: Path) -> None:
    """A folder of an older form has one; a spreadsheet leaves some at the end."""
    folder = copy_farm(tmp_path / "farm", past=True)
    lines = [line | {"quarters": " "} for line in lines_of(folder / "felt.csv")]
    write_lines(folder / "felt.csv", lines)
    new_book_from(folder, tmp_path / "made.penwalk")
    assert rows_of(tmp_path / "made.penwalk") == rows_of(Path(new_copy(built(), tmp_path)))
    write_lines(folder / "felt.csv", [*lines[:-1], lines[-1] | {"quarters": "left hind: clots"}])
    with pytest.raises(FolderError, match=r"felt\.csv line 1: found a column «quarters»; expected one of id"):
        new_book_from(folder, tmp_path / "again.penwalk")
