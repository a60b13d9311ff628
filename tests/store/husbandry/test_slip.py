"""A slip of a unit in a weight: named where it explains it, and only there."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.slip import NEAR, TIMES, Slip, meant_kg, slip

USUAL_KG = st.floats(30, 800)
A_BIT = st.floats(1 / 1.29, 1.29)


@pytest.mark.parametrize(
    ("weight_kg", "found"),
    [(540, None), (700, None), (420, None), (1190, Slip.POUNDS), (245, Slip.KILOGRAMS_AS_POUNDS),
     (540000, Slip.GRAMS), (0.54, Slip.TONNES), (60, None), (9000, None), (0, None)],
)  # fmt: skip
def test_a_cow_that_weighs_540_kg(weight_kg: float, found: Slip | None) -> None:
    assert slip(weight_kg, 540) is found


@given(USUAL_KG, A_BIT, st.sampled_from(Slip))
def test_each_slip_is_named_and_turned_back(usual_kg: float, a_bit: float, found: Slip) -> None:
    typed_kg = usual_kg * a_bit * TIMES[found]
    assert slip(typed_kg, usual_kg) is found
    assert meant_kg(typed_kg, found) == pytest.approx(usual_kg * a_bit)


@given(USUAL_KG, A_BIT)
def test_what_is_usual_is_no_slip(usual_kg: float, a_bit: float) -> None:
    assert slip(usual_kg * a_bit, usual_kg) is None


def test_no_weight_lies_near_two_slips() -> None:
    """Pounds and kilograms are further apart than twice what is near."""
    times = sorted((1.0, *TIMES.values()))
    assert all(high / low > NEAR**2 for low, high in pairwise(times))


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="weight_kg is -1"):
        slip(-1, 500)
    with pytest.raises(ValueError, match="usual_kg is 0; it must be above 0"):
        slip(500, 0)
