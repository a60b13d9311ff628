"""What the ration of a calf on milk says beside its balance."""

import pytest
from msgspec.structs import replace

from store.book.drafts import Subject
from store.ration.calf import CalfDay
from tests.tui.keys import Keys, Sitting
from tests.tui.rations import AMERICAN, METRIC, MILK, at_ration, v
from tui.place import Place
from tui.ration.opening import ration

NEW = CalfDay(v(1.0), is_new=True, colostrum_kg=v(4.0), least_kg=v(4.0), ample_kg=v(8.0))


def at_ration_of(sitting: Sitting, name: str) -> Keys:
    """At the ration of one animal."""
    animal = next(each for each in sitting.walker.snapshot.animals if each.name == name)
    assert isinstance(sitting.place, Place)
    return Keys(ration(sitting.house, sitting.place, Subject(animal_id=animal.id)))


def said(keys: Keys) -> str:
    """The page in one line."""
    return " ".join(keys.text(120, 60).split())


def test_a_calf_says_its_milk_its_gain_and_what_it_eats_before_it_is_weaned(demo: Sitting) -> None:
    found = said(at_ration_of(demo, "Rook"))
    assert "MILK at least 5.8 kg a day, a tenth of its weight; where it may drink it takes about 11.6 kg." in found
    assert "DRINKS about 6.6 kg a day, by its gain; by its weight 8.7 kg." in found
    assert "that such milk and feed should make" not in found
    assert "WEANING eats 0.34 of 1.00 kg dry feed a day; days of enough: 0 of 3." in found


def test_of_a_calf_that_gets_no_dry_feed_nothing_is_guessed(demo: Sitting) -> None:
    assert "WEANING no dry feed of it is in the book for yesterday" in said(at_ration_of(demo, "Wren"))


def test_why_lists_what_it_drinks_and_eats(demo: Sitting) -> None:
    listed = at_ration_of(demo, "Rook").press("w").text(80, 60)
    assert "milk that it drinks" in listed
    assert "dry feed that it ate" in listed


@pytest.mark.parametrize("name", ["Fennel", "Cob"])
def test_a_cow_and_a_weaned_calf_say_nothing_of_it(demo: Sitting, name: str) -> None:
    assert "WEANING" not in said(at_ration_of(demo, name))


def test_a_calf_of_its_first_day_has_its_colostrum_first(sitting: Sitting) -> None:
    found = said(at_ration(sitting, MILK, replace(METRIC, calf=NEW)))
    assert "COLOSTRUM 4.0 kg, a tenth of its weight: 3 L of it within 6 h. Local rules and your vet decide." in found
    american = said(at_ration(sitting, MILK, replace(AMERICAN, calf=NEW)))
    assert "COLOSTRUM 8.8 lb, a tenth of its weight: 0.79 US gal of it within 6 h." in american


def test_three_days_of_enough_say_that_it_can_be_weaned(sitting: Sitting) -> None:
    eats = CalfDay(v(1.0), eaten_kg=(v(1.1), v(1.0), v(1.2), None))
    found = said(at_ration(sitting, MILK, replace(METRIC, calf=eats)))
    assert "eats 1.10 of 1.00 kg dry feed a day; days of enough: 3 of 3: it can be weaned." in found
