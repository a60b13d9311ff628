"""Soaked feed: hours, windows, shares, what stands in for it."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.measures import SAME_KG
from store.husbandry.soak import (
    Ripeness,
    hours_soaked,
    part_there,
    replaced,
    ripeness,
    start_window,
)

EVENING = datetime(2026, 3, 11, 17, 30, tzinfo=UTC)
KG = st.floats(0, 500)
HOURS = st.integers(0, 72 * 60).map(lambda minutes: minutes / 60)


def at(clock: str, days: int = 0) -> datetime:
    """An hour of that day, or so many days from it."""
    return datetime.fromisoformat(f"2026-03-11T{clock}+00:00") + timedelta(days=days)


def test_to_be_fed_at_half_past_five_it_is_put_to_soak_from_half_past_eleven_at_night_on() -> None:
    """At least 2 h and at most 18 h: 23:30 the evening before to 15:30."""
    found = start_window(EVENING, 2, 18)
    assert (found.earliest, found.latest) == (at("23:30", -1), at("15:30"))


@pytest.mark.parametrize(
    ("started", "found"),
    [
        ("15:31", Ripeness.TOO_EARLY), ("15:30", Ripeness.READY), ("06:00", Ripeness.READY),
        ("20:00", Ripeness.TOO_EARLY),
    ],
)  # fmt: skip
def test_it_is_ready_from_its_least_hours_on(started: str, found: Ripeness) -> None:
    """Two hours; put to soak later than now it has not soaked at all."""
    assert ripeness(at(started), EVENING, 2, 18) is found


def test_it_may_be_fed_up_to_its_last_minute_and_not_after_it() -> None:
    """Eighteen hours and not a second more."""
    last = at("23:30", -1)
    assert ripeness(last, EVENING, 2, 18) is Ripeness.READY
    assert ripeness(last, EVENING + timedelta(seconds=1), 2, 18) is Ripeness.PAST


@given(HOURS, HOURS, st.integers(-6000, 6000))
def test_what_is_begun_within_the_window_is_ready_and_nothing_else_is(one_h: float, other_h: float, off: int) -> None:
    """Whatever the rule, and whenever it is begun before it is fed."""
    least_h, most_h = sorted((one_h, other_h))
    window = start_window(EVENING, least_h, most_h)
    started = min(EVENING + timedelta(minutes=off), EVENING)
    is_ready = ripeness(started, EVENING, least_h, most_h) is Ripeness.READY
    near = min(abs(started - edge) for edge in (window.earliest, window.latest)) < timedelta(milliseconds=1)
    assert near or is_ready == (window.earliest <= started <= window.latest)


def test_a_night_in_which_the_clocks_change_has_its_own_hours() -> None:
    """From 20:00 to 06:00 on the wall it is 9 h in March and 11 h in October, in Berlin."""
    spring = [datetime.fromisoformat(each) for each in ("2026-03-28T20:00+01:00", "2026-03-29T06:00+02:00")]
    autumn = [datetime.fromisoformat(each) for each in ("2026-10-24T20:00+02:00", "2026-10-25T06:00+01:00")]
    assert (hours_soaked(*spring), hours_soaked(*autumn)) == (9, 11)


def test_too_little_is_shared_out_in_proportion() -> None:
    """2.8 kg there, 3.5 kg due: each gets four fifths; with enough, or a few grams short, all of it."""
    assert part_there(2.8, 3.5) == pytest.approx(0.8)
    for there_kg in (3.5, 9.0, 3.496):
        assert part_there(there_kg, 3.5) == 1
    assert part_there(0.0, 0.0) == 1
    assert part_there(0.0, 3.5) == 0


@given(KG, st.lists(KG, max_size=12))
def test_what_is_shared_out_adds_up_to_what_is_there_or_to_what_is_due(there_kg: float, due_kg: list[float]) -> None:
    """And nobody gets more than was due."""
    part = part_there(there_kg, sum(due_kg))
    assert sum(kg * part for kg in due_kg) == pytest.approx(min(there_kg, sum(due_kg)), abs=SAME_KG)
    assert 0 <= part <= 1


def test_sour_cubes_are_replaced_at_the_farms_ratio() -> None:
    """1.5 kg at 0.8: 1.2 kg; capped at 0.8 kg a head, 0.8 kg stand for 1.0 kg, and 0.5 kg are left to hay."""
    for most_kg, heads, kg, rest_kg in (
        (None, 1, 1.2, 0.0),
        (0.8, 1, 0.8, 0.5),
        (0.8, 2, 1.2, 0.0),
        (0.0, 2, 0.0, 1.5),
    ):
        found = replaced(1.5, 0.8, most_kg, heads)
        assert found.kg == pytest.approx(kg)
        assert found.rest_kg == pytest.approx(rest_kg)


@given(KG, st.floats(0.01, 100), st.none() | KG, st.integers(1, 99))
def test_a_substitute_and_hay_make_up_all_of_it(
    short_kg: float, ratio: float, most_kg: float | None, heads: int
) -> None:
    """And the substitute stays below its limit."""
    found = replaced(short_kg, ratio, most_kg, heads)
    assert found.kg / ratio + found.rest_kg == pytest.approx(short_kg)
    assert most_kg is None or found.kg <= most_kg * heads


@pytest.mark.parametrize(
    ("least_h", "most_h", "words"),
    [(-1, 2, "least_h is -1"), (2, 1, "most_h is 1"), (0, float("nan"), "most_h is nan")],
)
def test_hours_that_cannot_be_are_refused(least_h: float, most_h: float, words: str) -> None:
    """By name, value and bound."""
    with pytest.raises(ValueError, match=words):
        start_window(EVENING, least_h, most_h)
    with pytest.raises(ValueError, match=words):
        ripeness(EVENING, EVENING, least_h, most_h)


def test_weights_that_cannot_be_are_refused() -> None:
    """By name, value and bound."""
    for words, there_kg, due_kg in (("there_kg is -1", -1.0, 1.0), ("due_kg is -2", 1.0, -2.0)):
        with pytest.raises(ValueError, match=words):
            part_there(there_kg, due_kg)
    for words, values in (("ratio is 0", (1.0, 0.0, None, 1)), ("most_kg is -1", (1.0, 1.0, -1.0, 1))):
        with pytest.raises(ValueError, match=words):
            replaced(*values)
