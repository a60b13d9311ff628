"""What a keeper types of days, weights, hours and lengths, and how what cannot be read is said."""

from datetime import UTC, date, datetime

import pytest

from store.book.opening import Book
from store.book.words import Units
from store.herd.answers import a_weight, maybe_girth
from store.herd.days import a_day, an_hour, begins_at, maybe_day
from store.herd.moving import MovingSheet
from store.round.amount import Unreadable
from tests.store.herd.filled import animal, filled, register

TODAY = date(2026, 3, 11)


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("5 mar 2026", date(2026, 3, 5)), ("2026-03-05", date(2026, 3, 5)), ("5.3.2026", date(2026, 3, 5)),
        ("march 5 2026", date(2026, 3, 5)), ("5 march", date(2026, 3, 5)), ("today", TODAY),
        ("yesterday", date(2026, 3, 10)), ("8 weeks ago", date(2026, 1, 14)), ("3 years old", date(2023, 3, 11)),
    ],
)  # fmt: skip
def test_a_day_is_read_as_it_is_said(typed: str, day: date) -> None:
    assert a_day(typed, TODAY) == day


@pytest.mark.parametrize("typed", ["03/04/2026", "31.2.2026", "5 foo 2026", "soon", "2026-13-01", "0 mar 2026"])
def test_what_is_no_day_or_could_be_two_is_refused(typed: str) -> None:
    with pytest.raises(Unreadable, match=r"is no day\. Type it as 5 Mar 2026"):
        a_day(typed, TODAY)


@pytest.mark.parametrize(
    ("typed", "gone_by", "to_come"),
    [
        ("20 feb", date(2026, 2, 20), date(2027, 2, 20)),
        ("nov 20", date(2025, 11, 20), date(2026, 11, 20)),
        ("11 mar", TODAY, TODAY),
        ("29 feb", date(2024, 2, 29), date(2028, 2, 29)),
        ("3 weeks", date(2026, 2, 18), date(2026, 4, 1)),
        ("3 weeks ago", date(2026, 2, 18), date(2026, 2, 18)),
        ("in 3 weeks", date(2026, 4, 1), date(2026, 4, 1)),
        ("5 mar 2026", date(2026, 3, 5), date(2026, 3, 5)),
    ],
)
def test_a_day_without_a_year_is_the_last_or_the_next_by_what_is_asked(
    typed: str, gone_by: date, to_come: date
) -> None:
    """Born and calved lie behind; due and last on lie ahead."""
    assert maybe_day(TODAY)(typed) == gone_by
    assert maybe_day(TODAY, to_come=True)(typed) == to_come


@pytest.mark.parametrize("typed", ["9999 years", "in 9999 years", "0001-01-01", "1.1.9999", "9999-12-31"])
@pytest.mark.parametrize("zone", ["Asia/Tokyo", "America/Chicago"])
def test_a_day_beyond_every_calendar_is_said(typed: str, zone: str) -> None:
    for read in (maybe_day(TODAY), begins_at(datetime(2026, 7, 1, 12, tzinfo=UTC), zone)):
        with pytest.raises(Unreadable, match=r"is no day|is in the year"):
            read(typed)


def test_in_3_weeks_ago_is_no_day() -> None:
    with pytest.raises(Unreadable, match="is no day"):
        maybe_day(TODAY)("in 3 weeks ago")


def test_no_day_is_no_day() -> None:
    assert maybe_day(TODAY)("  ") is None


def test_from_a_day_on_is_its_midnight_on_the_farms_clock() -> None:
    """In July the farm's clock is an hour before UTC."""
    read = begins_at(datetime(2026, 7, 1, 12, tzinfo=UTC), "Europe/Dublin")
    assert read("2 Jul 2026") == datetime(2026, 7, 1, 23, tzinfo=UTC)
    assert read("1 jan") == datetime(2027, 1, 1, tzinfo=UTC)
    assert read("now") is None


def test_a_weight_is_read_in_the_farms_unit_or_its_own() -> None:
    assert a_weight("612", Units.METRIC, 0, 2000) == 612
    assert a_weight("612", Units.US, 0, 2000) == pytest.approx(612 * 0.45359237)
    assert a_weight("1350 lb", Units.METRIC, 0, 2000) == pytest.approx(1350 * 0.45359237)
    with pytest.raises(Unreadable, match="«5 l» is no weight"):
        a_weight("5 l", Units.METRIC, 0, 2000)
    with pytest.raises(Unreadable, match=r"«6120» is 6120 kg; expected 0.0 kg to 2000 kg"):
        a_weight("6120", Units.METRIC, 0, 2000)


def test_a_girth_is_read_in_centimetres_or_inches() -> None:
    assert maybe_girth(Units.METRIC)("201") == 201
    assert maybe_girth(Units.US)("79") == pytest.approx(79 * 2.54)
    assert maybe_girth(Units.METRIC)("79 in") == pytest.approx(79 * 2.54)


@pytest.mark.parametrize(("typed", "hour"), [("6:30", "06:30"), ("0630", "06:30"), ("17", "17:00"), ("", "")])
def test_a_time_of_day_is_read(typed: str, hour: str) -> None:
    assert an_hour(typed) == hour


def test_a_time_that_no_clock_shows_is_said() -> None:
    with pytest.raises(Unreadable, match="«25:00» is no time of day"):
        an_hour("25:00")


def test_a_day_stands_there_as_it_was_read(book: Book) -> None:
    """A year that was not typed is seen before anything is written; what was not typed stays as it stands."""
    sheet = MovingSheet(register(book), animal(book, "Sloe"))
    for typed, shown in (("1 jan", "1 Jan 2027"), ("in 3 weeks", "1 Apr 2026"), ("now", "now")):
        filling = filled(sheet, from_at=typed)
        filling.answers()
        assert filling.texts["from_at"] == shown
