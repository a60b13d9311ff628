"""What is typed of a delivery: read, said again, refused in words, asked about."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.book.facts.feed import Told
from store.book.figures import DeliveredFigure
from store.book.opening import Book
from store.book.words import BAGS_MOST, STOCK_MOST_KG, Units
from store.feedroom.delivery import Delivering, delivery, delivery_words
from store.round.amount import Unreadable
from store.round.confirm import Doubtful
from tests.store.feedroom.made import came, deliver, stock_by_hand, the_stock, there, weigh
from tests.store.round.made import SCOOP, some_id, unhurried

KG_PER_LB = 0.45359237  # exact: NIST Handbook 44, Appendix C
BALE, CRATE = Told(some_id("bale"), "bale", "bales", 20.0), Told(some_id("box"), "box", "boxes", None)
FIRST = Delivering(stock_by_hand(0.0), Units.METRIC, "EUR", (SCOOP, BALE, CRATE))
USUAL = Delivering(stock_by_hand(0.0, came(250, 10, 95.0), came(275, 11), came(200, 8)), Units.METRIC, "EUR")


def test_ten_bags_come_and_the_scoop_is_to_be_weighed(room: Book) -> None:
    """250 kg more, 0.38 a kilogram."""
    weigh(room, 13.5)
    figure = delivery("10 x 25 kg at 9.50", Delivering(the_stock(room), Units.METRIC, "EUR"))
    deliver(room, figure)
    assert there(room) == 263.5
    assert the_stock(room).deliveries[0].price_per_kg == pytest.approx(0.38)
    assert delivery_words(figure, Units.METRIC, "EUR") == "10 x 25.0 kg = 250 kg, 95.00 EUR in all, 0.38 EUR a kg"


@pytest.mark.parametrize(("typed", "kg", "bags", "price", "lot"), [
    ("10 x 25 kg at 9.50", 250, 10, 95.0, ""), ("10x25", 250, 10, None, ""), ("10 × 25 kg", 250, 10, None, ""),
    ("250 kg", 250, None, None, ""), ("250", 250, None, None, ""), ("250 kg at 0.38", 250, None, 95.0, ""),
    ("250 kg for 95", 250, None, 95.0, ""), ("10 x 25 kg for €95", 250, 10, 95.0, ""),
    ("10 x 25 kg at 9,50 EUR lot L-204", 250, 10, 95.0, "L-204"), ("12 bales", 240, 12, None, ""),
    ("12 bales at 4", 240, 12, 48.0, ""), ("1 bale lot second cut", 20, 1, None, "second cut"),
    ("2 x 50 lb", 100 * KG_PER_LB, 2, None, ""), ("3 x 12 1/2 kg", 37.5, 3, None, ""),
    ("25000 kg", 25_000, None, None, ""),
])  # fmt: skip
def test_a_delivery_is_read(typed: str, kg: float, bags: int | None, price: float | None, lot: str) -> None:
    """Bags and what is in one, all of it, or bales; the price of each or of all; the lot."""
    found = delivery(typed, FIRST)
    assert found.kg == pytest.approx(kg)
    assert found.price == (None if price is None else pytest.approx(price))
    assert found == DeliveredFigure(found.kg, bags, found.price, lot, typed)


def test_on_a_farm_that_weighs_in_pounds_a_bare_number_is_pounds() -> None:
    """And loose feed is priced by the pound."""
    found = delivery("10 x 50 at 14", Delivering(stock_by_hand(0.0), Units.US, "$"))
    assert found.kg == pytest.approx(500 * KG_PER_LB)
    assert delivery_words(found, Units.US, "$") == "10 x 50.0 lb = 500 lb, $140.00 in all, $0.28 a lb"
    assert delivery("500 at 0.28", Delivering(stock_by_hand(0.0), Units.US)).price == pytest.approx(140)


def test_a_bag_without_a_weight_is_one_like_the_last() -> None:
    """The newest delivery that was told in bags says how heavy one is."""
    assert delivery("4 bags", USUAL).kg == 100
    with pytest.raises(Unreadable, match=r"Nobody has weighed one of the bags of oat nuts yet.*12 x 20 kg"):
        delivery("4 bags", FIRST)
    with pytest.raises(Unreadable, match="Nobody has weighed one of the boxes"):
        delivery("4 boxes", FIRST)


def test_what_is_not_known_is_said() -> None:
    """No price is no price, and never nothing."""
    assert delivery_words(delivery("250 kg", FIRST), Units.METRIC, "EUR") == "250 kg, price not known"
    free = delivery("250 kg for 0 lot from the neighbour", FIRST)
    assert free.price == 0
    assert delivery_words(free, Units.METRIC) == "250 kg, 0.00 in all, 0.00 a kg, lot from the neighbour"


@pytest.mark.parametrize("typed", [
    "", "x", "ten bags", "0 kg", "0 x 25", "10 x 0", "10.5 x 25", "10 x", "10 x 25 l", "10 x 25 kg at", "1 1/2 x 2",
    "10 x 25 kg at two", "10 x 25 at 9.50 USD", "-5 kg", "1000000 x 25", "99999 x 25 kg", f"{BAGS_MOST + 1} x 1",
    "5 kg lot " + "9" * 41,
    "5 kg for 10000001", "1 kg " + "9" * 90, "10 x 100001", "12 flakes",
])  # fmt: skip
def test_what_cannot_be_read_is_refused_in_a_sentence(typed: str) -> None:
    """What was found, and what to type."""
    with pytest.raises(Unreadable, match=r"\.$"):
        delivery(typed, FIRST)


def test_ten_times_the_usual_is_asked_about() -> None:
    """The middle one of the last three is 250 kg; 2499 are read, 2500 are asked about, and sure of it she types !."""
    assert delivery("2499 kg", USUAL).kg == 2499
    for typed in ("2500 kg", "10000 x 25 kg", "250000 kg"):
        with pytest.raises(Doubtful, match=r"usual is 250 kg\. If it is right, type ! behind it"):
            delivery(typed, USUAL)
    sure = delivery("2500 kg at 0.38 !", USUAL)
    assert (sure.kg, sure.typed) == (2500, "2500 kg at 0.38")
    assert sure.price == pytest.approx(950)


def test_ten_times_the_last_price_is_asked_about() -> None:
    """Often the price of all of it, typed as that of one."""
    with pytest.raises(Doubtful, match=r"3\.80 EUR a kg; the last time it was 0\.38 EUR"):
        delivery("10 x 25 kg at 95", USUAL)
    assert delivery("10 x 25 kg for 95", USUAL).price == 95


@given(st.integers(1, 999), st.integers(1, 400), st.integers(0, 9999))
@unhurried
def test_bags_and_their_price_multiply(bags: int, each: int, cents: int) -> None:
    """Whatever is typed by that pattern."""
    found = delivery(f"{bags} x {each} kg at {cents / 100:.2f}", FIRST)
    assert found.kg == bags * each <= STOCK_MOST_KG
    assert found.price == pytest.approx(bags * cents / 100)


@given(st.text(max_size=100))
@unhurried
def test_whatever_is_typed_is_read_or_refused_in_words(typed: str) -> None:
    """Nothing else ever comes out, and what is read can be kept."""
    with suppress(Unreadable, Doubtful):
        found = delivery(typed, USUAL)
        assert 0 < found.kg <= STOCK_MOST_KG
        assert len(found.typed) <= 80
