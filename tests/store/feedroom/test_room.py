"""The feed room at a glance."""

from store.book.figures import DeliveredFigure
from store.book.opening import Book
from store.book.records.farm import Setting
from store.book.words import SettingName, Units
from store.feedroom.lasting import days_left_words
from store.feedroom.room import RoomLine, read_room
from tests.store.book.seeing import put
from tests.store.feedroom.made import HAY, LUCERNE, NUTS_NAME, TODAY, deliver, measure, weigh


def lines(book: Book) -> dict[str, RoomLine]:
    """By the name of the feed."""
    return {line.stock.feed.name: line for line in read_room(book.desk, book.clock.now())}


def test_every_feed_is_there_by_its_name_whether_it_was_weighed_or_not(room: Book) -> None:
    """What nobody knows is not zero."""
    weigh(room, 20.0, LUCERNE)
    found = lines(room)
    assert list(found) == [NUTS_NAME, HAY, LUCERNE]
    assert [found[name].left is None for name in found] == [True, True, False]
    assert found[LUCERNE].to_weigh == ()


def test_a_delivery_a_scoop_to_weigh_and_the_day_to_order(room: Book) -> None:
    """25 kg of nuts: 6.0525 in the morning and 3.375 in the evening; two days to have more."""
    put(room.desk, Setting, name=SettingName.LEAD_DAYS, value="2")
    deliver(room, DeliveredFigure(25.0, 1))
    nuts = lines(room)[NUTS_NAME]
    assert nuts.to_weigh == (measure(room, "scoop"),)
    assert nuts.left is not None
    assert days_left_words(nuts.left, TODAY, Units.METRIC) == (
        "2 full days; short by 3.3 kg on Friday evening; order today"
    )
