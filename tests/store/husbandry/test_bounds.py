"""Impossible input is named: the argument, the value, the bound."""

import math
import re

import pytest

from store.husbandry.bounds import at_least_zero


@pytest.mark.parametrize("value", [0, 0.0, 1e-12, 7, 1e9])
def test_nothing_and_more_than_nothing_pass(value: float) -> None:
    """Zero is a weight like any other."""
    at_least_zero(milk_kg=value)


@pytest.mark.parametrize("value", [-1e-12, -3, math.inf, -math.inf, math.nan])
def test_below_zero_raises_and_names_argument_value_and_bound(value: float) -> None:
    """Also what is no number at all."""
    with pytest.raises(ValueError, match=re.escape(f"milk_kg is {value}; it must be 0 or more")):
        at_least_zero(milk_kg=value)


def test_of_several_arguments_the_wrong_one_is_named() -> None:
    """The first that is wrong, not the first that is given."""
    with pytest.raises(ValueError, match=r"^empty_kg is -1; "):
        at_least_zero(gross_kg=3, empty_kg=-1, spilt_kg=-2)
