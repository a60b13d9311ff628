"""Milk in a pail: weight and volume; and what is impossible."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.milk.pail import kilograms, litres, milk_in_pail

WEIGHTS_KG = st.floats(0, 120, allow_subnormal=False)


def test_milk_is_the_full_pail_less_the_empty_one() -> None:
    """As the scale says it."""
    assert milk_in_pail(7.5, 1.4) == pytest.approx(6.1)


def test_an_empty_pail_holds_no_milk() -> None:
    """Nothing, exactly."""
    assert milk_in_pail(1.4, 1.4) == 0


def test_a_full_pail_lighter_than_the_empty_one_is_refused_with_both_weights() -> None:
    """The argument, its value, and the weight it cannot be below."""
    with pytest.raises(ValueError, match=r"gross_kg is 1\.3; the empty pail alone is 1\.4"):
        milk_in_pail(1.3, 1.4)


@pytest.mark.parametrize(
    ("gross_kg", "empty_kg", "named"),
    [
        (-0.1, 1.4, r"gross_kg is -0\.1; it must be 0 or more"),
        (7.5, -1.4, r"empty_kg is -1\.4; it must be 0 or more"),
        (math.nan, 1.4, "gross_kg is nan; it must be 0 or more"),
        (7.5, math.nan, "empty_kg is nan; it must be 0 or more"),
    ],
)
def test_a_weight_below_zero_is_refused_by_name(gross_kg: float, empty_kg: float, named: str) -> None:
    """The argument, the value, the bound."""
    with pytest.raises(ValueError, match=named):
        milk_in_pail(gross_kg, empty_kg)


def test_volume_and_weight_below_zero_are_refused_by_name() -> None:
    """The argument, the value, the bound."""
    with pytest.raises(ValueError, match="milk_kg is -2; it must be 0 or more"):
        litres(-2)
    with pytest.raises(ValueError, match="milk_l is -2; it must be 0 or more"):
        kilograms(-2)


def test_a_litre_of_milk_is_heavier_than_a_kilogram() -> None:
    """103 kg fill 100 L."""
    assert litres(103) == pytest.approx(100)
    assert kilograms(100) == pytest.approx(103)


@given(WEIGHTS_KG)
def test_litres_and_kilograms_take_each_other_back(milk_kg: float) -> None:
    """There and back is the same milk."""
    assert kilograms(litres(milk_kg)) == pytest.approx(milk_kg)


@given(WEIGHTS_KG, st.floats(0, 20, allow_subnormal=False))
def test_milk_and_pail_together_stand_on_the_scale(milk_kg: float, empty_kg: float) -> None:
    """What is poured into a pail is what is found in it."""
    assert milk_in_pail(empty_kg + milk_kg, empty_kg) == pytest.approx(milk_kg, abs=1e-12)
