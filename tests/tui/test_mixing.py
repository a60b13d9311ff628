"""M, then a mix: what came stands beside what is given now, and Enter takes it as new; nothing is written."""

from msgspec.structs import replace
from syrupy.assertion import SnapshotAssertion

from store.ration.mix import Mix
from store.ration.parts import Missing
from tests.tui.keys import Keys, Sitting
from tests.tui.rations import MILK, NO_WEIGHT, PEN, at_ration, ration_of, v
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
    assert "IN THE WAY" in page


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
