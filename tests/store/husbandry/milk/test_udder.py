"""How an udder fills: worked by hand, and its laws."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.milk.udder import ESTIMATE_MOST_H, day_kg, filled_h

HOURS = st.floats(0, ESTIMATE_MOST_H, allow_subnormal=False)


@pytest.mark.parametrize(
    ("elapsed_h", "full_h"),
    [(0, 0), (8, 8), (10, 9.926), (12, 11.704), (14, 13.333), (16, 14.815), (20, 17.333), (24, 19.259)],
)
def test_the_hours_at_full_rate_worked_by_hand(elapsed_h: float, full_h: float) -> None:
    """12 - 4 x 4 / 54 = 11.704."""
    assert round(filled_h(elapsed_h), 3) == full_h


@given(HOURS, HOURS)
def test_more_hours_are_more_milk_and_never_more_than_the_hours(one: float, other: float) -> None:
    """It only ever slows down."""
    shorter, longer = sorted((one, other))
    assert filled_h(shorter) <= filled_h(longer) <= longer


@pytest.mark.parametrize("elapsed_h", [-0.1, math.inf, math.nan])
def test_hours_that_cannot_be_are_refused_by_name(elapsed_h: float) -> None:
    """The argument, the value, the bound."""
    with pytest.raises(ValueError, match=f"elapsed_h is {elapsed_h}; it must be 0 or more"):
        filled_h(elapsed_h)


def test_past_a_day_it_is_refused() -> None:
    """No estimate."""
    with pytest.raises(ValueError, match="no estimate past 24 h"):
        filled_h(24.5)


def test_a_pail_in_a_day_worked_by_hand() -> None:
    """6.2 kg in 12 h 30 are 11.904 kg a day."""
    assert round(day_kg(6.2, 12.5), 3) == 11.904


def test_a_pail_of_no_hours_is_no_day() -> None:
    """Nothing is divided by nothing."""
    with pytest.raises(ValueError, match="elapsed_h is 0; it must be more than 0"):
        day_kg(6.2, 0)
    with pytest.raises(ValueError, match="milk_kg is -1"):
        day_kg(-1, 12)
