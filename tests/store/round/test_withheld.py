"""Withheld milk has one way to go, until the minute."""

from datetime import datetime, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.milk import Withholding
from store.book.facts.span import span
from store.book.figures import MilkedFigure
from store.book.snapshot import Snapshot
from store.book.words import Fate
from store.round.amount import Unreadable
from store.round.measured import fates_of, milked
from tests.farm import MORNING
from tests.store.round.made import animal_named, dawn, hand
from tests.store.round.named import milk_of

NOON = MORNING.replace(hour=12, minute=0)
MINUTE = timedelta(minutes=1)
LONG_AGO = MORNING - timedelta(days=7)


def withheld(until: datetime | None) -> Snapshot:
    """The pretend morning with Hazel's milk withheld."""
    return replace(dawn(), withheld={animal_named(dawn(), "Hazel").id: (Withholding(LONG_AGO, until, "udder tube"),)})


def test_milk_that_is_not_withheld_may_go_anywhere() -> None:
    """And another cow's stays free beside one that is."""
    assert fates_of(milk_of(dawn(), "Hazel"), span(MORNING)) == tuple(Fate)
    assert fates_of(milk_of(withheld(None), "Fennel"), span(MORNING)) == tuple(Fate)


def test_a_milk_step_says_why_and_until_when() -> None:
    """As the book has it."""
    assert milk_of(withheld(NOON), "Hazel").withheld == (Withholding(LONG_AGO, NOON, "udder tube"),)
    assert milk_of(withheld(NOON), "Fennel").withheld == ()


@pytest.mark.parametrize(
    ("now", "free"),
    [
        (MORNING, False),
        (NOON - MINUTE, False),
        (NOON - timedelta(microseconds=1), False),
        (NOON, True),
        (NOON + MINUTE, True),
    ],
)
def test_withheld_milk_is_thrown_away_until_the_minute(now: datetime, free: bool) -> None:
    """Not a minute longer, and not a minute less, whatever the screen showed before."""
    assert fates_of(milk_of(withheld(NOON), "Hazel"), span(now)) == (tuple(Fate) if free else (Fate.THROWN_AWAY,))


def test_milk_withheld_until_further_notice_is_thrown_away_for_ever() -> None:
    """Until somebody writes its end."""
    later = MORNING + timedelta(days=400)
    assert fates_of(milk_of(withheld(None), "Hazel"), span(later)) == (Fate.THROWN_AWAY,)


@pytest.mark.parametrize("fate", [fate for fate in Fate if fate is not Fate.THROWN_AWAY])
def test_withheld_milk_goes_nowhere_else(fate: Fate) -> None:
    """Neither to the house nor to the calves: no draft is made, in a sentence."""
    with pytest.raises(Unreadable, match=f"^Hazel's milk is withheld: {fate.value} is not among its uses"):
        milked(hand(dawn()), milk_of(withheld(NOON), "Hazel"), "9.9", fate)


def test_withheld_milk_is_weighed_like_any_other() -> None:
    """How much she gives is worth knowing."""
    (figure,) = milked(hand(dawn()), milk_of(withheld(NOON), "Hazel"), "9.9", Fate.THROWN_AWAY).figures
    assert isinstance(figure, MilkedFigure)
    assert figure.milk_kg == pytest.approx(8.5)
    assert figure.fate is Fate.THROWN_AWAY


def test_a_pail_typed_in_later_is_withheld_by_the_time_it_was_milked() -> None:
    """Typed at one o'clock for half past six: it was withheld then."""
    step, late = milk_of(withheld(NOON), "Hazel"), replace(hand(dawn()), now=MORNING)
    with pytest.raises(Unreadable, match="withheld"):
        milked(late, step, "9.9", Fate.HOUSE)
    assert milked(replace(late, now=NOON), step, "9.9", Fate.HOUSE).figures
