"""A setting or a slot that cannot be used is said at import, before a book is made of it."""

from pathlib import Path
from shutil import copytree

import pytest

from store.book.errors import FolderError
from store.book.folder.settings import HOLDS, misfit
from store.book.folder.take_in import new_book_from
from store.book.words import SettingName
from tests.farm import FOLDER


@pytest.mark.parametrize(
    ("name", "value", "expected"),
    [
        ("air", "warm", "one of: cold, mild, hot"),
        ("zone", "Europe/Dubln", "a time zone as Europe/Dublin"),
        ("evening_from", "noon", "an hour from 4 to 23"),
        ("meal_limit_kg", "0", "kilograms above 0"),
        ("units", "stone", "one of: metric, us"),
        ("dialect", "irish", "one of: british, american"),
        ("morning_at", "24:00", "a time of day as 06:30"),
        ("evening_at", "5 pm", "a time of day as 06:30"),
        ("change_step_kg", "-1", "kilograms above 0, with a point, as 3.5"),
        ("lead_days", "61", "whole days from 0 to 60"),
        ("lead_days", "7.5", "whole days from 0 to 60"),
        ("turnout_on", "02-30", "a month and a day as 04-20"),
        ("turnout_on", "20-04", "a month and a day as 04-20"),
        ("hay_loss_percent", "60.5", "percent from 0 to 60"),
        ("coat", "thick", "one of: wet or summer, dry autumn, dry winter, dry heavy winter"),
        ("currency", "", "text of 1 to"),
        ("currency", "shillings", "text of 1 to 8 letters"),
    ],
)
def test_a_setting_that_cannot_be_used_is_refused(tmp_path: Path, name: str, value: str, expected: str) -> None:
    folder = Path(copytree(FOLDER, tmp_path / "farm"))
    with (folder / "setting.csv").open("a", encoding="utf-8") as file:
        file.write(f"new,{name},{value},2026-03-01\n")
    with pytest.raises(FolderError, match=expected):
        new_book_from(folder, tmp_path / "book")
    assert not (tmp_path / "book").exists()


@pytest.mark.parametrize(
    ("name", "value"),
    [
        (SettingName.DIALECT, "american"),
        (SettingName.MORNING_AT, "06:30"),
        (SettingName.EVENING_AT, "23:59"),
        (SettingName.CHANGE_STEP_KG, "0.5"),
        (SettingName.LEAD_DAYS, "0"),
        (SettingName.LEAD_DAYS, "60"),
        (SettingName.TURNOUT_ON, "04-20"),
        (SettingName.TURNOUT_ON, "02-29"),
        (SettingName.HAY_LOSS_PERCENT, "12.5"),
        (SettingName.COAT, "dry winter"),
        (SettingName.CURRENCY, "€"),
    ],
)
def test_a_setting_that_can_be_used_is_taken(name: SettingName, value: str) -> None:
    assert misfit(name, value) is None


def test_every_setting_says_what_it_holds() -> None:
    """Else an import of such a row would break instead of being read."""
    assert set(HOLDS) == set(SettingName)


def test_a_slot_that_no_round_has_is_refused(tmp_path: Path) -> None:
    folder = Path(copytree(FOLDER, tmp_path / "farm"))
    plans = (folder / "feed_plan.csv").read_text(encoding="utf-8").replace("morning", "Morning", 1)
    (folder / "feed_plan.csv").write_text(plans, encoding="utf-8")
    with pytest.raises(FolderError, match="slot «Morning»; expected one of: morning, midday, evening, night"):
        new_book_from(folder, tmp_path / "book")
