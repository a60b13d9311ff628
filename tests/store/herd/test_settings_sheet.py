"""The farm's settings by sheet: what is rounded on the screen stays what it is, until somebody types it anew."""

import pytest

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.words import SettingName
from store.herd.settings import SettingsSheet
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
