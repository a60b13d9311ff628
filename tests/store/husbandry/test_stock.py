"""A stock: what is there, how many rounds it lasts, how far book and scale may lie apart."""

from itertools import cycle, islice
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.stock import (
    RATIO_LEAST,
    RATIO_MOST,
    Lasting,
    agree_within_kg,
    in_bucket_kg,
    lasting,
    ratio_needed,
    there_kg,
)

KG = st.floats(0, 10_000, allow_subnormal=False)
NEEDS = st.lists(st.floats(0, 50, allow_subnormal=False), max_size=60)


def test_what_was_fed_is_gone() -> None:
    """83.0 kg, and a round fed 6.5 of it."""
    assert there_kg(83.0, 0, 6.5, 0) == 76.5


def test_more_fed_than_ever_came_is_below_zero() -> None:
    """Something was not written down; it is said, not hidden."""
    assert there_kg(0, 25, 30, 0) == -5


@given(KG, KG, KG, KG)
def test_what_came_and_went_adds_up(weighed: float, came: float, fed: float, lost: float) -> None:
    """Weighed and delivered is there, fed or lost."""
    assert there_kg(weighed, came, fed, lost) + fed + lost == pytest.approx(weighed + came, abs=1e-8)


def test_an_amount_below_zero_is_refused_by_name() -> None:
    """The argument, the value, the bound."""
    with pytest.raises(ValueError, match=r"lost_kg is -1; it must be 0 or more"):
        there_kg(1, 1, 1, -1)
    with pytest.raises(ValueError, match=r"need_kg is -1"):
        lasting(5, [-1])


def test_the_thirteenth_round_is_the_last_whole_one() -> None:
    """76.5 kg, 5.0 and 6.0 in turn: 13 rounds take 71.0, 5.5 are left, and 6.0 are due."""
    assert lasting(76.5, cycle((5.0, 6.0))) == Lasting(13, 0.5, 71.0)


def test_what_is_just_enough_is_enough() -> None:
    """Ten times 0.1 kg are a kilogram, whatever the sum of the numbers says."""
    assert lasting(1.0, [0.1] * 10).short_kg is None
    short = lasting(1.0, [0.1] * 11)
    assert short.rounds == 10
    assert short.short_kg == pytest.approx(0.1)


def test_nothing_there_covers_only_rounds_that_need_nothing() -> None:
    """Below zero it is short by what is due, not by more."""
    assert lasting(-4.0, [0.0, 0.0, 2.0]) == Lasting(2, 2.0, 0.0)


@given(KG, NEEDS)
def test_it_is_short_in_the_first_round_that_the_sum_does_not_cover(there: float, needs: list[float]) -> None:
    """The rounds before it are covered, and it alone is not."""
    found = lasting(there, needs)
    assert found.used_kg == pytest.approx(sum(islice(needs, found.rounds)))
    assert found.used_kg <= there + 1e-3
    if found.short_kg is None:
        assert found.rounds == len(needs)
    else:
        assert found.used_kg + needs[found.rounds] - found.short_kg == pytest.approx(there, abs=1e-3)


@pytest.mark.parametrize(("stock", "within"), [(0, 0.3), (20, 0.3), (30, 0.3), (41.6, 0.416), (250, 2.5), (-90, 0.9)])
def test_book_and_scale_agree_within_the_larger_of_two(stock: float, within: float) -> None:
    """0.3 kg, or one part in a hundred."""
    assert agree_within_kg(stock) == pytest.approx(within)


def test_a_scoop_that_held_a_third_more_explains_what_is_missing() -> None:
    """30 kg were told in it; 10 more are gone."""
    assert ratio_needed(book_kg=60, weighed_kg=50, told_kg=30) == pytest.approx(4 / 3)


@pytest.mark.parametrize(("weighed", "told"), [(50, 0), (50, 16), (70, 24), (50, 1e-9)])
def test_a_measure_is_no_explanation_beyond_what_would_have_been_seen(weighed: float, told: float) -> None:
    """Nothing told in it, or more than 1.6 or less than 0.6 of what it was weighed at."""
    assert ratio_needed(60, weighed, told) is None


@given(KG, KG, st.floats(0.1, 10_000))
def test_with_that_ratio_book_and_scale_agree(book: float, weighed: float, told: float) -> None:
    """What the measure really gave is gone."""
    ratio = ratio_needed(book, weighed, told)
    if ratio is not None:
        assert RATIO_LEAST <= ratio <= RATIO_MOST
        assert book - (ratio - 1) * told == pytest.approx(weighed, abs=1e-6)


@given(st.lists(st.floats(-50, 50)))
def test_a_bucket_never_holds_less_than_nothing_nor_more_than_went_in_since_it_was_empty(moves: list[float]) -> None:
    found = in_bucket_kg(moves)
    assert 0 <= found <= sum(kg for kg in moves if kg > 0) + 1e-9
    assert in_bucket_kg([*moves, -inf, 2.5]) == 2.5
    assert in_bucket_kg([*moves, -found]) == 0
