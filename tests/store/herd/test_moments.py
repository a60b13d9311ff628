"""Moments as they are typed: that have been, that lie between two, that are to come; also where the clock changes."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.book.turn import local
from store.herd.moments import Happened, happened, to_come
from store.round.amount import Unreadable
from tests.store.round.made import unhurried

DUBLIN = "Europe/Dublin"
NOW = "2026-03-11 06:31"


def utc(text: str) -> datetime:
    """A moment, as `2026-03-29 00:59`."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def read(text: str, now: str = NOW) -> tuple[str, str]:
    """From when to when, in UTC; the same twice where it was one moment."""
    found = happened(text, utc(now), DUBLIN)
    return f"{found.earliest:%d %H:%M}", f"{found.at:%d %H:%M}"


@pytest.mark.parametrize(
    ("text", "since", "at"),
    [
        ("6:10", "11 06:10", "11 06:10"),
        ("0610", "11 06:10", "11 06:10"),
        ("at 6.10", "11 06:10", "11 06:10"),
        ("now", "11 06:31", "11 06:31"),
        ("23:30", "10 23:30", "10 23:30"),
        ("yesterday 22:00", "10 22:00", "10 22:00"),
        ("02:30-05:50", "11 02:30", "11 05:50"),
        ("between 02:30 and 05:50", "11 02:30", "11 05:50"),
        ("from 2:30 to 5:50", "11 02:30", "11 05:50"),
        ("22:00 - 02:30", "10 22:00", "11 02:30"),
        ("yesterday 22:00-02:30", "10 22:00", "11 02:30"),
        ("yesterday 5:00-6:00", "10 05:00", "10 06:00"),
        ("5 Mar 02:30 to 05:50", "05 02:30", "05 05:50"),
        ("yesterday", "10 00:00", "10 23:59"),
        ("today", "11 00:00", "11 06:31"),
        ("6:10-6:10", "11 06:10", "11 06:10"),
    ],
)
def test_what_has_been_is_read(text: str, since: str, at: str) -> None:
    assert read(text) == (since, at)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("soon", "«soon» is no time"),
        ("25:00", "is no time"),
        ("6:7", "is no time"),
        ("6:10-", "«6:10-» is no time"),
        ("1:10-2:10-3:10", "is no time"),
        ("05:50-02:30", "Type the earlier one first"),
        ("today 6:50", "still to come"),
        ("today 5:50-6:50", "Type the earlier one first"),
        ("tomorrow", "still to come"),
        ("some day 6:10", "is no day"),
    ],
)
def test_what_cannot_have_been_is_said(text: str, words: str) -> None:
    with pytest.raises(Unreadable, match=words):
        happened(text, utc(NOW), DUBLIN)


@pytest.mark.parametrize(
    ("now", "text", "since", "at"),
    [
        # The clock goes back on 25 October 2026: 01:00 to 02:00 comes twice.
        ("2026-10-25 06:00", "1:30", "25 01:30", "25 01:30"),
        ("2026-10-25 00:40", "1:30", "25 00:30", "25 00:30"),
        ("2026-10-25 06:00", "1:15-1:45", "25 00:15", "25 01:45"),
        ("2026-10-25 06:00", "00:30-05:50", "24 23:30", "25 05:50"),
        # It goes on on 29 March 2026: 01:00 to 02:00 is left out.
        ("2026-03-29 06:00", "1:30", "29 01:30", "29 01:30"),
        ("2026-03-29 06:00", "00:30-05:50", "29 00:30", "29 04:50"),
    ],
)
def test_where_the_clock_changes_a_time_between_two_is_the_longer_one(now: str, text: str, since: str, at: str) -> None:
    assert read(text, now) == (since, at)


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("in 2 h", "11 08:31"),
        ("in 30 min", "11 07:01"),
        ("in 1 h 30", "11 08:01"),
        ("1 1/2 hours", "11 08:01"),
        ("in 3 days", "14 06:31"),
        ("at 14:30", "11 14:30"),
        ("6:10", "12 06:10"),
        ("tomorrow 6:30", "12 06:30"),
    ],
)
def test_what_is_to_come_is_read(text: str, at: str) -> None:
    assert f"{to_come(text, utc(NOW), DUBLIN):%d %H:%M}" == at


@pytest.mark.parametrize("text", ["", "2", "soon", "in 2 kg", "today 6:10", "in 99 days", "yesterday 6:10", "in 0 h"])
def test_what_is_not_to_come_is_said(text: str) -> None:
    with pytest.raises(Unreadable, match="in 30 min"):
        to_come(text, utc(NOW), DUBLIN)


def test_hours_are_hours_also_in_the_night_when_the_clock_changes() -> None:
    assert to_come("in 2 h", utc("2026-10-25 00:30"), DUBLIN) == utc("2026-10-25 02:30")
    assert to_come("1:30", utc("2026-10-25 00:40"), DUBLIN) == utc("2026-10-25 01:30")


MOMENTS = st.datetimes(datetime(2020, 1, 1), datetime(2035, 1, 1), timezones=st.just(UTC))  # noqa: DTZ001
ZONES = st.sampled_from((DUBLIN, "UTC", "America/Denver", "Australia/Lord_Howe", "Asia/Kathmandu"))


@unhurried
@given(MOMENTS, MOMENTS, ZONES)
def test_a_time_of_the_last_day_is_read_as_it_is_said(now: datetime, of: datetime, zone: str) -> None:
    """What the clock on the wall shows for what is read is what was typed, unless the clock left that hour out."""
    typed = local(of, zone).strftime("%H:%M")
    found = happened(typed, now, zone)
    shown = local(found.at, zone)
    assert found == Happened(found.at)
    assert timedelta(0) <= now - found.at < timedelta(hours=26)
    assert f"{shown:%H:%M}" == typed or shown.utcoffset() != local(found.at - timedelta(hours=2), zone).utcoffset()
