"""A measure at a new bag: whether it is to be weighed, how it drifted, what the plan is in it."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import weighing
from store.book.figures import DeliveredFigure
from store.book.opening import Book
from store.book.reading.needs import read_needs
from store.book.reading.stock import read_weighings
from store.book.stocks import Weighed
from store.book.words import Units
from store.feedroom.scoop import Held, drift, level_weight, needs_weighing, new_lot_at, retold
from store.husbandry.measures import one_of
from store.round.amount import Unreadable
from store.round.confirm import Doubtful
from tests.farm import MORNING, HandClock
from tests.store.book.tools import all_rows
from tests.store.feedroom.made import NUTS_NAME, came, deliver, measure, named, the_stock
from tests.store.round.made import NUTS, SCOOP

LB = 0.45359237  # exact: NIST Handbook 44, Appendix C
THREE_LB = replace(SCOOP, holds_kg=3.00 * LB)


def due(book: Book) -> tuple[object, ...]:
    """The measures of dairy nuts that are to be weighed."""
    return needs_weighing(book.desk, the_stock(book), read_needs(book.desk, book.clock.now()), book.clock.now())


def test_the_scoop_is_weighed_at_the_first_use_of_a_new_bag(room: Book, clock: HandClock) -> None:
    """After a delivery of another lot, until it is weighed; the same lot again is no new bag."""
    scoop = measure(room, "scoop")
    assert due(room) == ()
    deliver(room, DeliveredFigure(250.0, 10, lot="L-204"))
    assert due(room) == (scoop,)
    clock.move(hours=1)
    room.change([weighing(scoop, named(room, NUTS_NAME), 0.7)])
    assert due(room) == ()
    deliver(room, DeliveredFigure(250.0, 10, lot="L-204"))
    assert due(room) == ()
    deliver(room, DeliveredFigure(250.0, 10, lot="L-205"))
    assert due(room) == (scoop,)


@pytest.mark.parametrize(("lots", "days_ago"), [
    (("B", "A"), 0), (("A", "A", "B"), 1), (("A", "A", "A"), 2), (("", ""), 0), (("A", ""), 0), ((), None),
])  # fmt: skip
def test_the_newest_delivery_of_another_lot(lots: tuple[str, ...], days_ago: int | None) -> None:
    """Newest first; a lot that was not written may be another one."""
    found = new_lot_at([came(25, lot=lot, days_ago=days) for days, lot in enumerate(lots)])
    assert found == (None if days_ago is None else MORNING - timedelta(days=days_ago))


def test_a_scoop_of_3_lb_that_holds_4_05() -> None:
    """Three level ones weigh 12.15 lb: 35 % more."""
    held = Held(3.00 * LB, one_of(12.15 * LB, 3))
    assert held.now_kg == pytest.approx(4.05 * LB)
    assert held.change_percent == pytest.approx(35.0)


@pytest.mark.parametrize(("typed", "kg"), [
    ("3 scoops 12.15 lb", 4.05 * LB), ("3 scoops = 12.15 lb", 4.05 * LB), ("1 scoop 4 1/2 lb", 4.5 * LB),
    ("2 scoops 2 kg", 1.0), ("1.5", 1.5), ("3 scoops 12.15 kg !", 4.05),
])  # fmt: skip
def test_several_level_scoops_are_weighed_together(typed: str, kg: float) -> None:
    """Or one of them."""
    assert level_weight(typed, NUTS, THREE_LB, Units.METRIC) == pytest.approx(kg, abs=1e-5)


def test_a_scoop_that_cannot_be_is_refused_or_asked_about() -> None:
    """None weighed, a fraction of one, no weight; three times what it was."""
    for typed in ("0 scoops 5 kg", "3 scoops", "3 scoops 0 kg", "51 scoops 60 kg", "3 cups 5 kg", "3 scoops 5 l"):
        with pytest.raises(Unreadable, match=r"\.$"):
            level_weight(typed, NUTS, THREE_LB, Units.METRIC)
    with pytest.raises(Doubtful, match="before it was"):
        level_weight("3 scoops 12.15 kg", NUTS, THREE_LB, Units.METRIC)


def test_the_plan_is_told_anew_and_nothing_is_applied(room: Book) -> None:
    """Fennel's 2.7 kg in the morning were 4 scoops of 0.675; of 0.9 they are 3."""
    before = all_rows(room.desk)
    needs = read_needs(room.desk, room.clock.now())
    found = {
        (each.subject.animal_id, each.slot): each
        for each in retold(needs, named(room, NUTS_NAME), measure(room, "scoop"), Held(0.675, 0.9))
    }
    fennel = found[named(room, "Fennel"), "morning"]
    assert (fennel.due_kg, fennel.was, fennel.exactly, fennel.proposed) == (2.7, 4.0, 3.0, 3.0)
    hazel = found[named(room, "Hazel"), "morning"]
    assert hazel.exactly == pytest.approx(2.0 / 0.9)
    assert hazel.proposed == 2.25
    assert hazel.proposed_kg == pytest.approx(2.025)
    assert len(found) == 6
    assert all_rows(room.desk) == before


def test_a_quarter_further_off_than_one_step_is_not_proposed(room: Book) -> None:
    """2.0 kg of a measure of 9 kg are a quarter of it, 2.25 kg; the farm changes a feed by 0.2 kg at most."""
    needs, nuts, scoop = read_needs(room.desk, room.clock.now()), named(room, NUTS_NAME), measure(room, "scoop")
    found = {each.due_kg: each.proposed for each in retold(needs, nuts, scoop, Held(0.675, 9.0), step_kg=0.2)}
    assert found[2.0] is None
    assert found[2.025] is None
    assert {each.due_kg: each.proposed for each in retold(needs, nuts, scoop, Held(0.675, 9.0))}[2.0] == 0.25
    assert found[0.34] is None  # a quarter is more than is due: by weight


def test_a_measure_drifts_over_its_weighings(room: Book) -> None:
    """weighing.csv of the small farm: 0.64 kg on 10 January, 0.675 on 21 February."""
    first, second = drift(read_weighings(room.desk, measure(room, "scoop"), named(room, NUTS_NAME), MORNING))
    assert (first.holds_kg, first.change_percent) == (0.64, None)
    assert second.holds_kg == 0.675
    assert second.change_percent == pytest.approx(5.46875)
    assert first.at < second.at


def test_a_measure_that_was_never_weighed_does_not_drift() -> None:
    """Nor one that was weighed once."""
    assert drift(()) == ()
    assert [each.change_percent for each in drift([Weighed(MORNING, 1.0)])] == [None]
