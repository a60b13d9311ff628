"""M, then a mix: what came stands beside what is given now, and Enter takes it as new; nothing is written."""

import pytest
from msgspec.structs import replace
from syrupy.assertion import SnapshotAssertion

from store.ration.mix import Mix
from store.ration.parts import Missing
from tests.tui.keys import Keys, Sitting
from tests.tui.rations import BARLEY, MILK, NO_WEIGHT, PEN, at_ration, ration_of, v
from tui.page import Size
from tui.ration.mixing import Mixing
from tui.ration.ration import Ration

KNOWN = replace(MILK, feeds=MILK.feeds[:4])
FIND = ("m", "1", "enter")


def mixing_of(keys: Keys) -> Mixing:
    """The place, which is the mix."""
    assert isinstance(keys.place, Mixing)
    return keys.place


def test_the_mix_is_as_kept(sitting: Sitting, screen: SnapshotAssertion) -> None:
    assert at_ration(sitting, KNOWN).press(*FIND).text() == screen


@pytest.mark.parametrize("size", [(80, 24), (60, 18), (120, 36)])
def test_a_mix_without_two_feeds_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, size: tuple[int, int]) -> None:
    assert at_ration(sitting, KNOWN).press(*FIND, " ", "down", " ").text(*size) == screen


def test_enter_takes_the_mix_as_new_and_writes_nothing(sitting: Sitting) -> None:
    before = sitting.written()
    keys = at_ration(sitting, KNOWN).press(*FIND)
    found = mixing_of(keys).found
    assert isinstance(found, Mix)
    keys.press("enter")
    assert {cell: kg for cell, kg in ration_of(keys).tried.items() if kg} == found.amounts
    assert "nothing is written" in keys.said
    assert sitting.written() == before


def test_a_digit_looks_for_the_least_change(sitting: Sitting) -> None:
    keys = at_ration(sitting, KNOWN).press(*FIND, "2")
    assert "MIX  Fennel: the least change" in keys.text()


def test_where_nothing_fits_the_nearest_is_shown_with_what_is_short_and_in_the_way(sitting: Sitting) -> None:
    tight = replace(KNOWN, meal_limit_kg=v(0.1, "meal limit"))
    page = at_ration(sitting, tight).press(*FIND).text(120, 40)
    assert "NOTHING FITS ALL: this is the nearest." in page
    assert "energy" in page
    assert "IN THE WAY  Any one of these would do, if you can live with it:" in page
    assert "- all loose feed, in the morning" in page


def test_it_says_that_it_looks_before_it_does_and_escape_goes_back(sitting: Sitting) -> None:
    place = Mixing(ration_of(at_ration(sitting, KNOWN)))
    assert place.waits
    assert "Looking for a mix ..." in place.draw(Size(80, 24)).text()
    assert isinstance(place.press("escape", "\x1b"), Ration)
    place.finish()
    assert not place.waits
    assert "It meets every need" in place.draw(Size(80, 24)).text()


def test_a_feed_is_left_out_and_taken_in_again_and_the_mix_is_looked_for_anew(sitting: Sitting) -> None:
    keys = at_ration(sitting, KNOWN).press(*FIND)
    first = mixing_of(keys).found
    keys.press("down", "down", "down", " ")
    assert "WITHOUT  rolled barley" in keys.text()
    row = next(row for row in keys.text().splitlines() if row.startswith(" > "))
    assert row.split()[1:9] == ["rolled", "barley", "0", "+", "0", "0", "+", "0"]
    assert "Space take it in" in keys.text()
    found = mixing_of(keys).found
    assert isinstance(found, Mix)
    assert not [kg for (_, id_), kg in found.amounts.items() if kg and id_ == BARLEY.feed.id]
    keys.press(" ")
    assert mixing_of(keys).found == first
    assert "WITHOUT" not in keys.text()


def test_with_every_feed_left_out_the_nearest_is_nothing(sitting: Sitting) -> None:
    keys = at_ration(sitting, KNOWN).press(*FIND)
    keys.press("up", " ", "up", " ", "up", " ", "up", " ")
    assert "WITHOUT  dairy nuts, lucerne pellets, grass hay, rolled barley" in keys.text()
    assert "NOTHING FITS ALL" in keys.text()
    assert "IN THE WAY  No one need or limit alone" in keys.text()


def test_without_needs_it_says_what_must_be_known_first(sitting: Sitting) -> None:
    keys = at_ration(sitting, NO_WEIGHT).press(*FIND)
    assert "No mix can be looked for yet" in keys.text()
    assert "Nobody weighed Fennel" in keys.text()
    assert keys.press("enter").said == "There is no mix to take."
    assert isinstance(keys.press("escape").place, Ration)


def test_a_missing_sentence_is_said_once(sitting: Sitting) -> None:
    says = Missing("weight", "Nobody weighed them.")
    page = at_ration(sitting, replace(PEN, needs=(), missing=(says, says))).press(*FIND).text()
    assert page.count("Nobody weighed them.") == 1
