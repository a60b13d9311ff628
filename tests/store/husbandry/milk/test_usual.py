"""The usual pail: least, middle and most of what her last pails would be after so many hours."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.milk.udder import filled_h
from store.husbandry.milk.usual import FEWEST_PAILS, usual_pail

RATES_KG_H = st.floats(0, 4, allow_subnormal=False)
HOURS = st.floats(0, 24, allow_subnormal=False)


@pytest.mark.parametrize("rates_kg_h", [(), (0.5,), (0.5, 0.6)])
def test_fewer_than_three_pails_have_no_usual_pail(rates_kg_h: tuple[float, ...]) -> None:
    """Too few to say what is usual."""
    assert usual_pail(rates_kg_h, 12) is None


def test_the_usual_pail_is_least_middle_and_most_over_the_hours_that_passed() -> None:
    """In whatever order they came: 0.4, 0.5 and 0.7 kg an hour over twelve hours, 11.7 of them at full rate."""
    assert usual_pail((0.5, 0.7, 0.4), 12) == pytest.approx((4.6815, 5.8519, 8.1926), abs=1e-4)
    assert usual_pail((0.5, 0.7, 0.4), 8) == pytest.approx((3.2, 4.0, 5.6))


def test_the_middle_of_four_pails_lies_between_the_middle_two() -> None:
    """The median; one odd pail hardly moves it."""
    assert usual_pail((0.4, 0.5, 0.6, 3.9), 8) == pytest.approx((3.2, 4.4, 31.2))


def test_after_no_time_nothing_is_usual() -> None:
    """An udder emptied just now."""
    assert usual_pail((0.5, 0.5, 0.5), 0) == (0, 0, 0)


@pytest.mark.parametrize("elapsed_h", [-0.1, math.inf, math.nan])
def test_hours_below_zero_are_refused_by_name(elapsed_h: float) -> None:
    """The argument, the value, the bound; with however few pails."""
    for rates_kg_h in ((0.5, 0.5, 0.5), ()):
        with pytest.raises(ValueError, match=f"elapsed_h is {elapsed_h}; it must be 0 or more"):
            usual_pail(rates_kg_h, elapsed_h)


@given(st.lists(RATES_KG_H, min_size=FEWEST_PAILS, max_size=7), HOURS)
def test_every_pail_brought_to_these_hours_lies_in_the_usual_range(rates_kg_h: list[float], elapsed_h: float) -> None:
    """And the middle too."""
    found = usual_pail(rates_kg_h, elapsed_h)
    assert found is not None
    least_kg, middle_kg, most_kg = found
    assert least_kg <= middle_kg <= most_kg
    assert all(least_kg <= rate * filled_h(elapsed_h) <= most_kg for rate in rates_kg_h)


@given(st.lists(RATES_KG_H, min_size=FEWEST_PAILS, max_size=7), st.floats(0, 12, allow_subnormal=False))
def test_twice_the_hours_are_at_most_twice_the_pail(rates_kg_h: list[float], elapsed_h: float) -> None:
    """Twice up to 8 h, less beyond, never less than the pail itself."""
    once, twice = usual_pail(rates_kg_h, elapsed_h), usual_pail(rates_kg_h, 2 * elapsed_h)
    assert once is not None
    assert twice is not None
    assert all(kg <= more <= 2 * kg + 1e-9 for kg, more in zip(once, twice, strict=True))


def test_past_a_day_there_is_no_estimate() -> None:
    """However many pails."""
    assert usual_pail((0.5, 0.5, 0.5), 24) is not None
    assert usual_pail((0.5, 0.5, 0.5), 24.01) is None
