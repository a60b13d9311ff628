"""What a calf took: worked by hand, its laws, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.milk.share import (
    drinks_at_most_kg,
    drunk_for_gain_kg,
    makes_kg,
    makes_kg_h,
    not_in_the_pail_kg,
)
from store.husbandry.milk.udder import filled_h

HOURS = st.floats(1, 24)


def test_a_night_of_twelve_hours_worked_by_hand() -> None:
    """8.0 kg, nine tenths of what was in her: 0.7595 kg an hour, 18.00 kg a day, 10.00 of them not in the pail."""
    rate = makes_kg_h(8.0, 0.9, filled_h(12))
    made = makes_kg(rate, filled_h(12), 12)
    assert (round(rate, 4), round(made, 2)) == (0.7595, 18.0)
    assert not_in_the_pail_kg(made, 8.0) == pytest.approx(10.0, abs=0.005)


@given(st.floats(0.1, 20), HOURS)
def test_what_she_made_is_at_least_what_was_in_the_pail(milk_kg: float, apart_h: float) -> None:
    """And the less the milking took of it, the more she made."""
    all_of_it, some = (
        makes_kg(makes_kg_h(milk_kg, removed, filled_h(apart_h)), filled_h(apart_h), apart_h) for removed in (1.0, 0.85)
    )
    assert milk_kg <= all_of_it + 1e-9
    assert all_of_it < some


@given(st.floats(0.1, 20), HOURS, HOURS)
def test_the_same_pail_after_more_hours_is_less_a_day(milk_kg: float, one: float, other: float) -> None:
    """So that the calf took less."""
    shorter, longer = (makes_kg(makes_kg_h(milk_kg, 0.9, filled_h(each)), filled_h(each), each)
                       for each in sorted((one, other)))  # fmt: skip
    assert longer <= shorter + 1e-9


def test_a_calf_takes_nothing_below_zero() -> None:
    assert not_in_the_pail_kg(8, 9) == 0


def test_by_its_gain_and_the_most_it_can_drink() -> None:
    """0.6 kg a day at 11 kg for each; a calf of 60 kg."""
    assert drunk_for_gain_kg(11, 0.6) == pytest.approx(6.6)
    assert drinks_at_most_kg(60) == 15


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match=r"removed is 1\.1; it must be at most 1"):
        makes_kg_h(8, 1.1, 10)
    with pytest.raises(ValueError, match="full_h is 0; it must be above 0"):
        makes_kg_h(8, 0.9, 0)
    with pytest.raises(ValueError, match="apart_h is 25; no estimate past 24 h"):
        makes_kg(0.7, 12, 25)
