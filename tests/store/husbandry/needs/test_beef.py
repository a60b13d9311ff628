"""Laws of what sucklers and growing cattle need, and what is refused."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from store.husbandry.needs.feed_energy import gain_mcal_per_kg, upkeep_mcal_per_kg
from store.husbandry.needs.gain import gain_kg_day, heifer_eats_kg, heifer_tdn_percent, steer_eats_kg, steer_tdn_percent
from store.husbandry.needs.growing import growing
from store.husbandry.needs.suckler import MONTH_D, WEANED_D, milk_kg, place_d, suckler
from store.husbandry.why import Value
from store.husbandry.why import given as typed

COW_KG, DAYS, HAIR = st.floats(350, 700), st.floats(0, 500), 1e-6
WEIGHT_KG, GAIN, MATURE_KG = st.floats(120, 450), st.floats(0, 0.9), st.floats(450, 750)


def value(amount: float) -> Value:
    """Typed in."""
    return typed(amount, "a figure", "", "typed")


def cow(weight_kg: float, days: float) -> dict[str, float]:
    """The needs of a suckler cow as plain numbers."""
    found = suckler(weight_kg=value(weight_kg), days_in_milk=value(days), days_in_calf=value(max(days - 82, 0)))
    return {each: need.amount for each, need in found.items()}


def young(weight_kg: float, gain: float, mature_kg: float, *, heifer: bool = True) -> dict[str, float]:
    """The needs of a heifer or steer as plain numbers."""
    found = growing(weight_kg=value(weight_kg), gain_kg_day=value(gain), mature_kg=value(mature_kg), heifer=heifer)
    return {each: need.amount for each, need in found.items()}


@given(COW_KG, DAYS, st.floats(0, 100))
def test_a_heavier_cow_never_needs_less(weight_kg: float, days: float, more: float) -> None:
    light, heavy = cow(weight_kg, days), cow(weight_kg + more, days)
    assert all(heavy[each] >= light[each] - 1e-9 for each in light)


@given(COW_KG, DAYS)
def test_from_one_day_to_the_next_nothing_jumps(weight_kg: float, days: float) -> None:
    """Not when the calf is weaned, not at the end of her year."""
    now, then = cow(weight_kg, days), cow(weight_kg, days + HAIR)
    assert all(abs(then[each] - now[each]) < 1e-3 for each in now)


@given(COW_KG)
def test_she_needs_most_at_her_peak_of_milk_and_least_once_the_calf_is_weaned(weight_kg: float) -> None:
    needs = [cow(weight_kg, MONTH_D * month)["tdn_kg"] for month in range(1, 13)]
    assert max(needs) == needs[1]
    assert min(needs) == needs[6]


def test_a_cow_that_is_not_in_calf_stays_as_just_weaned() -> None:
    assert place_d(300, 0) == WEANED_D
    assert place_d(300, 183) == 265
    assert milk_kg(WEANED_D, 9) == 0


@given(WEIGHT_KG, GAIN, MATURE_KG, st.booleans())
def test_the_feed_that_is_told_for_a_gain_makes_that_gain(
    weight_kg: float, gain: float, mature_kg: float, heifer: bool
) -> None:
    """The equation turned round: forward again it gives what was asked for."""
    rich, eats = (heifer_tdn_percent, heifer_eats_kg) if heifer else (steer_tdn_percent, steer_eats_kg)
    tdn = rich(weight_kg, gain, mature_kg)
    assert gain_kg_day(weight_kg, eats(weight_kg, tdn), tdn, mature_kg) == pytest.approx(gain, abs=1e-6)


@pytest.mark.parametrize("each", ["tdn_kg", "protein_g", "calcium_g", "phosphorus_g"])
@given(WEIGHT_KG, GAIN, MATURE_KG, st.floats(0, 0.1), st.booleans())
def test_more_gain_never_needs_less(
    each: str, weight_kg: float, gain: float, mature_kg: float, more: float, heifer: bool
) -> None:
    less = young(weight_kg, gain, mature_kg, heifer=heifer)
    assert young(weight_kg, gain + more, mature_kg, heifer=heifer)[each] >= less[each] - 1e-6


@given(WEIGHT_KG, GAIN, MATURE_KG, st.floats(0, 50))
def test_a_heavier_animal_of_the_same_gain_never_needs_less_energy(
    weight_kg: float, gain: float, mature_kg: float, more: float
) -> None:
    assert young(weight_kg + more, gain, mature_kg)["tdn_kg"] >= young(weight_kg, gain, mature_kg)["tdn_kg"] - 1e-6


@given(st.floats(45, 89), st.floats(0, 1))
def test_a_richer_feed_never_gives_less(tdn_percent: float, more: float) -> None:
    assert upkeep_mcal_per_kg(tdn_percent + more) >= upkeep_mcal_per_kg(tdn_percent)
    assert gain_mcal_per_kg(tdn_percent + more) >= gain_mcal_per_kg(tdn_percent)
    assert upkeep_mcal_per_kg(tdn_percent) > gain_mcal_per_kg(tdn_percent)


@given(st.floats(0, 282), st.floats(0, 1))
def test_the_calf_in_a_heifer_costs_more_each_day(days: float, more: float) -> None:
    def of(carried: float) -> dict[str, float]:
        found = growing(weight_kg=value(400), gain_kg_day=value(0.5), mature_kg=value(550), days_in_calf=value(carried))
        return {each: need.amount for each, need in found.items()}

    assert of(days + more)["tdn_kg"] >= of(days)["tdn_kg"] - 1e-9
    assert of(days + more)["protein_g"] >= of(days)["protein_g"] - 1e-9
    assert of(0)["tdn_kg"] == pytest.approx(young(400, 0.5, 550)["tdn_kg"], abs=0.01)


@given(WEIGHT_KG, MATURE_KG)
def test_a_gain_that_no_feed_makes_is_refused(weight_kg: float, mature_kg: float) -> None:
    assume(weight_kg < mature_kg)
    with pytest.raises(ValueError, match="gain_kg_day is 5; no feed makes"):
        heifer_tdn_percent(weight_kg, 5, mature_kg)


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="tdn_percent is 20; it must be 30 or more"):
        upkeep_mcal_per_kg(20)
    with pytest.raises(ValueError, match="mature_kg is 0; it must be above 0"):
        gain_kg_day(300, 7, 60, 0)
    with pytest.raises(ValueError, match="days_in_calf is -1"):
        place_d(300, -1)
