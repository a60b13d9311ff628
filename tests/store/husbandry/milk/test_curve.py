"""A cow's curve: its laws, and how it is bent by her pails."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.milk.curve import curve_kg, peak_day, peak_kg
from store.husbandry.milk.own_curve import (
    Beforehand,
    Weighed,
    coming_kg,
    forecast_least_kg,
    forecast_most_kg,
    own_curve,
)
from store.husbandry.milk.shapes import ANY, FIRST, LATER, shape_of

JERSEY = LATER["jersey"]
DAYS = st.floats(1, 305)


@given(DAYS, st.floats(0.1, 60), st.floats(-0.5, 1.5), st.floats(0.0001, 0.02))
def test_a_curve_is_above_zero_on_every_day(day: float, a: float, b: float, c: float) -> None:
    """However steep."""
    assert curve_kg(day, a, b, c) > 0


@given(DAYS)
def test_no_day_has_more_than_the_peak(day: float) -> None:
    """Of any breed."""
    for shape in (*FIRST.values(), *LATER.values(), ANY):
        assert curve_kg(day, shape.a, shape.b, shape.c) <= peak_kg(shape.a, shape.b, shape.c) + 1e-9


def test_a_curve_that_only_falls_has_its_peak_at_calving() -> None:
    """And no peak yield is told of it."""
    assert peak_day(-0.1, 0.002) == 0
    with pytest.raises(ValueError, match=r"b is -0\.1; it must be above 0"):
        peak_kg(20, -0.1, 0.002)


def test_a_day_before_calving_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="day is 0; it must be above 0"):
        curve_kg(0, 20, 0.1, 0.003)


def test_three_pails_at_half_the_height_are_her_breed_at_half_the_height() -> None:
    """Its shape is kept, nearly."""
    half = [Weighed(day, curve_kg(day, JERSEY.a, JERSEY.b, JERSEY.c) / 2) for day in (60, 61, 62)]
    found = own_curve(half, Beforehand(JERSEY))
    assert found is not None
    told = curve_kg(90, found.a, found.b, found.c)
    assert told == pytest.approx(curve_kg(90, JERSEY.a, JERSEY.b, JERSEY.c) / 2, rel=0.01)


def test_the_more_pails_the_more_the_curve_is_hers() -> None:
    """A cow that falls twice as fast as her breed: after ninety days a month ahead is off by less."""
    hers = [Weighed(day, 20 * 0.995**day) for day in range(30, 121)]
    few, many = own_curve(hers[:3], Beforehand(JERSEY)), own_curve(hers, Beforehand(JERSEY))
    assert few is not None
    assert many is not None
    a_month_on = [curve_kg(days + 30, each.a, each.b, each.c) / (20 * 0.995 ** (days + 30)) - 1
                  for days, each in ((32, few), (120, many))]  # fmt: skip
    assert 0 < a_month_on[1] < a_month_on[0]
    assert JERSEY.c < few.c < many.c


def test_with_two_pails_there_is_no_curve() -> None:
    """Nor with pails of nothing."""
    assert own_curve([Weighed(10, 20), Weighed(11, 20), Weighed(12, 0)], Beforehand(JERSEY)) is None


def test_a_forecast_is_the_mean_of_its_days_with_a_range() -> None:
    assert coming_kg(10, 1, 20, 0.1, 0.003) == pytest.approx(curve_kg(10, 20, 0.1, 0.003))
    assert (forecast_least_kg(10, 12), forecast_most_kg(10, 12)) == pytest.approx((8.8, 11.2))


@pytest.mark.parametrize(
    ("breed", "first", "shape"),
    [("Jersey", False, JERSEY), ("Holstein Friesian", True, FIRST["holstein"]), ("", False, ANY),
     ("SIMMENTAL", False, FIRST["simmental"]), ("Dexter", False, ANY)],
)  # fmt: skip
def test_a_breed_is_found_by_a_word_of_it(breed: str, first: bool, shape: object) -> None:
    """Else a middling one."""
    assert shape_of(breed, first=first) == shape
