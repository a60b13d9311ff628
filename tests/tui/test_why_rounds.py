"""Whys of whole rounds of the demo farm: a morning before and behind its steps, its evening, one that went wrong."""

from collections.abc import Iterator

from store.book.drafts import RowDraft
from store.book.words import SettingName
from store.round.steps import FeedStep, MilkStep, SoakCheckStep, SoakStartStep
from store.round.whys import NUMBERS
from tests.tui.keys import Sitting
from tests.tui.test_mornings import clock_of, end, last_evening_from_the_sheet, walk_on
from tests.tui.whys import comes_out, is_said
from tui.feed_room.room import FeedRoom
from tui.place import Place
from tui.walk.lamp import Lamp
from tui.why.why import IN_KILOGRAMS

ON_THE_PAGE = FeedStep | MilkStep | SoakCheckStep | SoakStartStep
"""Steps whose page says each of their numbers."""


def lamps(sitting: Sitting) -> Iterator[Lamp]:
    """Every step of a round, as it is walked past."""
    for index in range(len(sitting.walker.steps)):
        place = sitting.house.lamp(index)
        assert isinstance(place, Lamp)
        yield place


def all_hold(sitting: Sitting) -> set[type]:
    """Each number of a round comes out of its why, and is what the page says; the kinds of steps that had any."""
    walker, kinds = sitting.walker, set()
    for lamp in lamps(sitting):
        sitting.place = lamp
        page = sitting.text(140, 90)
        for value in lamp.numbers():
            kinds.add(type(lamp.step))
            comes_out(value)
            if isinstance(lamp.step, ON_THE_PAGE):
                told = is_said(value, page, walker.farm.units, walker.zone)
                assert told, f"{lamp.step.name}, {value.name} {value.amount} {value.unit}\n{page}"
    return kinds


def test_every_number_of_a_morning_and_of_its_evening_holds(demo: Sitting) -> None:
    kinds = all_hold(demo)
    demo.place = demo.house.first()
    walk_on(demo)
    kinds |= all_hold(demo)
    demo.place = demo.house.closing()
    end(demo)
    clock_of(demo).move(hours=11)
    demo.begin()
    kinds |= all_hold(demo)
    assert kinds >= set(NUMBERS) - {SoakStartStep}


def test_every_number_of_a_morning_that_went_wrong_holds(demo: Sitting) -> None:
    demo.press("enter")
    walk_on(demo)
    end(demo)
    clock_of(demo).move(hours=23)
    demo.presses = 0
    last_evening_from_the_sheet(demo.begin())
    all_hold(demo)
    demo.place = demo.house.first()
    walk_on(demo, "Fennel milk")
    demo.press("m", "1", "enter", "2.9", "enter")
    all_hold(demo)


def held(sitting: Sitting) -> list[str]:
    """Each number of a place comes out of its why; those that its page does not say."""
    place, walker = sitting.place, sitting.walker
    assert isinstance(place, Place)
    page, numbers = sitting.text(140, 200), place.numbers()
    assert numbers
    for value in numbers:
        comes_out(value)
    return [each.name for each in numbers if not is_said(each, page, walker.farm.units, walker.zone)]


def test_every_number_of_the_places_of_the_round_is_what_they_say(demo: Sitting) -> None:
    demo.press("enter")
    walk_on(demo)
    assert held(demo) == []
    end(demo)
    demo.place = demo.house.bench()
    assert held(demo) == []
    demo.place = demo.house.milk_store(demo.house.first())
    assert held(demo) == []
    cow = next(step.animal.id for step in demo.walker.steps if isinstance(step, MilkStep))
    demo.place = demo.house.looking_back(demo.house.first(), cow)
    assert held(demo) == []


def test_every_number_of_the_feed_room_and_its_costs_is_what_they_say(demo: Sitting) -> None:
    demo.press("enter").press("d")
    place = demo.place
    assert isinstance(place, FeedRoom)
    for row in range(len(place.lines)):
        place.mark(row)
        of_it = place.lines[row].stock.feed.name
        assert [name for name in held(demo) if of_it in name and "rounds" not in name] == []
        assert (f"{of_it} put out a day" in [each.name for each in place.numbers()]) is place.lines[
            row
        ].stock.feed.baled
    demo.press("c")
    assert held(demo) == []


def test_in_american_words_and_units_every_number_is_said_as_its_page_says_it(demo: Sitting) -> None:
    for name, value in ((SettingName.DIALECT, "american"), (SettingName.UNITS, "us")):
        demo.walker.book.change([RowDraft("setting", {"name": name, "value": value})])
    clock_of(demo).move(minutes=1)
    demo.walker.look()
    all_hold(demo)
    milk = next(at for at, step in enumerate(demo.walker.steps) if isinstance(step, MilkStep))
    demo.place = demo.house.lamp(milk)
    page = demo.press("w", "down", "enter", "down", "enter").text()
    assert " lb" in page
    assert "kg" not in page.split("WRITTEN")[0].replace("kilograms", "")
    assert IN_KILOGRAMS in " ".join(page.split())
