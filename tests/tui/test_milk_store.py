"""The milk store, X: jars oldest first, used up and taken back, what is now known withheld, and litres by use."""

from datetime import timedelta

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.figures import UsedUpFigure
from store.book.opening import Book
from store.book.reading.milk import read_uses
from store.book.records.yard import Withheld
from store.book.words import State
from store.round.jars import used_up
from tests.farm import MORNING, HandClock
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn
from tests.tui.keys import Sitting
from tui.milk_store.store import MilkStore

OLDEST = "Sat 7 Mar morning"
"""Four days before the pretend morning."""


@pytest.fixture
def store(sitting: Sitting) -> Sitting:
    """The milk store on the pretend morning: the week before is in the book."""
    return sitting.press("x")


def lines(sitting: Sitting) -> list[str]:
    """The jars, as they stand."""
    rows = sitting.text(110, 40).splitlines()
    return [row.strip("> ") for row in rows if "kg" in row and " Mar " in row and "withheld" not in row]


def place_of(sitting: Sitting) -> MilkStore:
    """Where we are."""
    assert isinstance(sitting.place, MilkStore)
    return sitting.place


def test_the_jars_of_the_last_days_stand_oldest_first(store: Sitting) -> None:
    assert OLDEST in lines(store)[0]
    assert "Fennel" in lines(store)[0]
    assert len(lines(store)) == 11
    assert "MILK STORE  11 jars, oldest first" in store.text()
    times = [jar.went.pailful.when.earliest for jar in place_of(store).jars]
    assert times == sorted(times)


def test_a_jar_says_how_soon_it_was_cold_and_whether_that_was_late(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Hazel", "milk").press("8.2!", "enter")
    clock.move(minutes=22)
    sitting.to_step("Milk", "cool").press("enter", "x")
    assert "Hazel" in lines(sitting)[-1]
    assert "cold in 22 min" in lines(sitting)[-1]
    clock.move(hours=1)
    sitting.press("backspace").to_step("Milk", "cool").press("t", "7:40", "enter", "1", "enter", "x")
    assert "cold in 1 h 09, LATE" in lines(sitting)[-1]
    assert "not in ice" in lines(sitting)[0]


def test_enter_writes_a_jar_used_up_and_enter_on_it_takes_that_back(store: Sitting) -> None:
    store.press("enter")
    assert store.said == "Used up. Enter on it takes that back."
    assert OLDEST in lines(store)[-1]
    assert "used up" in lines(store)[-1]
    assert "10 jars" in store.text(110, 40)
    store.press("enter")
    assert store.said == "Taken back: it is there again."
    assert OLDEST in lines(store)[0]
    assert "11 jars" in store.text()
    assert "used up" not in "".join(lines(store))


def test_the_eleventh_jar_is_picked_by_its_number(store: Sitting) -> None:
    last = place_of(store).jars[10]
    store.press("11", "enter")
    assert [jar.step_id for jar in place_of(store).jars if jar.used_up] == [last.step_id]


def test_what_is_written_belongs_to_no_round_and_names_its_milking(store: Sitting, book: Book) -> None:
    jar = place_of(store).jars[0]
    draft = used_up(store.walker.person.id, MORNING, jar)
    assert draft.turn is None
    assert draft.figures == (UsedUpFigure(jar.went.pailful.step_id),)
    store.press("enter")
    assert store.written() == 0
    cow_id = jar.went.pailful.cow_id
    assert cow_id
    uses = read_uses(book.desk, [cow_id], MORNING - timedelta(days=9))
    assert uses[jar.step_id].used_up
    taken_back = used_up(store.walker.person.id, MORNING, place_of(store).jars[-1])
    assert (taken_back.state, taken_back.shown) == (State.OPEN, uses[jar.step_id].entry_id)


@pytest.fixture
def withheld(sitting: Sitting, book: Book) -> Sitting:
    """The store; Hazel's milk is now known withheld for two days, in which three jars of hers were put to the house."""
    hazel, since = animal_named(dawn(), "Hazel").id, MORNING - timedelta(days=2)
    put(book.desk, Withheld, animal_id=hazel, begins_at=since, ends_at=None, why="udder tube")
    return sitting.press("x")


def test_milk_that_is_now_known_withheld_is_no_jar_to_use(withheld: Sitting) -> None:
    text = withheld.text(110, 40)
    assert "THROW AWAY: 3 jars of Hazel, now known withheld since Mon 9 Mar 06:31" in text
    assert "MILK STORE  8 jars, oldest first" in text
    assert "thrown away 23.1 kg" in text
    order = [
        words for words in text.splitlines() if "THROW AWAY" in words or "TO USE" in words or " Sat 7 Mar" in words
    ]
    assert ["THROW AWAY" in words for words in order] == [True] * 5 + [False] * 4
    assert order[5].strip() == "TO USE, oldest first"


def test_the_first_page_has_what_must_go_and_the_litres_also_where_there_are_many_jars(withheld: Sitting) -> None:
    text = withheld.text()
    assert "THROW AWAY: 3 jars of Hazel" in text
    assert "7 days: house 96.2 kg" in text
    assert "TO USE, oldest first" in text


def test_a_jar_of_it_that_is_gone_is_still_said(withheld: Sitting) -> None:
    text = withheld.press("enter").text(110, 40)
    assert "THROW AWAY: 2 jars of Hazel" in text
    assert "USED UP OR THROWN AWAY: Mon 9 Mar morning, Hazel, now known withheld since Mon 9 Mar 06:31" in text
    assert "used up" in lines(withheld)[-1]


def test_a_pail_milked_after_the_ice_is_not_cold_by_it(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Fennel", "milk").press("6.4", "enter").to_step("Milk", "cool").press("enter")
    clock.move(minutes=20)
    sitting.to_step("Hazel", "milk").press("8.2!", "enter", "x")
    assert "Hazel" in lines(sitting)[-1]
    assert "not in ice" in lines(sitting)[-1]


def test_the_litres_of_a_week_and_of_the_month_stand_below(store: Sitting) -> None:
    """By hand, the house pails since 5 March: 21.1 + 21.9 + 20.9 + 20.7 + 20.0 + 14.7; and 21.3 on the 4th. [kg]"""
    (_, week), (_, month) = place_of(store).totals
    assert sum(week.values()) == pytest.approx(119.3)
    assert sum(month.values()) == pytest.approx(119.3 + 21.3)
    assert "7 days: house " in store.text(110, 40)
    assert "March: house " in store.text(110, 40)


def test_long_after_the_last_milking_it_is_empty(sitting: Sitting, clock: HandClock) -> None:
    clock.move(days=60)
    sitting.begin()
    sitting.place = sitting.house.milk_store(sitting.house.closing())
    assert "no milk was put to the house" in sitting.text()
    assert sitting.press("down", "enter").said == "There is no jar. A pail put to the house is one."


@pytest.mark.parametrize("size", [(80, 24), (120, 36), (60, 18), (40, 12)])
def test_the_screen_keeps_the_jars_and_the_key_on_every_size(store: Sitting, size: tuple[int, int]) -> None:
    text = store.text(*size)
    assert "Enter" in text
    assert "7 Mar" in text


def test_the_screen_of_the_store_is_as_kept(store: Sitting, screen: SnapshotAssertion) -> None:
    assert store.press("enter").text() == screen
