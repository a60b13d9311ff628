"""One round after the other: before, after, when it begins, and until when a moment is its own."""

from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.book.turn import Turn, turn_at
from store.book.words import EVENING, MORNING
from tests.store.round.made import unhurried

DUBLIN = "Europe/Dublin"
DAYS = st.dates(date(2020, 1, 1), date(2035, 1, 1))
TURNS = st.builds(Turn, DAYS, st.sampled_from((MORNING, EVENING)))
ZONES = st.sampled_from((DUBLIN, "UTC", "America/Denver", "Australia/Lord_Howe", "Asia/Kathmandu"))


def utc(text: str) -> datetime:
    """A moment, as `2026-03-29 00:59`."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def test_the_evening_comes_after_the_morning_and_the_next_morning_after_it() -> None:
    """Over the end of a year as well."""
    eve = Turn(date(2025, 12, 31), EVENING)
    assert Turn(date(2025, 12, 31), MORNING).after() == eve
    assert eve.after() == Turn(date(2026, 1, 1), MORNING)
    assert Turn(date(2026, 1, 1), MORNING).before() == eve


@given(TURNS)
def test_the_round_after_the_one_before_is_this_one(turn: Turn) -> None:
    """And the other way round; and no round is its own neighbour."""
    assert turn.before().after() == turn == turn.after().before()
    assert turn.before() != turn != turn.after()


@pytest.mark.parametrize(
    ("turn", "begins", "ends"),
    [
        (Turn(date(2026, 3, 11), MORNING), "2026-03-11 07:00", "2026-03-11 12:00"),
        (Turn(date(2026, 3, 11), EVENING), "2026-03-11 18:00", "2026-03-12 03:00"),
        # In summer the farm's clock is an hour ahead of UTC.
        (Turn(date(2026, 7, 1), MORNING), "2026-07-01 06:00", "2026-07-01 11:00"),
        # The clock goes on in the night to 29 March 2026, and back in the night to 25 October 2026.
        (Turn(date(2026, 3, 28), EVENING), "2026-03-28 18:00", "2026-03-29 02:00"),
        (Turn(date(2026, 10, 24), EVENING), "2026-10-24 17:00", "2026-10-25 03:00"),
    ],
)
def test_a_round_begins_and_ends_by_the_farms_own_clock(turn: Turn, begins: str, ends: str) -> None:
    """Worked out by hand; the evening ends when the night does."""
    assert turn.begins(DUBLIN) == utc(begins)
    assert turn.ends(DUBLIN, 12) == utc(ends)


@pytest.mark.parametrize(
    ("turn", "facts_at"),
    [
        (Turn(date(2026, 3, 11), MORNING), "2026-03-11 11:59:59.999999"),
        (Turn(date(2026, 3, 11), EVENING), "2026-03-11 23:59:59.999999"),
        (Turn(date(2026, 7, 1), EVENING), "2026-07-01 22:59:59.999999"),
        (Turn(date(2026, 3, 29), EVENING), "2026-03-29 22:59:59.999999"),
        (Turn(date(2026, 10, 25), EVENING), "2026-10-25 23:59:59.999999"),
    ],
)
def test_a_past_round_goes_by_what_was_in_force_before_midnight(turn: Turn, facts_at: str) -> None:
    """What is dated with the next day begins at midnight, while the evening's round goes on until three."""
    assert turn.facts_at(DUBLIN, 12) == utc(facts_at)


@unhurried
@given(TURNS, ZONES, st.integers(8, 17))
def test_a_round_begins_within_itself_and_ends_when_the_next_one_begins(
    turn: Turn, zone: str, evening_from_h: int
) -> None:
    """The last microsecond is its own, the end is the next round's."""
    ends = turn.ends(zone, evening_from_h)
    assert turn.begins(zone) < turn.facts_at(zone, evening_from_h) < ends
    assert turn_at(turn.begins(zone), zone, evening_from_h) == turn
    assert turn_at(ends - timedelta(microseconds=1), zone, evening_from_h) == turn
    assert turn_at(ends, zone, evening_from_h) == turn.after()
