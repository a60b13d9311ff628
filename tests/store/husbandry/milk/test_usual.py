"""The usual pail: least, middle and most of what her last pails would be after so many hours."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.milk.udder import filled_h
from store.husbandry.milk.usual import FEWEST_PAILS, usual_pail, usual_rate

RATES_KG_H = st.floats(0.001, 4)
HOURS = st.floats(0, 24, allow_subnormal=False)


@pytest.mark.parametrize("rates_kg_h", [(), (0.5,), (0.5, 0.6)])
def test_fewer_than_three_pails_have_no_usual_pail(rates_kg_h: tuple[float, ...]) -> None:
    """Too few to say what is usual."""
    assert usual_pail(rates_kg_h, 12) is None


def test_the_usual_pail_worked_by_hand() -> None:
    """Three pails of 0.5 kg an hour over 8 h: 2.353 x 0.08 / root 3 x root(1 + 1.57 / 2.9047) = 0.1349.

    As many as 1, 0.8 and 0.64 are worth: 2.44^2 / 2.0496 = 2.9047; e^0.1349 = 1.144.
    """
    counting = 2.44**2 / 2.0496
    times = math.exp(2.353 * 0.08 / math.sqrt(3) * math.sqrt(1 + 1.57 / counting))
    assert usual_pail((0.5, 0.5, 0.5), 8) == pytest.approx((4 / times, 4, 4 * times))
    assert times == pytest.approx(1.144, abs=0.001)


def test_pails_that_differ_are_worth_a_wider_range() -> None:
    """And after more hours it is as wide for its middle."""
    alike, differing = usual_rate((0.5, 0.51, 0.49)), usual_rate((0.5, 0.6, 0.4))
    assert alike is not None
    assert differing is not None
    assert differing[0] < alike[0] < alike[2] < differing[2]


def test_one_odd_pail_does_not_move_the_middle_however_new() -> None:
    """Nor one of nothing, which is no pail to compare."""
    usual = usual_rate((0.2, 0.5, 0.5, 0.5, 0.5))
    assert usual is not None
    assert usual[1] == 0.5
    assert usual_rate((0.0, 0.5, 0.5, 0.5)) == usual_rate((0.5, 0.5, 0.5))
    assert usual_rate((0.0, 0.5, 0.5)) is None


def test_a_slow_fall_is_followed() -> None:
    """Newer pails count more: of seven that fell evenly the middle is a newer one than the fourth."""
    falling = (0.44, 0.45, 0.46, 0.47, 0.48, 0.49, 0.5)
    usual = usual_rate(falling)
    assert usual is not None
    assert usual[1] < falling[3]


def test_no_more_than_the_newest_seven_count() -> None:
    """What is older is over."""
    assert usual_rate((0.5,) * 7 + (3.0,) * 5) == usual_rate((0.5,) * 7)


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
def test_the_middle_is_a_pail_of_hers_and_lies_in_the_range(rates_kg_h: list[float], elapsed_h: float) -> None:
    """Whatever the pails were, one in ten thousand of the others among them."""
    found = usual_pail(rates_kg_h, elapsed_h)
    assert found is not None
    least_kg, middle_kg, most_kg = found
    assert 0 <= least_kg <= middle_kg <= most_kg < math.inf
    assert middle_kg in [rate * filled_h(elapsed_h) for rate in rates_kg_h]


@given(st.lists(RATES_KG_H, min_size=FEWEST_PAILS, max_size=7), HOURS, HOURS)
def test_more_hours_never_have_less_usual(rates_kg_h: list[float], one: float, other: float) -> None:
    """Up to a day."""
    shorter, longer = (usual_pail(rates_kg_h, each) for each in sorted((one, other)))
    assert shorter is not None
    assert longer is not None
    assert all(kg <= more for kg, more in zip(shorter, longer, strict=True))


@given(st.lists(RATES_KG_H, min_size=FEWEST_PAILS, max_size=7), st.floats(0, 12, allow_subnormal=False))
def test_twice_the_hours_are_at_most_twice_the_pail(rates_kg_h: list[float], elapsed_h: float) -> None:
    """Twice up to 8 h, less beyond, never less than the pail itself."""
    once, twice = usual_pail(rates_kg_h, elapsed_h), usual_pail(rates_kg_h, 2 * elapsed_h)
    assert once is not None
    assert twice is not None
    assert all(kg <= more <= 2 * kg + 1e-9 * (1 + kg) for kg, more in zip(once, twice, strict=True))


def test_past_a_day_there_is_no_estimate() -> None:
    """However many pails."""
    assert usual_pail((0.5, 0.5, 0.5), 24) is not None
    assert usual_pail((0.5, 0.5, 0.5), 24.01) is None
