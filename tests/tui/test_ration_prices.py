"""What energy and protein cost in each feed, in the list that adds one."""

from msgspec.structs import replace

from tests.tui.keys import Sitting
from tests.tui.rations import AMERICAN, BARLEY, DRY, HAY, MILK, NO_FEEDS, PEN, UNKNOWN, at_ration
from tests.tui.test_ration_calf import said


def test_each_feed_says_what_a_megacalorie_and_its_protein_cost_and_the_cheapest_stand_below(sitting: Sitting) -> None:
    """Barley: 0.31 / 0.91 / 1.9 is 0.18, 0.31 / 0.91 / 0.124 is 2.75; hay: 0.2 / 0.86 / 0.112 is 2.08."""
    found = said(at_ration(sitting, MILK).press("a"))
    assert "rolled barley 60.0 kg there, 0.31 EUR a kg: Mcal 0.18, protein 2.75" in found
    assert "CHEAPEST a Mcal in rolled barley (0.18), a kg of protein in grass hay (2.08)." in found


def test_of_beef_cattle_it_is_a_kilogram_of_tdn(sitting: Sitting) -> None:
    """By the unit in which their energy is counted. Barley: 0.31 / 0.91 / 0.827 is 0.41."""
    tdn = replace(PEN, needs=(replace(PEN.needs[0], unit="kg TDN"), *PEN.needs[1:]), now={})
    assert "rolled barley 60.0 kg there, 0.31 EUR a kg: TDN 0.41, protein 2.75" in said(
        at_ration(sitting, tdn).press("a")
    )


def test_an_american_farm_reads_pounds(sitting: Sitting) -> None:
    found = said(at_ration(sitting, MILK, AMERICAN).press("a"))
    assert "0.14 USD a lb: Mcal 0.18, protein 1.25" in found
    assert "a lb of protein in grass hay (0.94)" in found


def test_where_nothing_has_a_price_none_is_cheapest(sitting: Sitting) -> None:
    for case in (NO_FEEDS, replace(DRY, feeds=(UNKNOWN, replace(HAY, price_per_kg=None)))):
        assert "CHEAPEST" not in said(at_ration(sitting, case).press("a"))


def test_a_feed_that_holds_none_of_it_has_no_price_of_it(sitting: Sitting) -> None:
    oil = replace(BARLEY, made={**BARLEY.made, "cp_percent": replace(BARLEY.made["cp_percent"], amount=0.0)})
    found = said(at_ration(sitting, replace(MILK, feeds=(oil,), now={})).press("a"))
    assert "Mcal 0.18" in found
    assert "protein" not in found.split("ADD A FEED")[1]


def test_why_walks_from_a_price_to_the_delivery(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("a", "w")
    assert "a Mcal in rolled barley" in keys.text()
    assert "price / (dry matter %" in keys.press("enter").text()
