"""The farm's settings by sheet: what is rounded on the screen stays what it is, until somebody types it anew."""

import pytest

from store.book.drafts import RowDraft
from store.book.folder.settings import misfit
from store.book.opening import Book
from store.book.words import SettingName
from store.herd.settings import SettingsSheet
from store.herd.sheet import Wrong
from tests.farm import HandClock, morning
from tests.store.herd.filled import filled, register, write

EXACT = {
    SettingName.MEAL_LIMIT_KG: "2.26796185",
    SettingName.CHANGE_STEP_KG: "0.45359237",
    SettingName.HAY_LOSS_PERCENT: "15.0",
    SettingName.TURNOUT_ON: "05-01",
}
"""As a folder may have brought them."""


@pytest.fixture
def exact(book: Book, clock: HandClock) -> Book:
    """The small farm, with settings to the last place."""
    book.change([RowDraft("setting", {"name": name, "value": value}) for name, value in EXACT.items()])
    clock.move(minutes=1)
    return book


@pytest.mark.parametrize(("units", "shown"), [("metric", "2.27 kg"), ("us", "5.00 lb")])
def test_a_limit_to_the_last_place_is_shown_rounded_and_kept(exact: Book, units: str, shown: str) -> None:
    exact.change([RowDraft("setting", {"name": SettingName.UNITS, "value": units})])
    sheet = SettingsSheet(register(exact))
    assert {each.name: each.first for each in sheet.questions()}[SettingName.MEAL_LIMIT_KG] == shown
    assert sheet.rows(filled(sheet).answers()) == []


def test_only_what_is_typed_anew_is_written(exact: Book) -> None:
    sheet = SettingsSheet(register(exact))
    rows = sheet.rows(filled(sheet, **{SettingName.CURRENCY: "EUR"}).answers())
    assert [dict(row.values) for row in rows] == [{"name": SettingName.CURRENCY, "value": "EUR"}]


def test_pounds_that_are_typed_are_kept_as_exactly_as_they_were_meant(book: Book, clock: HandClock) -> None:
    write(book, SettingsSheet(register(book)), **{SettingName.MEAL_LIMIT_KG: "5 lb"})
    clock.move(minutes=1)
    assert morning(book).farm.meal_limit_kg == pytest.approx(5 * 0.45359237, abs=1e-9)


def test_what_is_lost_of_hay_is_asked_with_what_trials_found(book: Book) -> None:
    (asked,) = (each for each in SettingsSheet(register(book)).questions() if each.words == "hay that is lost")
    assert asked.hint == "% of it; in trials: cone feeder 3.5 to 5.3, ring feeder 6.1 to 20.5, no feeder 45"


RATION = {
    SettingName.FAT_MOST_PERCENT: ("5.5", "6"), SettingName.FORAGE_LEAST_PERCENT: ("60", "50"),
    SettingName.CHANGE_STEP_PERCENT: ("20", "25"), SettingName.CHANGE_STEP_DAYS: ("3", "1"),
    SettingName.COLD_MOST_PERCENT: ("40", "30"), SettingName.CALF_MILK_PERCENT: ("12", "15"),
    SettingName.DRY_DAYS: ("50", "60"), SettingName.CLOSE_UP_DAYS: ("14", "21"),
    SettingName.WEAN_STARTER_KG: ("1.5 kg", "1.00 kg"), SettingName.CHECKED_BY: ("Dr Wren", "nobody"),
}  # fmt: skip
"""By setting: what is typed, and what the hint says that it starts with."""


@pytest.mark.parametrize("name", RATION)
def test_a_limit_of_a_ration_says_what_it_starts_with_and_is_kept(
    book: Book, clock: HandClock, name: SettingName
) -> None:
    typed, starts = RATION[name]
    sheet = SettingsSheet(register(book))
    (asked,) = (each for each in sheet.questions() if each.name == name)
    assert starts in asked.hint
    assert asked.first == ""
    assert name is SettingName.CHECKED_BY or asked.hint.endswith("only a starting value")
    write(book, sheet, **{name: typed})
    clock.move(minutes=1)
    row = register(book).get("setting", name) or {}
    assert row["value"] == typed.removesuffix(" kg")
    assert misfit(name, row["value"]) is None


@pytest.mark.parametrize(
    ("name", "typed"),
    [(SettingName.FAT_MOST_PERCENT, "60"), (SettingName.DRY_DAYS, "60.5"), (SettingName.CLOSE_UP_DAYS, "99"),
     (SettingName.WEAN_STARTER_KG, "9 kg"), (SettingName.CHECKED_BY, "x" * 61)],
)  # fmt: skip
def test_a_limit_that_no_book_takes_is_refused_in_a_sentence(book: Book, name: SettingName, typed: str) -> None:
    with pytest.raises(Wrong) as problem:
        filled(SettingsSheet(register(book)), **{name: typed}).answers()
    assert problem.value.question == name
    assert str(problem.value).endswith(".")
