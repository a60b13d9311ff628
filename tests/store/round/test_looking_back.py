"""What is looked back at: this round's pail among the earlier ones, and each against her usual."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.milk import PastPail
from store.book.snapshot import Snapshot
from store.book.words import Fate
from store.husbandry.milk.udder import filled_h
from store.husbandry.milk.usual import usual_rate
from store.round.looking_back import LookBack, looking_back
from store.round.measured import milked
from tests.farm import MORNING
from tests.store.round.made import animal_named, dawn, hand, wrote
from tests.store.round.named import milk_of

HAZEL = animal_named(dawn(), "Hazel").id


def past(*kg: float | None, held_back: int = 0) -> Snapshot:
    """The pretend morning with pails of Hazel 12 h apart, the newest 12 h ago; the newest so many held back."""
    pails = tuple(
        PastPail(MORNING - timedelta(hours=12 * (at + 1)), milk_kg, at < held_back) for at, milk_kg in enumerate(kg)
    )
    return replace(dawn(), pails={HAZEL: pails})


def back(snapshot: Snapshot) -> LookBack:
    """Hazel's."""
    return looking_back(snapshot, HAZEL)


def test_her_usual_is_of_the_last_seven_before_that_compare() -> None:
    """The eighth, far off, is not in it; nor is the very last, whose hours nobody knows, nor the pail itself."""
    found = back(past(2, 6, 6, 6, 6, 6, 6, 6, 20, 6))
    assert len(found.pails) == 10
    alike, one_off = usual_rate((6 / filled_h(12),) * 7), usual_rate((*((6 / filled_h(12),) * 6), 20 / filled_h(12)))
    assert found.usual_kg_h(found.pails[0]) == pytest.approx(alike)
    assert found.usual_kg_h(found.pails[1]) == pytest.approx(one_off)


def test_what_she_gives_in_a_day_is_of_the_last_seven_that_compare() -> None:
    """12 h apart, 6 kg each."""
    assert back(past(6, 6, 6, 6, 6, 6, 6, 20, 6)).day_kg == pytest.approx(12.0)


def test_each_pail_is_set_against_her_usual_by_its_hours() -> None:
    """9 kg where 6 are usual: 150 %; what does not compare is set there too."""
    found = back(past(3, 9, 6, 6, 6, 6, 6, held_back=1))
    assert [round(found.percent(each) or 0) for each in found.pails[:3]] == [50, 150, 100]
    assert found.percent(found.pails[-1]) is None
    assert found.held_back(14) == 1


def test_the_newest_three_are_set_against_those_before() -> None:
    """5.4 kg thrice, 6 kg before: 10 % under; with two before there is nothing to set them against."""
    assert back(past(5.4, 5.4, 5.4, 6, 6, 6, 6)).trend_percent == pytest.approx(-10)
    assert back(past(5.4, 5.4, 5.4, 6, 6, 6)).trend_percent is None


def test_with_few_pails_there_is_no_usual_and_no_strip() -> None:
    """Two that compare."""
    found = back(past(6, 6, 6))
    assert found.usual_kg_h(found.pails[0]) is None
    assert [found.percent(each) for each in found.pails] == [None] * 3


def test_of_a_cow_never_milked_nothing_is_known() -> None:
    """Not a day's milk either."""
    found = back(past())
    assert (found.pails, found.day_kg, found.held_back(14)) == ((), None, 0)


def test_this_round_s_pail_is_the_newest() -> None:
    """With its round, its use and its marks; undone it is gone."""
    snapshot = past(6, 6, 6)
    draft = milked(hand(snapshot), milk_of(snapshot, "Hazel"), "6 l", Fate.CALVES, held_back=True)
    newest = back(wrote(snapshot, draft)).pails[0].pail
    assert (newest.turn, newest.fate, newest.held_back) == (snapshot.turn, Fate.CALVES, True)
    assert newest.milk_kg == pytest.approx(6.18)
