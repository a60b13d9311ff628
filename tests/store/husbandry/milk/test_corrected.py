"""Corrected milk, and a lactation from some days: laws, and what is refused."""

import pytest
from hypothesis import given as drawn
from hypothesis import strategies as st

from store.husbandry.milk.corrected import energy_corrected_kg, fat_corrected_kg
from store.husbandry.milk.lactation import between_kg, lactation_kg
from store.husbandry.why import Value, given

KG = st.floats(0, 60)


@drawn(KG)
def test_standard_milk_is_what_it_is(milk_kg: float) -> None:
    """4 % fat, and 3.3 % protein."""
    assert fat_corrected_kg(milk_kg, 4.0) == pytest.approx(milk_kg)
    assert energy_corrected_kg(milk_kg, 4.0, 3.3) == pytest.approx(milk_kg)


@drawn(KG, st.floats(2, 8), st.floats(2, 8))
def test_fatter_milk_is_worth_more(milk_kg: float, one: float, other: float) -> None:
    """Of the same weight."""
    leaner, fatter = sorted((one, other))
    assert fat_corrected_kg(milk_kg, leaner) <= fat_corrected_kg(milk_kg, fatter)
    assert energy_corrected_kg(milk_kg, leaner, 3.3) <= energy_corrected_kg(milk_kg, fatter, 3.3)


def test_less_than_nothing_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="fat_percent is -1"):
        fat_corrected_kg(10, -1)
    with pytest.raises(ValueError, match="protein_percent is -1"):
        energy_corrected_kg(10, 4, -1)
    with pytest.raises(ValueError, match="days is -1"):
        between_kg(-1, 10, 10)


def weighed(*rows: tuple[int, float]) -> list[tuple[int, Value]]:
    return [(day, given(kg, f"day {day}", "kg", "weighed")) for day, kg in rows]


@drawn(st.lists(st.integers(1, 300), min_size=1, max_size=12, unique=True), KG)
def test_who_always_gives_the_same_gave_it_on_every_day(days: list[int], kg: float) -> None:
    """However few were weighed."""
    found = lactation_kg(weighed(*((day, kg) for day in sorted(days))), 305)
    assert found.amount == pytest.approx(305 * kg)


def test_a_lactation_of_no_weighing_or_of_days_that_go_back_is_refused() -> None:
    with pytest.raises(ValueError, match="weighed is empty"):
        lactation_kg([], 10)
    with pytest.raises(ValueError, match="day 3 follows day 5"):
        lactation_kg(weighed((5, 10), (3, 10)), 10)
