"""Laws of what a dairy cow needs, a cow worked through by hand, and what is refused."""

from functools import partial
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.needs.appetite import dry_by_rule_kg, milking_by_rule_kg
from store.husbandry.needs.dairy import close_up, dry, in_milk
from store.husbandry.why import Value
from store.husbandry.why import given as typed

WEIGHT_KG, MILK_KG, FAT, PROTEIN = st.floats(300, 800), st.floats(0, 50), st.floats(2, 7), st.floats(2, 5)
DAYS, MORE = st.floats(0, 400), st.floats(0, 20)
LEAST = ("energy", "protein_g", "calcium_g", "phosphorus_g")
"""What there is at least."""


def value(amount: float) -> Value:
    """Typed in."""
    return typed(amount, "a figure", "", "typed")


COW = partial(in_milk, weight_kg=value(500), milk_kg=value(15), fat_percent=value(4), days_in_milk=value(100))
"""An ordinary one."""


def milking(weight_kg: float, milk_kg: float, fat: float, days: float = 90, carried: float = 0) -> dict[str, float]:
    """The needs of a cow in milk as plain numbers."""
    found = in_milk(
        weight_kg=value(weight_kg), milk_kg=value(milk_kg), fat_percent=value(fat), days_in_milk=value(days),
        days_in_calf=value(carried),
    )  # fmt: skip
    return {each: need.amount for each, need in found.items()}


def test_a_small_cow_worked_by_hand() -> None:
    """0.080 x 450^0.75 = 7.82; 20 kg with 5 % fat x 0.8322 = 16.64. Protein 341 + 2026, calcium 18 + 73.8."""
    found = milking(450, 20, 5)
    assert found["energy"] == pytest.approx(7.82 + 16.64, abs=0.01)
    assert found["protein_g"] == pytest.approx(341 + 2026, abs=1)
    assert found["calcium_g"] == pytest.approx(91.8, abs=0.01)
    assert found["phosphorus_g"] == pytest.approx(58.5, abs=0.05)


@pytest.mark.parametrize("each", LEAST)
@given(WEIGHT_KG, MILK_KG, FAT, MORE)
def test_more_milk_more_fat_more_weight_never_need_less(
    each: str, weight_kg: float, milk_kg: float, fat: float, more: float
) -> None:
    found = milking(weight_kg, milk_kg, fat)[each]
    assert milking(weight_kg + more, milk_kg, fat)[each] >= found
    assert milking(weight_kg, milk_kg + more, fat)[each] >= found
    assert milking(weight_kg, milk_kg, fat + more / 10)[each] >= found


@given(WEIGHT_KG, MILK_KG, FAT, DAYS)
def test_a_hair_more_of_anything_is_a_hair_more_need(weight_kg: float, milk_kg: float, fat: float, days: float) -> None:
    """Nothing jumps: not at an edge of a range, and not on the day she has calved."""
    found = milking(weight_kg, milk_kg, fat, days)
    beside = milking(weight_kg + 1e-6, milk_kg + 1e-6, fat + 1e-6, days + 1e-6)
    assert all(abs(beside[each] - found[each]) < 1e-2 for each in found)


@given(WEIGHT_KG, st.floats(190, 285), st.floats(0, 10))
def test_the_nearer_to_calving_the_more_energy_and_the_less_appetite(
    weight_kg: float, days: float, more: float
) -> None:
    """Her own part shrinks while the calf grows; the two together never need less."""
    now = dry(weight_kg=value(weight_kg), days_in_calf=value(days))
    later = dry(weight_kg=value(weight_kg), days_in_calf=value(days + more))
    assert later["dry_matter_kg"].amount <= now["dry_matter_kg"].amount
    assert later["energy"].amount >= now["energy"].amount - 1e-9


@given(WEIGHT_KG)
def test_close_to_calving_without_a_date_is_the_middle_of_the_last_three_weeks(weight_kg: float) -> None:
    found = close_up(weight_kg=value(weight_kg))
    dated = dry(weight_kg=value(weight_kg), days_in_calf=value(265))
    assert {each: need.amount for each, need in found.items()} == {each: need.amount for each, need in dated.items()}


def test_a_milk_that_was_tested_in_full_is_reckoned_in_full() -> None:
    """450 kg, 20 kg of milk with 5.0, 3.8 and 4.8 %: 0.862 Mcal a kilogram, 25.05 together."""
    found = in_milk(
        weight_kg=value(450), milk_kg=value(20), fat_percent=value(5), protein_percent=value(3.8),
        lactose_percent=value(4.8), days_in_milk=value(90),
    )  # fmt: skip
    assert found["energy"].amount == pytest.approx(25.05, abs=0.01)


def test_a_gain_costs_and_a_loss_gives_back() -> None:
    housed = COW()["energy"].amount
    assert COW(gain_kg_day=value(0.1))["energy"].amount == pytest.approx(housed + 0.512)
    assert COW(gain_kg_day=value(-0.1))["energy"].amount == pytest.approx(housed - 0.492)


def test_what_lies_beyond_what_is_known_is_said() -> None:
    """A cow of 300 kg is lighter than those the equations were made for."""
    found = in_milk(weight_kg=value(300), milk_kg=value(10), fat_percent=value(5), days_in_milk=value(90))
    assert any("made for 400 to 800" in each for each in found["energy"].doubts())


@pytest.mark.parametrize(
    ("name", "amount"), [("weight_kg", -1.0), ("milk_kg", float("nan")), ("fat_percent", 101.0), ("days_in_milk", -1.0)]
)
def test_what_cannot_be_is_refused_by_name(name: str, amount: float) -> None:
    changed: dict[str, Any] = {name: value(amount)}
    with pytest.raises(ValueError, match=f"{name} is {amount}"):
        COW(**changed)


@given(st.floats(50, 1200), st.floats(40, 70))
def test_a_milking_cow_eats_more_than_a_dry_one(weight_kg: float, tdn_percent: float) -> None:
    assert milking_by_rule_kg(weight_kg, tdn_percent) > dry_by_rule_kg(weight_kg, tdn_percent)


@pytest.mark.parametrize(("weight_kg", "tdn_percent", "named"), [(-1, 50, "weight_kg"), (500, -1, "tdn_percent")])
def test_a_weight_or_feed_value_below_zero_is_refused(weight_kg: float, tdn_percent: float, named: str) -> None:
    with pytest.raises(ValueError, match=f"{named} is -1"):
        dry_by_rule_kg(weight_kg, tdn_percent)
