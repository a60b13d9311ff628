"""A slip of a unit in a weight: named where it explains it, and only there."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.slip import TIMES, Slip, meant_kg, slip

USUAL_KG = st.floats(30, 800)
A_BIT = st.floats(1 / 1.29, 1.29)


def near(weight_kg: float, usual_kg: float) -> Slip | None:
    """The slip by which a weight would be within 1.3 times of what is usual."""
    return slip(weight_kg, usual_kg / 1.3, usual_kg * 1.3)


@pytest.mark.parametrize(
    ("weight_kg", "found"),
    [(540, None), (700, None), (420, None), (1190, Slip.POUNDS), (245, Slip.KILOGRAMS_AS_POUNDS),
     (540000, Slip.GRAMS), (0.54, Slip.TONNES), (60, None), (9000, None), (0, None)],
)  # fmt: skip
def test_a_cow_that_weighs_540_kg(weight_kg: float, found: Slip | None) -> None:
    assert near(weight_kg, 540) is found


@given(USUAL_KG, A_BIT, st.sampled_from(Slip))
def test_each_slip_is_named_and_turned_back(usual_kg: float, a_bit: float, found: Slip) -> None:
    typed_kg = usual_kg * a_bit * TIMES[found]
    assert near(typed_kg, usual_kg) is found
    assert meant_kg(typed_kg, found) == pytest.approx(usual_kg * a_bit)


@given(USUAL_KG, A_BIT)
def test_what_is_usual_is_no_slip(usual_kg: float, a_bit: float) -> None:
    assert near(usual_kg * a_bit, usual_kg) is None


@given(st.floats(100, 800), st.floats(0.01, 0.99))
def test_between_wide_bounds_a_weight_that_is_too_heavy_was_never_typed_too_light(most_kg: float, part: float) -> None:
    found = slip(most_kg * 1.1, most_kg * part, most_kg)
    assert found in (None, Slip.POUNDS, Slip.GRAMS)
    assert found is not None or most_kg * 1.1 / 2.2046 < most_kg * part


def test_bounds_the_wrong_way_round_are_refused() -> None:
    with pytest.raises(ValueError, match="most_kg is 2; it must be above least_kg, 3"):
        slip(1, 3, 2)
