"""What each animal got and ate, what was refused, and what it cost. Loss is nobody's intake."""

import pytest
from msgspec.structs import replace

from store.book.drafts import Draft, Subject
from store.book.figures import DeliveredFigure, FedFigure, MilkedFigure
from store.book.opening import Book
from store.book.reading.stock import read_rows, read_stock
from store.book.records.yard import Standing
from store.book.words import Fate, Kind, State
from store.feedroom.cost import Cost, Costs, read_costs
from store.feedroom.intake import Share, refusals, shares
from tests.farm import HandClock
from tests.store.book.seeing import ZONE, put
from tests.store.feedroom.made import (
    HAY,
    LUCERNE,
    NUTS_NAME,
    THIS_EVENING,
    THIS_MORNING,
    TODAY,
    deliver,
    fed_draft,
    fed_step,
    feed,
    lose,
    named,
    there,
    weigh,
)


def got(book: Book, name: str = NUTS_NAME) -> tuple[Share, ...]:
    """What was given today of one feed."""
    return shares(book.desk, [named(book, name)], TODAY, TODAY, ZONE)


def hay(book: Book, kg: float, pen: str = "Stall") -> None:
    """A pen fed as one."""
    figure = FedFigure(named(book, HAY), None, kg, kg)
    book.append(fed_step(book, THIS_MORNING, Kind.HAY, Subject(pen_id=named(book, pen)), (figure,)))


def milk(book: Book, kg: float, who: str = "Fennel") -> None:
    """A cow is milked."""
    figure = MilkedFigure(kg, fate=Fate.HOUSE)
    book.append(fed_step(book, THIS_MORNING, Kind.MILK, Subject(animal_id=named(book, who)), (figure,)))


def cost_of(book: Book) -> Costs:
    """What today cost."""
    return read_costs(book.desk, read_stock(book.desk, book.clock.now(), out_of_use=True), TODAY, TODAY, ZONE)


def test_what_was_left_was_not_eaten_and_is_gone_all_the_same(room: Book) -> None:
    """3.0 given and 0.6 left: 2.4 eaten, and the bin is 3.0 lighter."""
    weigh(room, 83.0)
    room.append(fed_draft(room, 3.0, left_kg=0.6))
    (share,) = got(room)
    assert (share.animal_id, share.given_kg, share.day) == (named(room, "Fennel"), 3.0, TODAY)
    assert share.eaten_kg == pytest.approx(2.4)
    assert there(room) == 80.0


def test_loss_changes_no_intake(room: Book) -> None:
    """12.5 kg are missing and booked as lost: every animal got what it got, and only the stock falls."""
    weigh(room, 83.0)
    feed(room, 2.7)
    feed(room, 2.0, who="Hazel")
    hay(room, 8.2)
    before = (got(room), got(room, HAY))
    lose(room, 12.5)
    assert (got(room), got(room, HAY)) == before
    assert there(room) == pytest.approx(83.0 - 4.7 - 12.5)


def test_hay_of_a_pen_is_shared_by_the_heads_that_stood_there(room: Book, clock: HandClock) -> None:
    """Equal parts; who came later had none."""
    hay(room, 8.2)
    clock.move(hours=1)
    put(room.desk, Standing, animal_id=named(room, "Sloe"), pen_id=named(room, "Stall"), begins_at=clock.now())
    found = got(room, HAY)
    assert {share.given_kg for share in found} == {8.2 / len(found)}
    assert named(room, "Sloe") not in {share.animal_id for share in found}
    assert named(room, "Fennel") in {share.animal_id for share in found}


def test_feed_given_to_an_empty_pen_is_not_lost_from_sight(room: Book) -> None:
    """It is nobody's, and still there to be paid."""
    for animal_id in {share.animal_id for share in _hay_of(room, "Orchard")}:
        put(room.desk, Standing, animal_id=animal_id, pen_id=None, begins_at=room.clock.now())
    room.append(replace(_hay_step(room, "Orchard"), step_id=None))
    assert [share.given_kg for share in got(room, HAY) if share.animal_id is None] == [5.0]


def _hay_step(book: Book, pen: str) -> Draft:
    figure = FedFigure(named(book, HAY), None, 5.0, 5.0)
    return fed_step(book, THIS_MORNING, Kind.HAY, Subject(pen_id=named(book, pen)), (figure,))


def _hay_of(book: Book, pen: str) -> tuple[Share, ...]:
    book.append(_hay_step(book, pen))
    return got(book, HAY)


def test_three_refusals_in_a_row_are_flagged(room: Book, clock: HandClock) -> None:
    """Of one animal and one feed; a skipped round between is no feeding."""
    turn, nuts = THIS_MORNING, named(room, NUTS_NAME)
    for left_kg in (0.6, 0.2, None, 0.1):
        draft = fed_draft(room, 3.0, turn, left_kg=left_kg)
        room.append(draft if left_kg else replace(draft, state=State.SKIPPED, figures=(), reason="no time"))
        room.append(fed_draft(room, 2.0, turn, "Hazel", left_kg=0.0))
        turn = turn.after()
        clock.move(hours=12)
    rows = {nuts: read_rows(room.desk, nuts, TODAY, turn.day)}
    (found,) = refusals(rows)
    assert (found.subject.animal_id, found.feed_id) == (named(room, "Fennel"), nuts)
    assert found.left_kg == (0.1, 0.2, 0.6)
    room.append(fed_draft(room, 3.0, turn, left_kg=0.0))
    assert list(refusals({nuts: read_rows(room.desk, nuts, TODAY, turn.day)})) == []


def test_a_day_costs_what_it_costs_to_have_the_feed_again(room: Book, clock: HandClock) -> None:
    """2.7 kg at the newest price, 0.40; an older one was 0.38, and the newest delivery of all has none."""
    for kg, price in ((250.0, 95.0), (250.0, 100.0), (250.0, None)):
        deliver(room, DeliveredFigure(kg, price=price))
        clock.move(minutes=1)
    feed(room, 2.7)
    milk(room, 10.3)
    found = cost_of(room)
    assert found.total.money == pytest.approx(1.08)
    assert found.by_animal[named(room, "Fennel")] == found.by_day[TODAY] == found.total
    assert found.litres == pytest.approx(10.0)
    assert found.per_litre == pytest.approx(0.108)
    assert (found.unpriced, found.days) == ((), 1)
    assert found.total.words("EUR") == "1.08 EUR"


def test_a_feed_without_a_price_is_said_and_not_free(room: Book) -> None:
    """What is known is the least it costs; no litre has a price then."""
    deliver(room, DeliveredFigure(250.0, price=100.0))
    room.append(replace(fed_draft(room, 2.7), figures=(
        FedFigure(named(room, NUTS_NAME), None, 2.7, 2.7), FedFigure(named(room, LUCERNE), None, 0.9, 0.9),
    )))  # fmt: skip
    milk(room, 10.3)
    found = cost_of(room)
    assert found.unpriced == (named(room, LUCERNE),)
    assert found.total.unpriced_kg == pytest.approx(0.9)
    assert found.total.words("EUR") == "at least 1.08 EUR"
    assert found.by_feed[named(room, LUCERNE)].words("EUR") == "price not known"
    assert found.per_litre is None


def test_what_others_eat_is_no_cost_of_the_milk(room: Book) -> None:
    """Only of the animals that were milked."""
    deliver(room, DeliveredFigure(250.0, price=100.0))
    feed(room, 2.7)
    feed(room, 9.0, who="Rook")
    milk(room, 10.3)
    assert cost_of(room).per_litre == pytest.approx(0.108)
    assert cost_of(room).total.money == pytest.approx(4.68)


def test_the_costs_of_days_animals_and_feeds_each_add_up(room: Book, clock: HandClock) -> None:
    """Whichever way it is told."""
    deliver(room, DeliveredFigure(250.0, price=100.0))
    for who in ("Fennel", "Hazel"):
        feed(room, 2.5, who=who)
    clock.move(hours=11)
    feed(room, 2.0, THIS_EVENING)
    hay(room, 8.0)
    found = cost_of(room)
    for way in (found.by_day, found.by_animal, found.by_feed):
        parts: list[Cost] = list(way.values())
        assert sum(each.money for each in parts) == pytest.approx(found.total.money)
        assert sum(each.unpriced_kg for each in parts) == pytest.approx(found.total.unpriced_kg)


def test_a_day_without_anything_costs_nothing_and_has_no_litre(room: Book) -> None:
    """And nothing is divided by nothing."""
    found = cost_of(room)
    assert (found.total, found.litres, found.per_litre) == (Cost(0, 0, 0), 0, None)
