"""From now to new in steps: none too far, never back, exactly at the end, in quarters, under the caps on the way."""

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from store.husbandry.change import (
    ROUNDING_KG,
    Steps,
    Way,
    days_for_new,
    given_at_kg,
    last_day,
    least_step_kg,
    step_of_percent_kg,
    steps_needed,
    together,
)
from tests.store.round.made import unhurried

SCOOP_KG = 0.675
KG = st.floats(0, 12, allow_subnormal=False).map(lambda kg: round(kg, 3))


@st.composite
def ways(draw: st.DrawFn) -> Way:
    """From some amount to another, told in a measure or by weight, by percent and perhaps by a limit in kilograms."""
    now_kg, wanted_kg = draw(KG), draw(KG)
    holds_kg = draw(st.none() | st.floats(0.05, 3))
    percent_kg = step_of_percent_kg(now_kg, wanted_kg, draw(st.floats(5, 100)))
    step_kg = min(max(percent_kg, least_step_kg(holds_kg)), draw(st.floats(0.1, 3)))
    return Way(now_kg, wanted_kg, step_kg, holds_kg / 4 if holds_kg else None)


def scoops(way: Way) -> list[float]:
    """What one way gives, step by step, in scoops."""
    return [round(kg / SCOOP_KG, 6) for (kg,) in together([way])]


def in_scoops(now: float, wanted: float, percent: float) -> Way:
    """A way told in scoops, by percent alone."""
    step_kg = max(step_of_percent_kg(now, wanted, percent), 0.25) * SCOOP_KG
    return Way(now * SCOOP_KG, wanted * SCOOP_KG, step_kg, SCOOP_KG / 4)


def test_from_one_and_a_half_scoops_to_one_the_first_step_is_one_and_a_quarter() -> None:
    """By hand: 25 % of 1.5 scoops is 0.375, in whole quarters 0.25."""
    assert scoops(in_scoops(1.5, 1.0, 25)) == [1.25, 1.0]


def test_with_a_hundred_percent_it_comes_down_at_once() -> None:
    assert scoops(in_scoops(1.5, 0, 100)) == [0]


def test_from_nothing_to_a_cup_it_begins_with_a_quarter() -> None:
    assert scoops(in_scoops(0, 1, 25)) == [0.25, 0.5, 0.75, 1.0]


def test_from_little_each_step_is_a_quarter_because_less_cannot_be_told() -> None:
    assert scoops(in_scoops(0.25, 1, 25)) == [0.5, 0.75, 1.0]


def test_a_limit_below_a_quarter_goes_by_weight() -> None:
    """0.1 kg at a time, where a quarter of the scoop is 0.169 kg."""
    found = together([Way(0.675, 1.0125, 0.1, SCOOP_KG / 4)])
    assert [kg for (kg,) in found] == pytest.approx([0.759, 0.844, 0.928, 1.0125], abs=0.001)


def test_off_the_grid_the_first_step_is_to_the_next_quarter_and_no_more_steps_are_needed() -> None:
    """1.1 to 3 scoops by quarters: 7.6 of them, eight steps."""
    assert scoops(in_scoops(1.1, 3, 5)) == [1.25, 1.5, 1.75, 2.0, 2.25, 2.5, 2.75, 3.0]


@pytest.mark.parametrize(("steps", "days"), [(1, 1), (2, 9), (4, 3), (10, 1), (20, 1)])
def test_a_new_feed_is_given_in_full_on_the_tenth_day_or_later(steps: int, days: int) -> None:
    assert days_for_new(steps) == days
    assert steps == 1 or last_day(steps, days) >= 10


def test_nothing_to_change_is_no_step() -> None:
    assert together([Way(1, 1, 0.1)]) == ()


def test_all_go_with_the_slowest_so_that_forage_comes_down_as_grain_goes_up() -> None:
    grain, hay = Way(0, 2, 0.5), Way(6, 4, 1.5)
    assert together([grain, hay]) == ((0.5, 5.5), (1.0, 5.0), (1.5, 4.5), (2.0, 4.0))


@unhurried
@given(st.lists(ways(), min_size=1, max_size=4))
def test_no_step_is_too_far_none_goes_back_and_the_last_is_what_is_wanted(found: list[Way]) -> None:
    steps = together(found)
    for at, way in enumerate(found):
        amounts = [way.now_kg, *(given[at] for given in steps)]
        assert amounts[-1] == way.wanted_kg
        assert all(abs(to - was) <= way.step_kg + ROUNDING_KG for was, to in pairwise(amounts))
        assert sorted(amounts, reverse=way.now_kg > way.wanted_kg) == amounts


@unhurried
@given(st.lists(ways(), min_size=1, max_size=4), st.floats(0, 2))
def test_a_meal_that_keeps_its_cap_at_both_ends_keeps_it_on_the_way(found: list[Way], above_kg: float) -> None:
    ends = sum(way.now_kg for way in found), sum(way.wanted_kg for way in found)
    cap_kg = max(ends) + above_kg

    def fits(steps: Steps) -> bool:
        return all(sum(given_kg) <= cap_kg + ROUNDING_KG for given_kg in steps)

    assert fits(together(found, fits))


@unhurried
@given(ways())
def test_what_can_be_told_in_quarters_is_told_in_quarters(way: Way) -> None:
    """All but the end, which is what was asked for."""
    assume(way.in_quarters and way.quarter_kg)
    for (kg,) in together([way])[:-1]:
        assert kg in (way.now_kg, way.wanted_kg) or kg / (way.quarter_kg or 1) == pytest.approx(
            round(kg / (way.quarter_kg or 1)), abs=1e-6
        )


@pytest.mark.parametrize("wrong", [
    lambda: step_of_percent_kg(1, 2, 0), lambda: step_of_percent_kg(-1, 2, 25), lambda: steps_needed(1, 2, 0),
    lambda: given_at_kg(1, 2, 3, 2), lambda: given_at_kg(1, 2, 0, 0), lambda: last_day(0, 1), lambda: last_day(1, 0),
    lambda: days_for_new(0),
])  # fmt: skip
def test_what_cannot_be_is_refused_with_its_name(wrong: object) -> None:
    assert callable(wrong)
    with pytest.raises(ValueError, match=r"is -?\d"):
        wrong()
