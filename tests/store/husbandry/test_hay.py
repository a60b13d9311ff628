"""Hay by the bale: losses multiply, bales are whole, and the impossible is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.hay import LOSS_BY_FEEDER, Bales, bales_last, least_and_most_lost, lost, to_give


def test_bales_until_turnout() -> None:
    """128 of 46 lb, a tenth lost, 84 lb eaten a day, 112 days: 63 days, and 100 bales lack."""
    assert bales_last(128, 46, 10, 84, 112) == Bales(days=63, need=228, short=100)


def test_bales_that_are_enough_lack_none() -> None:
    """Ten of 20 kg, half lost, 10 kg a day: ten days and not a bale more."""
    assert bales_last(10, 20, 50, 10, 10) == Bales(days=10, need=10, short=0)
    assert bales_last(10, 20, 50, 10, 11) == Bales(days=10, need=11, short=1)


def test_where_nothing_is_eaten_they_last_for_ever() -> None:
    """And none is needed."""
    assert bales_last(3, 20, 10, 0, 90) == Bales(days=None, need=0, short=0)


@pytest.mark.parametrize(("loss", "bale", "found"), [(100, 20, "loss_percent leaves 0 %"), (101, 20, "leaves -1 %"),
                                                     (-1, 20, "loss_"), (10, 0, "bale is 0")])  # fmt: skip
def test_impossible_hay_is_refused_by_name(loss: float, bale: float, found: str) -> None:
    """All of it lost and more, less than none lost, a bale of nothing."""
    with pytest.raises(ValueError, match=found):
        bales_last(10, bale, loss, 5, 10)


@given(st.floats(0, 500), st.floats(5, 100), st.floats(0, 95), st.floats(0, 95))
def test_what_is_kept_of_what_is_given_is_what_is_eaten(eaten: float, dry: float, stored: float, fed: float) -> None:
    """Each loss takes its part of what the one before left."""
    left = to_give(eaten, dry, stored, fed)
    for hay, loss in ((left, 100 - dry), (left * dry / 100, stored)):
        left -= lost(hay, loss)
    assert left - lost(left, fed) == pytest.approx(eaten)


@given(st.integers(0, 400), st.floats(5, 500), st.floats(0, 60), st.floats(0.5, 200), st.integers(1, 300))
def test_the_bales_that_lack_are_just_enough(bales: int, bale: float, loss: float, day: float, days: int) -> None:
    """With them it lasts all the days; with one less it does not."""
    found = bales_last(bales, bale, loss, day, days)
    if found.short:
        assert found.days is not None
        assert found.days < days
        longer = bales_last(bales + found.short, bale, loss, day, days)
        assert longer.short == 0
        assert bales_last(bales + found.short - 1, bale, loss, day, days).short == 1


def test_every_loss_at_a_feeder_names_its_source_and_is_a_part() -> None:
    """And what the percentage is told of."""
    assert all(each.source and each.of and 0 < each.percent < 100 for each in LOSS_BY_FEEDER)


def test_two_trials_of_one_feeder_are_told_by_the_least_and_the_most() -> None:
    assert least_and_most_lost("ring feeder") == (6.1, 20.5)
    with pytest.raises(ValueError, match="feeder is sledge; it must be one of"):
        least_and_most_lost("sledge")
