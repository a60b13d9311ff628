"""Which round a moment belongs to, across midnight and across a change of the clock; and the names of steps."""

from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pendulum
import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.book.turn import Turn, from_wall, local, turn_at
from store.book.words import EVENING, MORNING, Kind
from tests.store.round.made import some_id, unhurried

DUBLIN = "Europe/Dublin"
MOMENTS = st.datetimes(datetime(2020, 1, 1), datetime(2035, 1, 1), timezones=st.just(UTC))  # noqa: DTZ001
ZONES = st.sampled_from((DUBLIN, "UTC", "America/Denver", "Australia/Lord_Howe", "Asia/Kathmandu"))


def utc(text: str) -> datetime:
    """A moment, as `2026-03-29 00:59`."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def wall(text: str) -> datetime:
    """What a clock on the wall shows."""
    return datetime.fromisoformat(text)


@pytest.mark.parametrize(
    ("moment", "day", "slot"),
    [
        ("2026-03-11 03:00", "2026-03-11", MORNING),
        ("2026-03-11 06:31", "2026-03-11", MORNING),
        ("2026-03-11 11:59:59", "2026-03-11", MORNING),
        ("2026-03-11 12:00", "2026-03-11", EVENING),
        ("2026-03-11 23:59:59", "2026-03-11", EVENING),
        ("2026-03-12 00:00", "2026-03-11", EVENING),
        ("2026-03-12 02:59:59", "2026-03-11", EVENING),
        ("2026-03-12 03:00", "2026-03-12", MORNING),
        ("2026-01-01 01:00", "2025-12-31", EVENING),
        ("2028-03-01 01:00", "2028-02-29", EVENING),
        # In summer the farm's clock is an hour ahead of UTC.
        ("2026-07-01 10:59", "2026-07-01", MORNING),
        ("2026-07-01 11:00", "2026-07-01", EVENING),
        ("2026-07-01 01:59", "2026-06-30", EVENING),
        ("2026-07-01 02:00", "2026-07-01", MORNING),
        # The clock goes on: 01:00 becomes 02:00 on 29 March 2026.
        ("2026-03-29 00:59", "2026-03-28", EVENING),
        ("2026-03-29 01:00", "2026-03-28", EVENING),
        ("2026-03-29 01:59", "2026-03-28", EVENING),
        ("2026-03-29 02:00", "2026-03-29", MORNING),
        ("2026-03-29 10:59", "2026-03-29", MORNING),
        ("2026-03-29 11:00", "2026-03-29", EVENING),
        # The clock goes back: 02:00 becomes 01:00 on 25 October 2026.
        ("2026-10-25 00:30", "2026-10-24", EVENING),
        ("2026-10-25 01:30", "2026-10-24", EVENING),
        ("2026-10-25 02:59", "2026-10-24", EVENING),
        ("2026-10-25 03:00", "2026-10-25", MORNING),
        ("2026-10-25 11:59", "2026-10-25", MORNING),
        ("2026-10-25 12:00", "2026-10-25", EVENING),
    ],
)
def test_a_moment_belongs_to_the_round_of_the_farms_own_clock(moment: str, day: str, slot: str) -> None:
    """Morning, evening, and after midnight still the evening before; also on the days the clock changes."""
    assert turn_at(utc(moment), DUBLIN, 12) == Turn(date.fromisoformat(day), slot)


@pytest.mark.parametrize("evening_from_h", [12, 15, 17])
def test_the_evening_begins_at_the_hour_the_farm_says(evening_from_h: int) -> None:
    """Not a minute before."""
    at = utc(f"2026-01-15 {evening_from_h}:00")
    assert turn_at(at, DUBLIN, evening_from_h).slot == EVENING
    assert turn_at(at - timedelta(microseconds=1), DUBLIN, evening_from_h).slot == MORNING


def test_the_day_is_the_farms_own_wherever_it_lies() -> None:
    """One moment, two farms, two days."""
    moment = utc("2026-05-05 03:30")
    assert turn_at(moment, "America/Denver", 12) == Turn(date(2026, 5, 4), EVENING)
    assert turn_at(moment, "Asia/Tokyo", 12) == Turn(date(2026, 5, 5), EVENING)


@unhurried
@given(MOMENTS, ZONES, st.integers(4, 20), st.integers(0, 600))
def test_rounds_come_one_after_the_other(at: datetime, zone: str, evening_from_h: int, later_min: int) -> None:
    """Time that goes on never leads back to an earlier round, whatever the clock on the wall does."""
    first = turn_at(at, zone, evening_from_h)
    then = turn_at(at + timedelta(minutes=later_min), zone, evening_from_h)
    assert (first.day, first.slot == EVENING) <= (then.day, then.slot == EVENING)


@pytest.mark.parametrize(
    ("moment", "shown"),
    [
        ("2026-03-29 00:59", "2026-03-29T00:59:00+00:00"),
        ("2026-03-29 01:00", "2026-03-29T02:00:00+01:00"),
        ("2026-10-25 00:30", "2026-10-25T01:30:00+01:00"),
        ("2026-10-25 01:30", "2026-10-25T01:30:00+00:00"),
    ],
)
def test_the_wall_clock_shows_a_moment_with_the_offset_it_had(moment: str, shown: str) -> None:
    """So that an hour that came twice is told apart."""
    assert local(utc(moment), DUBLIN).isoformat() == shown


@pytest.mark.parametrize(
    ("shown", "moment"),
    [
        ("2026-03-11 06:31", "2026-03-11 06:31"),
        ("2026-07-01 06:31", "2026-07-01 05:31"),
        ("2026-03-29 00:59", "2026-03-29 00:59"),
        ("2026-03-29 02:00", "2026-03-29 01:00"),
        ("2026-10-25 00:59", "2026-10-24 23:59"),
        ("2026-10-25 02:00", "2026-10-25 02:00"),
    ],
)
def test_a_time_on_the_wall_is_one_moment(shown: str, moment: str) -> None:
    """In winter, in summer, and on either side of a change."""
    assert from_wall(wall(shown), DUBLIN) == utc(moment)
    assert from_wall(wall(shown), DUBLIN).tzinfo is UTC


def test_an_hour_that_came_twice_is_the_second_one() -> None:
    """01:30 on 25 October 2026 was first 00:30 UTC, then 01:30 UTC."""
    assert from_wall(wall("2026-10-25 01:30"), DUBLIN) == utc("2026-10-25 01:30")


def test_an_hour_that_never_was_is_read_within_an_hour_of_the_change() -> None:
    """01:30 on 29 March 2026 was on no wall: the clock went from 01:00 to 02:00 at 01:00 UTC."""
    found = from_wall(wall("2026-03-29 01:30"), DUBLIN)
    assert abs(found - utc("2026-03-29 01:00")) <= timedelta(hours=1)


@unhurried
@given(MOMENTS, ZONES)
def test_what_the_wall_shows_leads_back_to_the_moment(at: datetime, zone: str) -> None:
    """But for an hour that came twice, which leads to one of its two moments."""
    shown = local(at, zone)
    back = from_wall(shown.replace(tzinfo=None), zone)
    assert local(back, zone).replace(tzinfo=None) == shown.replace(tzinfo=None)
    assert abs(back - at) <= timedelta(hours=1)


FARM = UUID("0b5f3c1e-0000-4000-8000-000000000001")
SUBJECT = UUID("0b5f3c1e-0000-4000-8000-000000000002")


def test_the_name_of_a_step_is_the_same_on_every_laptop_for_ever() -> None:
    """Written down here: if it ever changed, what old books hold would belong to no step."""
    turn = Turn(date(2026, 3, 11), MORNING)
    assert turn.step_id(FARM, Kind.FEED, SUBJECT) == UUID("3c09b2e5-5346-5762-9299-750608805e10")


def test_day_slot_kind_subject_farm_and_occasion_each_make_another_step() -> None:
    """And nothing else is asked."""
    turn = Turn(date(2026, 3, 11), MORNING)
    named = {
        turn.step_id(FARM, Kind.FEED, SUBJECT),
        Turn(date(2026, 3, 12), MORNING).step_id(FARM, Kind.FEED, SUBJECT),
        Turn(date(2026, 3, 11), EVENING).step_id(FARM, Kind.FEED, SUBJECT),
        turn.step_id(FARM, Kind.MILK, SUBJECT),
        turn.step_id(FARM, Kind.FEED, some_id("another")),
        turn.step_id(some_id("another farm"), Kind.FEED, SUBJECT),
        turn.step_id(FARM, Kind.FEED, SUBJECT, "a second time"),
    }
    assert len(named) == 7


def test_a_zone_is_read_from_its_file_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """A year of rounds asks for its hours a thousand times."""
    read: list[str] = []
    once = pendulum.timezone

    def counted(name: str) -> pendulum.Timezone | pendulum.FixedTimezone:
        read.append(name)
        return once(name)

    monkeypatch.setattr(pendulum, "timezone", counted)
    for hour in range(20):
        assert from_wall(datetime(2026, 3, 11, hour), "Asia/Yangon").minute == 30  # noqa: DTZ001 wall time
    assert read == ["Asia/Yangon"]
