"""Above her milkings: what they say beyond themselves, and that each number says why."""

import pytest
from msgspec.structs import replace
from syrupy.assertion import SnapshotAssertion

from store.book.drafts import RowDraft
from store.book.words import SettingName
from tests.tui.keys import Sitting
from tests.tui.whys import comes_out, is_said
from tui.yard.looking_back import LookingBack
from tui.yard.milk_told import only_hers


def looked_back(sitting: Sitting, name: str) -> Sitting:
    """Y, at her milking."""
    return sitting.to_step(name, "milk").press("y")


@pytest.mark.parametrize(("width", "height"), [(80, 24), (120, 36)])
def test_a_cow_that_shares_her_milk_as_kept(demo: Sitting, screen: SnapshotAssertion, width: int, height: int) -> None:
    """Fennel has a milk test, a calf that was weighed twice, and a month of pails."""
    assert looked_back(demo, "Fennel").text(width, height) == screen


def test_every_number_of_it_comes_out_of_its_parts_and_stands_on_the_page(demo: Sitting) -> None:
    looked_back(demo, "Fennel")
    assert isinstance(demo.place, LookingBack)
    page, numbers = demo.text(120, 60), demo.place.told.values()
    assert len(numbers) == 12
    for value in numbers:
        comes_out(value)
        amount = replace(value, unit="kg")
        assert is_said(amount, page, demo.walker.farm.units, demo.walker.zone), value.name


def test_w_walks_into_what_the_calf_took_and_enter_goes_back(demo: Sitting) -> None:
    looked_back(demo, "Fennel").press("w")
    page = demo.text(80, 40)
    assert "WHY  Fennel, looking back" in page
    assert "the calf took, by the pail" in page
    assert "FENNEL  " in demo.press("w").text()


def test_a_cow_without_a_calf_has_a_forecast_and_no_calf_line(demo: Sitting) -> None:
    text = looked_back(demo, "Hazel").text()
    assert "COMING  30 days: about" in text
    assert "CALF    took" not in text
    assert "WORTH" not in text


def test_american_pounds(demo: Sitting) -> None:
    demo.walker.book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": "us"})])
    demo.walker.look()
    text = looked_back(demo, "Fennel").text()
    assert "lb a day by the pail" in text


def test_a_calf_of_two_cows_is_nobodys_alone(demo: Sitting) -> None:
    snapshot = demo.walker.snapshot
    share = snapshot.shares[0]
    assert only_hers(snapshot, share.cow_id)
    other = next(each.id for each in snapshot.animals if each.id not in share.cow_ids)
    two = replace(snapshot, shares=(replace(share, second_cow_id=other),))
    assert only_hers(two, share.cow_id) == ()
