"""What a change changes is looked at in the rounds that it changes first."""

from datetime import UTC, date, datetime

from store.book.opening import Book
from store.book.turn import Turn
from store.herd.animal import AnimalSheet
from store.herd.effects import differences, read_rounds, rounds_from
from store.herd.moving import MovingSheet
from store.herd.sheet import YardSheet
from tests.farm import MORNING
from tests.store.book.seeing import ZONE
from tests.store.herd.filled import animal, filled, register

TODAY, TOMORROW = date(2026, 3, 11), date(2026, 3, 12)


def said(book: Book, sheet: YardSheet, **typed: str) -> list[str]:
    """The differences of the rounds that a filled sheet changes first."""
    answers = filled(sheet, **typed).answers()
    asked, now = answers.get(sheet.FROM), book.clock.now()
    turns = rounds_from(asked, now, ZONE, 12)
    before = read_rounds(book.desk, turns, asked or now, ZONE)
    after = book.trial(sheet.rows(answers), lambda desk: read_rounds(desk, turns, asked or now, ZONE))
    return [f"{new.turn.slot} {each}" for old, new in zip(before, after, strict=True) for each in differences(old, new)]


def test_from_now_on_it_is_this_round_and_the_next() -> None:
    assert rounds_from(None, MORNING, ZONE, 12) == (Turn(TODAY, "morning"), Turn(TODAY, "evening"))


def test_from_a_day_on_it_is_both_rounds_of_that_day_and_not_the_evening_before() -> None:
    """The day's midnight belongs to the evening round before it."""
    midnight = datetime(2026, 3, 12, tzinfo=UTC)
    assert rounds_from(midnight, MORNING, ZONE, 12) == (Turn(TOMORROW, "morning"), Turn(TOMORROW, "evening"))


def test_a_move_is_told_with_heads_hay_and_her_own_steps(book: Book) -> None:
    found = said(book, MovingSheet(register(book), animal(book, "Hazel")), pen_id="Orchard")
    assert "morning Orchard: 3 heads, was 2" in found
    assert "morning Hazel milk: in Orchard, was in Stall" in found


def test_a_name_is_told(book: Book) -> None:
    found = said(book, AnimalSheet(register(book), animal(book, "Hazel")), name="Holly")
    assert "morning Holly feed: was called Hazel" in found
