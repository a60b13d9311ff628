"""What they drink, in a line below the ration."""

from msgspec.structs import replace

from store.book.drafts import Subject
from tests.tui.keys import Keys, Sitting
from tests.tui.rations import AMERICAN, MILK, NO_WEIGHT, PEN, SHEEP, STEERS, at_ration, v
from tests.tui.test_ration_calf import at_ration_of, said
from tui.place import Place
from tui.ration.opening import ration


def test_a_cow_in_milk_drinks_by_what_she_eats_and_gives(demo: Sitting) -> None:
    """13.4 kg dry and 12.7 kg milk: 12.3 + 28.8 + 9.3 = 50; 16.0 + 21.2 + 11.4 + 1.5 + 12 = 62."""
    assert "WATER about 50 to 62 L a day at nights of 10 C (a starting value)." in said(at_ration_of(demo, "Fennel"))


def test_a_pen_is_told_for_all_heads_by_the_printed_rows(demo: Sitting) -> None:
    """A dry cow and one close to calving, two light ones and a heifer: 10.8 x 2 + 6.5 x 2 + 9.3 gallons at 70 F."""
    animal = next(each for each in demo.walker.snapshot.animals if each.name == "Cob")
    assert isinstance(demo.place, Place)
    found = said(Keys(ration(demo.house, demo.place, Subject(pen_id=animal.pen_id))))
    assert "WATER all 5, about 166 to 266 L a day at 21 C to 32 C, as for beef cattle." in found


def test_in_gallons_on_an_american_farm(sitting: Sitting) -> None:
    heavy = replace(PEN, heads=(replace(STEERS[0], weight_kg=v(500)),))
    assert "WATER about 11 to 18 US gal a day at 70 F to 90 F" in said(at_ration(sitting, heavy, AMERICAN))


def test_of_calves_on_milk_sheep_and_what_is_not_known_nothing_is_said(demo: Sitting) -> None:
    assert "WATER" not in said(at_ration_of(demo, "Rook"))
    assert "WATER" not in said(at_ration(demo, SHEEP))
    assert "WATER" not in said(at_ration(demo, NO_WEIGHT))
    light = replace(PEN, heads=(*PEN.heads[1:], replace(STEERS[0], weight_kg=None)))
    assert "WATER" not in said(at_ration(demo, light))


def test_why_walks_down_to_the_night_and_the_milk(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK)
    assert "water a day, at most" in keys.press("w").text(80, 60)
