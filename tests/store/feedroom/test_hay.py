"""Hay until turnout."""

from datetime import date, timedelta

import pytest

from store.book.figures import FedFigure
from store.book.opening import Book
from store.book.reading.needs import read_needs
from store.book.stocks import FeedSettings
from store.book.words import Kind
from store.feedroom.hay import a_day_kg, hay_left, hay_words
from store.husbandry.units import KG_PER_LB
from tests.store.feedroom.made import HAY, THIS_MORNING, TODAY, fed_step, named

BALE_KG = 46 * KG_PER_LB


def until(days: int, loss_percent: float | None = 10.0) -> FeedSettings:
    """Turnout in so many days."""
    return FeedSettings(turnout_on=TODAY + timedelta(days=days), hay_loss_percent=loss_percent)


def test_bales_by_their_weight_until_turnout() -> None:
    """128 of 46 lb, 84 lb eaten a day of what is put out, a tenth lost, 112 days."""
    found = hay_left(128 * BALE_KG, BALE_KG, 84 / 0.9 * KG_PER_LB, TODAY, until(112))
    assert found is not None
    assert found.eaten_kg == pytest.approx(84 * KG_PER_LB)
    assert hay_words(found) == "lasts 63 days, short 100 bales"
    assert (found.days, found.bales.need) == (112, 228)


def test_enough_is_said_so() -> None:
    """Three weeks are covered."""
    found = hay_left(128 * BALE_KG, BALE_KG, 84 * KG_PER_LB, TODAY, until(21))
    assert found is not None
    assert hay_words(found) == "lasts until turnout"


def test_a_loss_that_nobody_said_is_not_invented() -> None:
    """Then none is taken off, and the answer says that it is not known."""
    found = hay_left(128 * BALE_KG, BALE_KG, 84 * KG_PER_LB, TODAY, until(112, None))
    assert found is not None
    assert (found.eaten_kg, found.bales.days) == (None, 70)


@pytest.mark.parametrize("turnout_on", [None, TODAY, date(2026, 3, 1)])
def test_without_a_turnout_to_come_nothing_is_said(turnout_on: date | None) -> None:
    """Not set, today, or over."""
    assert hay_left(100, 20, 10, TODAY, FeedSettings(turnout_on=turnout_on)) is None


@pytest.mark.parametrize("percent", [0.0, 3.5, 15.0, 60.0])
def test_what_is_lost_makes_the_bales_last_no_shorter(percent: float) -> None:
    """They last as long as what is put out lets them; how much of it is eaten is another matter."""
    found, none = (hay_left(2000, 20, 36.9, TODAY, until(50, each)) for each in (percent, None))
    assert found is not None
    assert none is not None
    assert found.bales == none.bales


def test_what_a_day_takes_is_planned(room: Book) -> None:
    """feed_plan.csv of the small farm: in the stall 4.1 kg a head twice a day, in the orchard 5.125."""
    needs = read_needs(room.desk, room.clock.now())
    found = a_day_kg(needs, named(room, HAY), TODAY, 10)
    stall, orchard = (
        sum(need.heads for need in needs.needs if need.subject.pen_id == named(room, pen) and need.slot == "morning")
        for pen in ("Stall", "Orchard")
    )
    assert stall > 0
    assert found == pytest.approx(2 * (4.1 * stall + 5.125 * orchard))


def test_what_is_fed_today_makes_no_day_take_less(room: Book) -> None:
    """All hay of this morning is given."""
    hay = named(room, HAY)
    before = a_day_kg(read_needs(room.desk, room.clock.now()), hay, TODAY, 7)
    for need, kg in read_needs(room.desk, room.clock.now()).of(hay, THIS_MORNING):
        room.append(fed_step(room, THIS_MORNING, Kind.HAY, need.subject, (FedFigure(hay, None, kg, kg),)))
    needs = read_needs(room.desk, room.clock.now())
    assert needs.kg(hay, THIS_MORNING) == 0
    assert a_day_kg(needs, hay, TODAY, 7) == pytest.approx(before)
