"""A setting or a slot that cannot be used is said at import, before a book is made of it."""

from pathlib import Path
from shutil import copytree

import pytest

from store.book.errors import FolderError
from store.book.folder.take_in import new_book_from
from tests.farm import FOLDER


@pytest.mark.parametrize(
    ("name", "value", "expected"),
    [
        ("air", "warm", "one of: cold, mild, hot"),
        ("zone", "Europe/Dubln", "a time zone as Europe/Dublin"),
        ("evening_from", "noon", "an hour from 4 to 23"),
        ("meal_limit_kg", "0", "kilograms above 0"),
        ("units", "stone", "one of: metric, us"),
    ],
)
def test_a_setting_that_cannot_be_used_is_refused(tmp_path: Path, name: str, value: str, expected: str) -> None:
    folder = Path(copytree(FOLDER, tmp_path / "farm"))
    with (folder / "setting.csv").open("a", encoding="utf-8") as file:
        file.write(f"new,{name},{value},2026-03-01\n")
    with pytest.raises(FolderError, match=expected):
        new_book_from(folder, tmp_path / "book")
    assert not (tmp_path / "book").exists()


def test_a_slot_that_no_round_has_is_refused(tmp_path: Path) -> None:
    folder = Path(copytree(FOLDER, tmp_path / "farm"))
    plans = (folder / "feed_plan.csv").read_text(encoding="utf-8").replace("morning", "Morning", 1)
    (folder / "feed_plan.csv").write_text(plans, encoding="utf-8")
    with pytest.raises(FolderError, match="slot «Morning»; expected one of: morning, midday, evening, night"):
        new_book_from(folder, tmp_path / "book")
