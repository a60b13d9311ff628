"""The feed room by keys: what came, what is there, what was lost, and how long it lasts."""

from collections.abc import Callable, Iterator, Mapping
from datetime import timedelta
from pathlib import Path

import pytest

from store.book.drafts import RowDraft
from store.book.errors import DamagedBook
from store.book.reading import read_facts
from store.book.words import SettingName
from tests.farm import HandClock
from tests.store.feedroom.made import empty_room
from tests.tui.keys import Sitting
from tui.closing.closing import Closing
from tui.feed_room import told
from tui.feed_room.one_feed import OneFeed
from tui.feed_room.room import FeedRoom
from tui.rooms import House
from tui.walker import Walker

NUTS, HAY = "1", "2"


@pytest.fixture
def room(tmp_path: Path, clock: HandClock) -> Iterator[Sitting]:
    """In an empty feed room, on the pretend morning."""
    book = empty_room(tmp_path, clock)
    for name, value in ((SettingName.LEAD_DAYS, "2"), (SettingName.CURRENCY, "EUR")):
        book.change([RowDraft("setting", {"name": name, "value": value})])
    yield Sitting(House(Walker(book, read_facts(book.desk, clock.now())))).press("d")
    book.close()


def delivered(room: Sitting, typed: str = "10 x 25 kg at 9.50 lot L-7") -> Sitting:
    """Nuts have come."""
    return room.press(NUTS, "enter", "enter", typed, "enter")


def test_what_nobody_weighed_is_not_known_and_the_screen_says_what_to_do(room: Sitting) -> None:
    assert "dairy nuts         not known" in room.text()
    assert "Enter opens it: weigh what is there" in room.text(120)


def test_a_delivery_is_read_while_it_is_typed(room: Sitting) -> None:
    """Bags, weight, price a kilogram and lot, before it is written."""
    room.press(NUTS, "enter", "enter", "10 x 25 kg at 9.50 lot L-7")
    assert "10 x 25.0 kg = 250 kg, 95.00 EUR in all, 0.38 EUR a kg, lot L-7" in room.text()
    assert room.press("enter").said.startswith("Written: dairy nuts, 10 x 25.0 kg = 250 kg")


def test_after_a_delivery_it_is_there_with_its_days_its_price_and_a_scoop_to_weigh(room: Sitting) -> None:
    page = delivered(room).text(100, 30)
    assert "dairy nuts            250 kg  26 full days" in page
    assert "nothing + 250.00 kg delivered = 250.00 kg" in page
    assert "0.38 EUR a kg, by the delivery of Wed 11 Mar" in page
    assert "A new bag came: weigh a level scoop of it" in page


def test_the_scoop_is_weighed_from_there_and_the_asking_ends(room: Sitting, clock: HandClock) -> None:
    """Three level ones together."""
    delivered(room)
    clock.move(minutes=5)
    room.press(NUTS, "enter", "4", "enter", "pagedown", "2.1", "pagedown", "enter", "escape", "d")
    assert "A new bag came" not in room.text(100, 30)
    assert "250.00 kg delivered" in room.text(100, 30)


def test_what_is_weighed_stands_against_the_book_and_counts(room: Sitting) -> None:
    """The difference is explained where it can be; the weighed figure counts whatever explains it."""
    delivered(room).press(NUTS, "enter", "2", "enter", "237.5")
    page = room.text(100, 30)
    assert "The book has 250.00 kg. What was weighed counts from here on." in page
    assert "12.5 kg lost: spilt, spoilt, or eaten by others" in page
    room.press("enter")
    assert "dairy nuts            238 kg" in room.text(100, 30)


def test_what_is_weighed_while_a_past_round_is_open_is_weighed_now(room: Sitting, clock: HandClock) -> None:
    """Else what was fed since that round would be taken off once more."""
    delivered(room)
    clock.move(minutes=30)
    room.walker.open_turn(room.walker.this().before(), live=False)
    room.press(NUTS, "enter", "2", "enter", "240", "enter")
    assert "240.00 kg weighed Wed 11 Mar 07:01" in room.text(100, 30)


def test_a_time_that_was_set_is_when_it_was_weighed(room: Sitting, clock: HandClock) -> None:
    delivered(room)
    clock.move(minutes=30)
    room.walker.set_at = clock.at - timedelta(minutes=20)
    room.press(NUTS, "enter", "2", "enter", "240", "enter")
    assert "240.00 kg weighed Wed 11 Mar 06:41" in room.text(100, 30)


def test_a_loss_is_no_feed(room: Sitting) -> None:
    delivered(room).press(NUTS, "enter", "3", "enter", "12.5 kg wet bag", "enter")
    assert room.said == "Written: dairy nuts, 12.5 kg lost: wet bag."
    assert "250.00 kg delivered - 12.50 kg lost = 237.50 kg" in room.text(100, 30)


def test_a_third_of_a_kilogram_is_lost_and_why_is_kept_as_it_was_typed(room: Sitting) -> None:
    delivered(room).press(NUTS, "enter", "3", "enter", "1/3 kg Sloe got in", "enter")
    assert room.said == "Written: dairy nuts, 0.33 kg lost: Sloe got in."


def test_what_was_written_by_mistake_is_taken_back_and_kept_as_history(room: Sitting) -> None:
    delivered(room).press(NUTS, "enter", "5", "enter")
    assert "is taken back; it stays in the book as history" in room.said
    assert "dairy nuts         not known" in room.text()


def test_a_delivery_of_a_thousand_times_the_usual_is_asked_about(room: Sitting) -> None:
    """What was typed stays, and ! behind it is the answer."""
    delivered(room).press(NUTS, "enter", "enter", "10000 x 25 kg", "enter")
    assert "usual is 250 kg" in room.said
    assert "10000 x 25 kg_" in room.text()
    assert room.press("!", "enter").said.startswith("Written: dairy nuts, 10000 x 25.0 kg")


@pytest.mark.parametrize("typed", ["bags", "10 x", "25 l", "-5", "0 kg", "10 x 25 kg at"])
def test_what_is_no_delivery_is_said_while_it_is_typed(room: Sitting, typed: str) -> None:
    room.press(NUTS, "enter", "enter", typed)
    first = room.text(100, 30)
    room.press("enter")
    assert room.said
    assert room.said.split(".")[0][:30] in first.replace("\n", " ")


def test_the_closing_says_what_is_short_and_by_when_to_order(room: Sitting) -> None:
    delivered(room, "25 kg").press("escape", "e")
    said = next(row for row in room.text(100, 60).splitlines() if row.startswith(" SHORT"))
    assert said.endswith("dairy nuts: 2 full days; short by 3.3 kg on Friday evening; order today")


def test_hay_until_turnout_says_what_is_put_out_and_what_of_it_is_eaten(room: Sitting) -> None:
    """By the bales it came in, and the farm's own loss."""
    for name, value in ((SettingName.TURNOUT_ON, "05-01"), (SettingName.HAY_LOSS_PERCENT, "20")):
        room.walker.book.change([RowDraft("setting", {"name": name, "value": value})])
    page = room.press(HAY, "enter", "enter", "100 x 20 kg", "enter").text(140, 40)
    assert (
        "Until turnout, 51 days, at 36.9 kg a day put out (29.5 kg eaten), in bales of 20.0 kg: lasts until turnout"
        in page
    )


def test_costs_say_what_has_no_price(room: Sitting) -> None:
    page = delivered(room).press("c").text(100, 30)
    assert "COSTS of the last 7 days" in page
    assert isinstance(room.press("enter").place, FeedRoom)


def test_esc_leads_back_step_by_step(room: Sitting) -> None:
    room.press(NUTS, "enter", "enter", "25", "escape")
    assert "«25» is typed and not taken yet. Esc again leaves it" in room.said
    assert isinstance(room.press("escape").place, OneFeed)
    assert isinstance(room.press("escape").place, FeedRoom)


def test_a_new_bag_is_said_at_the_step_until_its_scoop_is_weighed(room: Sitting, clock: HandClock) -> None:
    """A scoop of another lot may hold a third more."""
    delivered(room).press("escape")
    clock.move(minutes=2)
    room.walker.look()
    assert "NEW BAG dairy nuts, Wed 11 Mar: weigh a level scoop first. M" in room.to_step("Hazel", "feed").text()
    room.press("f", "escape", "4", "enter", "down", "enter")
    room.press("pagedown", "2.1", "pagedown", "enter", "escape", "escape")
    assert "NEW BAG" not in room.to_step("Hazel", "feed").text()


def test_a_scoop_that_changed_is_told_with_how_much(room: Sitting) -> None:
    """0.64 kg until 21 February."""
    assert "One scoop: 0.68 kg since Sat 21 Feb, before 0.64 kg (+5.5 %)" in room.press(NUTS).text(100, 30)


def test_a_mineral_tub_set_up_by_keys_says_what_a_head_takes_a_day(room: Sitting, clock: HandClock) -> None:
    """Two heads stand in the orchard; in ten days they take 2.2 kg of 20."""
    room.press("f", "3", "enter", "a", "mineral tub", "pagedown", "enter")
    room.press("4", "enter", "4", "enter")
    assert "stands free in Orchard" in room.text(100, 30)
    while "> stands free in Orchard" not in room.text(100, 30):
        room.press("down")
    room.press("y", "pagedown")
    assert "mineral tub stands free in Orchard" in room.text(100, 30)
    room.press("enter", "escape", "escape", "escape", "escape", "d", "4", "enter", "2", "enter", "20", "enter")
    clock.move(days=10)
    room.press("4", "enter", "2", "enter", "17.8", "enter")
    assert "Standing free: 2.2 kg in 10 days, 110 g a head and day" in room.text(100, 30)


@pytest.fixture
def gone(monkeypatch: pytest.MonkeyPatch) -> Callable[[Sitting], None]:
    """The server goes: the book cannot be read any more."""

    def goes(room: Sitting) -> None:
        def nothing(*_: object) -> None:
            raise DamagedBook("The book cannot be read: the server cannot be reached.")

        monkeypatch.setattr(room.walker.book.desk, "rows", nothing)

    return goes


TO: Mapping[str, tuple[str, ...]] = {
    "the room": (),
    "a feed": (NUTS, "enter"),
    "a delivery": (NUTS, "enter", "enter", "25 kg"),
    "a weighing": (NUTS, "enter", "2", "enter", "24"),
    "a loss": (NUTS, "enter", "3", "enter", "1 kg wet"),
    "the closing": ("escape", "e"),
}


@pytest.mark.parametrize("place", TO)
def test_a_page_is_painted_without_a_look_at_the_book(
    room: Sitting, gone: Callable[[Sitting], None], place: str
) -> None:
    """A window is resized while the server is away."""
    page = delivered(room, "25 kg").press(*TO[place]).text()
    gone(room)
    assert room.text() == page


def test_what_cannot_be_read_at_a_key_is_said(room: Sitting, gone: Callable[[Sitting], None]) -> None:
    delivered(room, "25 kg")
    gone(room)
    assert "the server cannot be reached" in room.press("down").text()
    room.press(NUTS, "enter", "2", "enter")
    assert "the server cannot be reached" in room.said
    assert isinstance(room.place, OneFeed)
    assert "the server cannot be reached" in room.press("escape", "c").said
    assert isinstance(room.place, FeedRoom)


def test_what_is_written_is_said_to_be_where_the_book_cannot_be_read_again(
    room: Sitting, gone: Callable[[Sitting], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The server goes just behind the entry."""
    delivered(room, "25 kg").press(NUTS, "enter", "2", "enter", "24")
    monkeypatch.setattr(room.walker, "look_again", lambda: gone(room))
    room.press("enter")
    assert room.said.startswith(
        "Written: dairy nuts, 24.00 kg there, 1.00 kg less than by the book. The book cannot be read"
    )
    assert isinstance(room.place, FeedRoom)


def test_what_is_typed_is_read_while_the_server_is_away(room: Sitting, gone: Callable[[Sitting], None]) -> None:
    """All that the book knows of it was read before."""
    delivered(room, "25 kg").press(NUTS, "enter", "2", "enter")
    gone(room)
    assert "The book has 25.00 kg" in room.press("24").text(100, 30)
    assert "2.00 kg, and the book has 25.00 kg" in room.press("backspace").text(100, 30)


def test_the_closing_is_painted_where_the_feed_room_cannot_be_read(
    room: Sitting, gone: Callable[[Sitting], None]
) -> None:
    room.press("escape", "e")
    gone(room)
    assert "SHORT" in room.text(100, 60)


def test_the_closing_reads_what_is_short_once_for_each_look(room: Sitting, monkeypatch: pytest.MonkeyPatch) -> None:
    delivered(room, "25 kg")
    looks: list[object] = []

    def counted(*of: object) -> list[object]:
        looks.append(of)
        return []

    monkeypatch.setattr(told, "read_room", counted)
    room.press("escape", "e", "down", "up").text()
    room.text(120, 40)
    assert len(looks) == 1
    room.press("d", NUTS, "enter", "enter", "50 kg", "enter", "escape").text()
    room.text()
    assert isinstance(room.place, Closing)
    assert len(looks) == 2


def test_what_is_far_off_the_book_is_asked_about_and_said_when_it_is_written(room: Sitting) -> None:
    """20 kg where there should be 250; a loss of more than there is."""
    delivered(room).press(NUTS, "enter", "2", "enter", "20", "enter")
    assert "20.00 kg, and the book has 250.00 kg" in room.said
    assert "20.00 kg there, 230.00 kg less than by the book" in room.press("!", "enter").said
    room.press(NUTS, "enter", "3", "enter", "500 kg", "enter")
    assert "500.00 kg, and the book has 20.00 kg" in room.said
