"""Measures: weighed several at a time, changed, told in quarters."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.measures import change_percent, in_quarters, one_of


def test_three_level_scoops_weighed_together() -> None:
    """12.15 lb are 4.05 each, 35 % more than 3.00."""
    scoop_lb = one_of(12.15, 3)
    assert scoop_lb == pytest.approx(4.05)
    assert change_percent(3.00, scoop_lb) == pytest.approx(35.0)


def test_what_cannot_be_is_refused_by_name() -> None:
    """No scoop weighed, a change of nothing, a scoop that holds nothing."""
    with pytest.raises(ValueError, match="measures is 0"):
        one_of(1, 0)
    with pytest.raises(ValueError, match="before is 0"):
        change_percent(0, 1)
    with pytest.raises(ValueError, match="holds_kg is 0"):
        in_quarters(1, 0)


@given(st.floats(0, 500), st.floats(0.01, 100))
def test_no_other_quarter_is_nearer(kg: float, holds_kg: float) -> None:
    """Half a quarter is the most it can be off."""
    found = in_quarters(kg, holds_kg)
    assert (found * 4).is_integer()
    assert abs(found * holds_kg - kg) <= holds_kg / 8 + 1e-9
