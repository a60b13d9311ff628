"""A tub that stands free: by two weighings, and by the heads that stood before it."""

from datetime import timedelta
from uuid import UUID

import pytest

from store.book.figures import DeliveredFigure
from store.book.opening import Book
from store.book.records.feeding import Feed, FeedAs, FreeFeed
from store.book.records.yard import Animal, AnimalAs, Standing
from store.book.words import Stage
from store.feedroom.tub import TubIntake, tub_intake
from tests.farm import MORNING, HandClock
from tests.store.book.seeing import put
from tests.store.feedroom.made import deliver, lose, named, the_stock, weigh
from tests.store.round.made import some_id

TUB = "mineral tub"


@pytest.fixture
def yard(room: Book) -> Book:
    """A tub in the orchard, and seven heads in it in all."""
    put(room.desk, Feed, id=some_id(TUB))
    put(room.desk, FeedAs, feed_id=some_id(TUB), name=TUB)
    put(room.desk, FreeFeed, feed_id=some_id(TUB), pen_id=named(room, "Orchard"))
    put(room.desk, FreeFeed, feed_id=some_id(TUB), pen_id=named(room, "Stall"), offered=False)
    for number in range(7 - heads(room)):
        put(room.desk, Animal, id=some_id(f"heifer {number}"))
        put(room.desk, AnimalAs, animal_id=some_id(f"heifer {number}"), name=f"Heifer {number}", stage=Stage.HEIFER)
        put(room.desk, Standing, animal_id=some_id(f"heifer {number}"), pen_id=named(room, "Orchard"))
    return room


def heads(book: Book) -> int:
    """How many stand in the orchard."""
    statement = "SELECT count(*) FROM standing WHERE pen_id = :pen"
    return int(book.desk.rows(statement, {"pen": named(book, "Orchard").bytes})[0][0])


def taken(book: Book) -> TubIntake:
    """What the last two weighings say."""
    found = tub_intake(book.desk, the_stock(book, TUB))
    assert found is not None
    return found


def test_seven_heads_took_110_g_a_day(yard: Book, clock: HandClock) -> None:
    """20.0 kg are 12.3 after ten days."""
    weigh(yard, 20.0, TUB)
    assert tub_intake(yard.desk, the_stock(yard, TUB)) is None
    clock.move(days=10)
    weigh(yard, 12.3, TUB)
    found = taken(yard)
    assert found.gone_kg == pytest.approx(7.7)
    assert found.head_days == pytest.approx(70, rel=1e-6)
    assert found.g == pytest.approx(110, rel=1e-6)


def test_animals_that_were_moved_or_sold_count_for_their_own_days(yard: Book, clock: HandClock) -> None:
    """One leaves after four days, one is sold after five, and one comes back after eight."""
    weigh(yard, 20.0, TUB)
    move(yard, some_id("heifer 0"), None, 4)
    put(yard.desk, AnimalAs, animal_id=some_id("heifer 1"), name="Heifer 1", stage=Stage.HEIFER, kept=False,
        begins_at=MORNING + timedelta(days=5))  # fmt: skip
    move(yard, some_id("heifer 0"), named(yard, "Orchard"), 8)
    clock.move(days=10)
    weigh(yard, 12.3, TUB)
    assert taken(yard).head_days == pytest.approx(7 * 10 - 4 - 5, rel=1e-6)


def move(book: Book, animal_id: UUID, pen_id: UUID | None, days: int) -> None:
    """An animal stands elsewhere from a day on."""
    put(book.desk, Standing, animal_id=animal_id, pen_id=pen_id, begins_at=MORNING + timedelta(days=days))


def test_the_tub_that_was_moved_is_taken_from_where_it_stood(yard: Book, clock: HandClock) -> None:
    """Half the time before nobody."""
    weigh(yard, 20.0, TUB)
    put(yard.desk, FreeFeed, feed_id=some_id(TUB), pen_id=named(yard, "Orchard"), offered=False,
        begins_at=MORNING + timedelta(days=5))  # fmt: skip
    clock.move(days=10)
    weigh(yard, 12.3, TUB)
    assert taken(yard).head_days == pytest.approx(35, rel=1e-6)


def test_what_came_and_was_spilt_in_between_is_taken_off(yard: Book, clock: HandClock) -> None:
    """A tub of 20 kg more, and a kilogram in the mud."""
    weigh(yard, 20.0, TUB)
    clock.move(days=5)
    deliver(yard, DeliveredFigure(20.0), TUB)
    lose(yard, 1.0, TUB)
    clock.move(days=5)
    weigh(yard, 31.3, TUB)
    assert taken(yard).gone_kg == pytest.approx(7.7)


def test_a_tub_that_grew_says_no_intake(yard: Book, clock: HandClock) -> None:
    """Somebody forgot a delivery; and before nobody there is none either."""
    weigh(yard, 12.3, TUB)
    clock.move(days=10)
    weigh(yard, 20.0, TUB)
    assert (taken(yard).g, round(taken(yard).gone_kg, 6)) == (None, -7.7)
