"""What a whole animal needs against printed whole needs: those that no single equation holds."""

import pytest

from store.husbandry.needs.dairy import dry, in_milk
from store.husbandry.needs.energy import conceptus_kg, maintenance, own_weight_kg, pregnancy
from store.husbandry.needs.suckler import suckler
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Printed, Source, example, given

SHEET = Source(
    "studylib.net/doc/7201686, guidelines after the 7th edition (2001), 680 kg, 3.5 % fat, 3.0 % true protein: what "
    "she eats x energy of it, as far apart as the rounding of these two lets them lie"
)
DRY_SHEET = Source(f"{SHEET.words}; dry, 270 days in calf, 751 kg with it")
EARLY = Source("beefmagazine.com, Cows' daily feed consumption: 16 lb TDN in the first 90 days, 1200 lb, 20 lb of milk")
NEBRASKA = Source(
    "lautnerfarms.com, The changing nutrient needs of the spring calving cow: 14.5 to 16.5 lb TDN for 1200 lb in milk"
)
IN_MILK = (
    example(34.69, 0.19, SHEET, milk_kg=35.0, days_in_milk=90.0),
    example(27.81, 0.17, SHEET, milk_kg=25.0, days_in_milk=90.0),
    example(48.30, 0.23, SHEET, milk_kg=54.4, days_in_milk=90.0),
    example(34.79, 0.19, SHEET, milk_kg=35.0, days_in_milk=11.0),
)
"""Net energy for milk. [Mcal]"""
DRY = example(14.385, 0.12, DRY_SHEET, weight_kg=751.0, days_in_calf=270.0, calf_kg=45.0)
SUCKLERS = (
    *(example(16, 0.7, EARLY, days_in_milk=days) for days in (30.0, 60.0, 90.0)),
    *(example(15.5, 1.0, NEBRASKA, days_in_milk=days) for days in (30.0, 90.0, 120.0)),
)
"""TDN. [lb] The table from memory has 15.7, 16.7 and 16.4 in these months, printed is one figure for all of them."""
CHECKED = {"needs": (*IN_MILK, DRY, *SUCKLERS)}
TRUE_OF_CRUDE = 0.93


@pytest.mark.parametrize("printed", IN_MILK, ids=lambda each: f"{each.gives:g}")
def test_the_energy_of_a_cow_in_milk_is_the_printed_one(printed: Printed) -> None:
    found = in_milk(
        weight_kg=given(680, "weight", "kg", "printed"),
        milk_kg=given(printed.inputs["milk_kg"], "milk", "kg", "printed"),
        fat_percent=given(3.5, "fat", "%", "printed"),
        protein_percent=given(3.0 / TRUE_OF_CRUDE, "protein", "%", "printed"),
        lactose_percent=given(4.8, "lactose", "%", "printed"),
        days_in_milk=given(printed.inputs["days_in_milk"], "days in milk", "days", "printed"),
    )
    assert found["energy"].amount == pytest.approx(printed.gives, abs=printed.within)


def test_the_energy_of_a_dry_cow_is_the_printed_one() -> None:
    """Her own weight kept alive, and the calf of 45 kg in her; where nobody knows the calf, its weight adds 1 %."""
    weight_kg, days, calf_kg = (DRY.inputs[each] for each in ("weight_kg", "days_in_calf", "calf_kg"))
    own_kg = own_weight_kg(weight_kg, conceptus_kg(days, calf_kg))
    assert maintenance(own_kg) + pregnancy(days, calf_kg) == pytest.approx(DRY.gives, abs=DRY.within)
    unknown = dry(weight_kg=given(weight_kg, "", "kg", "printed"), days_in_calf=given(days, "", "days", "printed"))
    assert unknown["energy"].amount == pytest.approx(DRY.gives, rel=0.013)


@pytest.mark.parametrize("printed", SUCKLERS, ids=lambda each: f"{each.inputs['days_in_milk']:g} days")
def test_the_tdn_of_a_suckler_in_early_milk_is_the_printed_one(printed: Printed) -> None:
    found = suckler(
        weight_kg=given(1200 * KG_PER_LB, "weight", "kg", "printed"),
        days_in_milk=given(printed.inputs["days_in_milk"], "days", "days", "printed"),
    )
    assert found["tdn_kg"].amount / KG_PER_LB == pytest.approx(printed.gives, abs=printed.within)
