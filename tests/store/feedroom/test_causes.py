"""A difference between book and scale as the book itself explains it."""

from datetime import timedelta

from msgspec.structs import replace

from store.book.opening import Book
from store.book.turn import Turn
from store.book.words import State, Units
from store.feedroom.against import Comparison, Why, comparison_words
from store.feedroom.weighing import book_against_scale, read_case
from tests.farm import MORNING, HandClock
from tests.store.book.tools import all_rows
from tests.store.feedroom.made import (
    LUCERNE,
    NUTS_NAME,
    THIS_EVENING,
    THIS_MORNING,
    TODAY,
    fed_draft,
    feed,
    measure,
    the_stock,
    weigh,
)

EIGHT = 8.0
"""Hours after the pretend morning: its round is walked, the evening one is not yet due."""


def scale(book: Book, kg: float, name: str = NUTS_NAME) -> Comparison:
    """What is weighed now against the book."""
    known = read_case(book.desk, the_stock(book, name), book.clock.now())
    assert known is not None
    return book_against_scale(known, kg)


def all_fed(book: Book, *, but: str = "") -> None:
    """This morning's nuts, as planned; one animal's row not."""
    for who, kg in (("Fennel", 2.7), ("Hazel", 2.0), ("Rook", 0.34), ("Sloe", 1.0125)):
        if who != but:
            feed(book, kg, who=who)


def test_an_unknown_stock_is_compared_with_nothing(room: Book) -> None:
    """The first weighing is believed."""
    assert read_case(room.desk, the_stock(room), room.clock.now()) is None


def test_a_row_that_nobody_wrote_is_what_is_missing(room: Book, clock: HandClock) -> None:
    """Hazel's 2.0 kg of this morning are planned and not in the book; nothing is written by asking."""
    weigh(room, 50.0)
    all_fed(room, but="Hazel")
    clock.move(hours=EIGHT)
    before = all_rows(room.desk)
    found = scale(room, 50.0 - 2.7 - 0.34 - 1.0125 - 2.0)
    assert comparison_words(found, Units.METRIC) == (
        "fits: Hazel on the morning of Wednesday 11 March fed, and not written (diff 0.0)"
    )
    assert all_rows(room.desk) == before


def test_a_row_on_paper_that_was_not_fed(room: Book, clock: HandClock) -> None:
    """41.7 without it, 39.2 with it, 41.6 on the scale."""
    weigh(room, 41.7 + 2.0 + 0.34 + 1.0125)
    all_fed(room, but="Fennel")
    room.append(replace(fed_draft(room, None), state=State.ON_PAPER))
    clock.move(hours=EIGHT)
    assert the_stock(room).kg is not None
    found = scale(room, 41.6)
    rows = [each for each in found.explanations if each.cause.why is Why.ROW]
    assert [round(each.remaining_kg, 3) for each in rows] == [-0.1, 2.4]  # 2.5 kg were due by its own entry
    assert comparison_words(found, Units.METRIC) == (
        "fits: Fennel on the morning of Wednesday 11 March not fed (diff -0.1)"
    )


def test_a_row_that_was_skipped_or_moved_on_or_is_not_yet_due_is_no_open_one(room: Book, clock: HandClock) -> None:
    """Somebody said that it was not fed."""
    weigh(room, 50.0)
    feed(room, 2.7)
    feed(room, 1.0125, who="Sloe")
    room.append(replace(fed_draft(room, None, who="Hazel"), state=State.SKIPPED, reason="not here"))
    room.append(replace(fed_draft(room, None, who="Rook"), state=State.MOVED_ON))
    assert all(each.cause.why is not Why.ROW for each in scale(room, 40.0).explanations)
    clock.move(hours=EIGHT)
    assert all(each.cause.why is not Why.ROW for each in scale(room, 40.0).explanations)
    clock.move(hours=EIGHT / 2)
    assert any(each.cause.why is Why.ROW for each in scale(room, 40.0).explanations)


def test_a_scoop_that_held_more(room: Book, clock: HandClock) -> None:
    """24.2 kg by the scoop of 0.675; a quarter more is gone than the book has."""
    weigh(room, 100.0)
    told_kg = 0.0
    for days in range(4):
        for turn in (THIS_MORNING, THIS_EVENING):
            own = Turn(TODAY + timedelta(days=days), turn.slot)
            for who, kg in (("Fennel", 2.7), ("Hazel", 2.0)):
                draft = fed_draft(room, kg, own, who, measure_id=measure(room, "scoop"))
                room.append(draft)
                told_kg += kg
        for who, kg in (("Rook", 0.34), ("Sloe", 1.0125)):
            feed(room, kg, Turn(TODAY + timedelta(days=days), "morning"), who)
        clock.move(hours=24)
    clock.at = MORNING + timedelta(days=3, hours=14)
    book_kg = the_stock(room).kg
    assert book_kg is not None
    found = scale(room, book_kg - told_kg / 4)
    assert found.best
    assert found.best.cause.why is Why.MEASURE
    assert found.best.cause.words == "a scoop held 0.84 kg, not 0.68 kg, since Wednesday 11 March"


def test_what_soaks_is_weighed_too(room: Book) -> None:
    """It is not missing from the bin."""
    weigh(room, 20.0, LUCERNE)
    stock = replace(the_stock(room, LUCERNE), soaking_kg=0.9)
    known = read_case(room.desk, stock, room.clock.now())
    assert known is not None
    assert book_against_scale(known, 19.1).agrees
