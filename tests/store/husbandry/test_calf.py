"""Laws of a calf's milk and gain, a calf worked by hand, when it is weaned, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.calf.growth import expected_kg_day, gets_mcal, milk_part, of_expected_percent, upkeep_mcal
from store.husbandry.calf.milk import (
    AMPLE_PERCENT,
    LEAST_PERCENT,
    allowance_kg,
    colostrum_kg,
    milk_mcal_per_kg,
)
from store.husbandry.calf.weaning import days_enough, ready

WEIGHT_KG, MILK_KG, STARTER_KG = st.floats(25, 120), st.floats(0, 15), st.floats(0, 3)


def expected(weight_kg: float, milk_kg: float, starter_kg: float, fat_percent: float = 4.0) -> float:
    """What it should gain on so much."""
    per_kg = milk_mcal_per_kg(fat_percent)
    gets = gets_mcal(milk_kg, per_kg, starter_kg)
    return expected_kg_day(weight_kg, gets, milk_part(milk_kg, per_kg, gets))


def test_a_calf_of_45_kg_worked_by_hand() -> None:
    """4.5 or 9 kg of milk; of 4.5 kg it gains under half a kilogram, as is said of 4 to 5 L."""
    assert allowance_kg(45, LEAST_PERCENT.amount) == 4.5
    assert allowance_kg(45, AMPLE_PERCENT.amount) == 9.0
    assert expected(45, 4.5, 0) == pytest.approx(0.47, abs=0.005)
    assert expected(45, 9, 0) == pytest.approx(1.28, abs=0.005)


@given(WEIGHT_KG, MILK_KG, STARTER_KG, st.floats(0, 2))
def test_more_milk_starter_or_fat_never_gains_less_and_nothing_jumps(
    weight_kg: float, milk_kg: float, starter_kg: float, more: float
) -> None:
    found = expected(weight_kg, milk_kg, starter_kg)
    assert expected(weight_kg, milk_kg + more, starter_kg) >= found
    assert expected(weight_kg, milk_kg, starter_kg + more) >= found
    assert expected(weight_kg, milk_kg, starter_kg, 4 + more) >= found
    assert expected(weight_kg, milk_kg + 1e-9, starter_kg) == pytest.approx(found, abs=1e-4)


@given(WEIGHT_KG, st.floats(0, 20))
def test_a_heavier_calf_needs_more_to_stay_as_it_is(weight_kg: float, more: float) -> None:
    assert upkeep_mcal(weight_kg + more, 1) >= upkeep_mcal(weight_kg, 1)
    assert expected_kg_day(weight_kg, upkeep_mcal(weight_kg, 0.5), 0.5) == 0


@given(st.floats(0, 3), st.lists(st.none() | st.floats(0, 3), max_size=8))
def test_it_is_weaned_after_three_days_running_of_enough(least_kg: float, eaten_kg: list[float | None]) -> None:
    running = days_enough(eaten_kg, least_kg)
    assert ready(eaten_kg, least_kg) == (running >= 3)
    assert all(eaten is not None and eaten >= least_kg for eaten in eaten_kg[:running])
    assert all(eaten is None or eaten < least_kg for eaten in eaten_kg[running : running + 1])


def test_a_day_that_nobody_looked_ends_the_run() -> None:
    assert not ready([1.2, 1.1, None, 1.3], 1.0)
    assert ready([1.2, 1.1, 1.0], 1.0)


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="percent_of_weight is 120"):
        colostrum_kg(40, 120)
    with pytest.raises(ValueError, match="expected_kg_day is 0"):
        of_expected_percent(0.4, 0)
    with pytest.raises(ValueError, match="milk_part is 2; it must be 0 to 1"):
        upkeep_mcal(40, 2)
    assert of_expected_percent(0.4, 0.8) == 50
