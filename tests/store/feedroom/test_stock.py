"""What is there of a feed: it falls by what was really fed, and by nothing twice."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.figures import DeliveredFigure, FedFigure, LostFigure, SoakedFigure
from store.book.opening import Book
from store.book.reading.stock import read_settings
from store.book.records import Setting
from store.book.turn import Turn
from store.book.words import Kind, SettingName, Soak, State
from store.feedroom.drafts import delivered, lost, taken_back, weighed
from tests.farm import MORNING, HandClock
from tests.store.book.seeing import put
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
    feed_hand,
    lose,
    named,
    stocks,
    the_stock,
    there,
    weigh,
)


def soak(book: Book, act: Soak, dry_kg: float | None, turn: Turn = THIS_MORNING) -> None:
    """Put lucerne to soak, or throw it out."""
    feed_id = named(book, LUCERNE)
    draft = fed_step(book, turn, Kind.SOAK, Subject(feed_id=feed_id), (SoakedFigure(act, dry_kg, dry_kg),))
    book.append(replace(draft, step_id=turn.step_id(feed_id, Kind.SOAK, feed_id, act)))


def test_a_feed_that_was_neither_weighed_nor_delivered_is_not_known(room: Book) -> None:
    """Whatever was fed of it: nothing is not zero."""
    feed(room, 2.5)
    assert there(room) is None
    assert the_stock(room).since is None


def test_it_falls_by_what_was_fed(room: Book) -> None:
    """83.0 kg, 6.5 fed to two animals: 76.5 kg are there."""
    weigh(room, 83.0)
    feed(room, 4.0)
    feed(room, 2.5, who="Hazel")
    assert there(room) == 76.5
    assert the_stock(room).fed_kg == ((TODAY, 6.5),)


def test_a_correction_counts_once_and_an_undo_not_at_all(room: Book) -> None:
    """The newest entry of the step."""
    weigh(room, 83.0)
    first = feed(room, 4.0)
    second = room.append(replace(fed_draft(room, 3.0), shown=first))
    assert there(room) == 80.0
    undone = replace(fed_draft(room, None), shown=second, state=State.OPEN, figures=())
    room.append(undone)
    assert there(room) == 83.0


def test_what_was_not_given_and_what_was_left(room: Book) -> None:
    """3.0 given and 0.6 left: 3.0 are gone from the bin."""
    weigh(room, 83.0)
    room.append(fed_draft(room, 3.0, left_kg=0.6))
    room.append(replace(fed_draft(room, None, THIS_EVENING), state=State.SKIPPED, reason="ran out"))
    assert there(room) == 80.0


def test_a_delivery_a_loss_and_their_days(room: Book) -> None:
    """Ten bags come, one is wet."""
    weigh(room, 13.5)
    deliver(room, DeliveredFigure(250.0, 10, 95.0, "L-204"))
    lose(room, 12.5)
    stock = the_stock(room)
    assert stock.kg == 251.0
    assert [(each.kg, each.bags, each.lot) for each in stock.delivered] == [(250.0, 10, "L-204")]
    assert stock.delivered[0].price_per_kg == pytest.approx(0.38)
    assert stock.delivered[0].bag_kg == 25.0
    assert [(each.kg, each.why, each.thrown_out) for each in stock.lost] == [(12.5, "spilt", False)]


def test_what_was_before_the_weighing_is_in_it(room: Book) -> None:
    """The scale is believed, whatever the book said."""
    deliver(room, DeliveredFigure(250.0))
    feed(room, 10.0)
    weigh(room, 200.0)
    assert there(room) == 200.0
    assert the_stock(room).delivered == ()
    assert [each.kg for each in the_stock(room).deliveries] == [250.0]


def test_never_weighed_it_counts_from_the_first_delivery(room: Book, clock: HandClock) -> None:
    """What was fed before anything was written down came from somewhere else."""
    feed(room, 10.0)
    deliver(room, DeliveredFigure(250.0))
    clock.move(hours=11)
    feed(room, 10.0, THIS_EVENING)
    assert there(room) == 240.0


def test_a_weighing_a_delivery_and_a_loss_are_taken_back(room: Book) -> None:
    """The weighing before counts again."""
    weigh(room, 50.0)
    weigh(room, 83.0)
    deliver(room, DeliveredFigure(25.0))
    lose(room, 5.0)
    stock, of = the_stock(room), named(room, NUTS_NAME)
    assert stock.weighed
    for shown in (stock.delivered[0], stock.lost[0], stock.weighed):
        room.append(taken_back(feed_hand(room), of, shown))
    assert there(room) == 50.0


def test_a_weighing_is_corrected_at_its_own_moment(room: Book, clock: HandClock) -> None:
    """What was fed after it stays fed."""
    weigh(room, 38.0)
    feed(room, 3.0)
    clock.move(hours=1)
    shown = the_stock(room).weighed
    room.append(weighed(feed_hand(room), the_stock(room), 83.0, "83", shown))
    assert there(room) == 80.0


def test_a_delivery_and_a_loss_are_corrected(room: Book) -> None:
    """Once each."""
    weigh(room, 10.0)
    deliver(room, DeliveredFigure(25.0))
    lose(room, 5.0)
    stock, of = the_stock(room), named(room, NUTS_NAME)
    room.append(delivered(feed_hand(room), of, DeliveredFigure(250.0), stock.delivered[0]))
    room.append(lost(feed_hand(room), of, LostFigure(0.5, "spilt"), stock.lost[0]))
    assert there(room) == 259.5


def test_what_soaks_is_still_there_until_it_is_fed(room: Book) -> None:
    """Put to soak is not fed; fed in dry kilograms it is, once."""
    weigh(room, 20.0, LUCERNE)
    soak(room, Soak.STARTED, 0.9)
    assert there(room, LUCERNE) == 20.0
    assert the_stock(room, LUCERNE).soaking_kg == 0.9
    soak(room, Soak.FIT, 0.9)
    feed(room, 0.9, name=LUCERNE)
    assert there(room, LUCERNE) == pytest.approx(19.1)
    assert the_stock(room, LUCERNE).soaking_kg == 0.0


def test_what_soaked_and_was_thrown_out_is_lost(room: Book) -> None:
    """No animal ate it."""
    weigh(room, 20.0, LUCERNE)
    soak(room, Soak.STARTED, 0.9)
    soak(room, Soak.THROWN_OUT, 0.9)
    assert there(room, LUCERNE) == pytest.approx(19.1)
    assert [each.thrown_out for each in the_stock(room, LUCERNE).lost] == [True]


def test_a_bin_weighed_while_a_batch_soaks_counts_it_once(room: Book) -> None:
    """19.1 kg in the bin and 0.9 in the bucket are 20.0; fed, 19.1 are left, and that is what the bin holds."""
    weigh(room, 20.0, LUCERNE)
    soak(room, Soak.STARTED, 0.9)
    weigh(room, 19.1, LUCERNE)
    assert there(room, LUCERNE) == 20.0
    feed(room, 0.9, name=LUCERNE)
    assert there(room, LUCERNE) == 19.1


@pytest.mark.parametrize("looked_at", [True, False])
def test_a_bin_weighed_before_the_soaked_feed_is_fed_counts_the_bucket(room: Book, looked_at: bool) -> None:
    """Whether or not it was written that it is fit: 96 in the bin, 4 in the bucket; fed, 96 are there."""
    weigh(room, 100.0, LUCERNE)
    soak(room, Soak.STARTED, 4.0)
    if looked_at:
        soak(room, Soak.FIT, 4.0)
    weigh(room, 96.0, LUCERNE)
    assert there(room, LUCERNE) == 100.0
    feed(room, 4.0, name=LUCERNE)
    assert there(room, LUCERNE) == 96.0


@pytest.mark.parametrize("looked_at", [True, False])
def test_a_bin_weighed_after_the_soaked_feed_was_fed_counts_no_bucket(room: Book, looked_at: bool) -> None:
    weigh(room, 100.0, LUCERNE)
    soak(room, Soak.STARTED, 4.0)
    if looked_at:
        soak(room, Soak.FIT, 4.0)
    feed(room, 3.0, name=LUCERNE)
    feed(room, 1.0, name=LUCERNE, who="Hazel")
    weigh(room, 96.0, LUCERNE)
    assert there(room, LUCERNE) == 96.0


def test_the_first_weighing_of_all_counts_the_bucket_too(room: Book) -> None:
    """Before it the book knew of none."""
    soak(room, Soak.STARTED, 4.0)
    assert there(room, LUCERNE) is None
    weigh(room, 96.0, LUCERNE)
    assert there(room, LUCERNE) == 100.0


def test_two_batches_soak_side_by_side_until_one_is_fed(room: Book, clock: HandClock) -> None:
    """4 kg since last evening, 3 kg put in before they are fed."""
    weigh(room, 100.0, LUCERNE)
    soak(room, Soak.STARTED, 4.0, THIS_MORNING.before())
    clock.move(hours=12)
    soak(room, Soak.STARTED, 3.0)
    assert the_stock(room, LUCERNE).soaking_kg == 7.0
    feed(room, 4.0, name=LUCERNE)
    assert the_stock(room, LUCERNE).soaking_kg == 3.0
    soak(room, Soak.THROWN_OUT, 3.0)
    assert the_stock(room, LUCERNE).soaking_kg == 0.0


def test_what_was_fed_before_anything_was_put_to_soak_takes_nothing_from_a_later_batch(room: Book) -> None:
    feed(room, 2.0, name=LUCERNE)
    soak(room, Soak.STARTED, 0.9)
    assert the_stock(room, LUCERNE).soaking_kg == 0.9


def test_a_batch_thrown_out_without_a_weight_leaves_the_bucket_empty(room: Book) -> None:
    soak(room, Soak.STARTED, 0.9)
    soak(room, Soak.THROWN_OUT, None)
    assert the_stock(room, LUCERNE).soaking_kg == 0.0


def test_a_batch_that_nobody_wrote_of_again_is_forgotten_after_three_days(room: Book, clock: HandClock) -> None:
    soak(room, Soak.STARTED, 0.9)
    clock.move(days=2.9)
    assert the_stock(room, LUCERNE).soaking_kg == 0.9
    clock.move(days=0.2)
    assert the_stock(room, LUCERNE).soaking_kg == 0.0


def test_feeds_do_not_mix(room: Book) -> None:
    """One entry fed two of them."""
    weigh(room, 50.0)
    weigh(room, 20.0, LUCERNE)
    both = (FedFigure(named(room, NUTS_NAME), None, 2.0, 2.0), FedFigure(named(room, LUCERNE), None, 1.0, 1.0))
    room.append(replace(fed_draft(room, 0.0), figures=both))
    assert (there(room), there(room, LUCERNE), there(room, HAY)) == (48.0, 19.0, None)


def test_a_moment_is_read_as_it_was_then(room: Book, clock: HandClock) -> None:
    """An hour ago nothing had been fed."""
    weigh(room, 50.0)
    before = clock.at
    clock.move(hours=1)
    feed(room, 2.0)
    assert stocks(room, before + timedelta(minutes=1))[NUTS_NAME].kg == 50.0


def test_the_settings_of_the_feed_room(room: Book) -> None:
    """What is not said is not said; what cannot be read is not said either."""
    assert read_settings(room.desk, MORNING).lead_days is None
    said = {SettingName.LEAD_DAYS: "3", SettingName.TURNOUT_ON: "04-20", SettingName.HAY_LOSS_PERCENT: "ten",
            SettingName.CHANGE_STEP_KG: "0.5", SettingName.CURRENCY: "EUR"}  # fmt: skip
    for name, value in said.items():
        put(room.desk, Setting, name=name, value=value)
    found = read_settings(room.desk, MORNING + timedelta(minutes=1))
    assert (found.lead_days, found.hay_loss_percent, found.change_step_kg) == (3, None, 0.5)
    assert (str(found.turnout_on), found.currency) == ("2026-04-20", "EUR")


@pytest.mark.parametrize(("said", "found"), [
    ("03-11", date(2026, 3, 11)), ("03-10", date(2027, 3, 10)), ("05-01", date(2026, 5, 1)),
    ("02-29", date(2027, 2, 28)),
    ("13-01", None), ("spring", None), ("04-31", None),
])  # fmt: skip
def test_turnout_is_the_next_such_day(room: Book, said: str, found: date | None) -> None:
    """Today included; seen from 11 March."""
    put(room.desk, Setting, name=SettingName.TURNOUT_ON, value=said)
    assert read_settings(room.desk, MORNING + timedelta(minutes=1)).turnout_on == found
