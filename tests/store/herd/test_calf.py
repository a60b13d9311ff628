"""A calf's own sheets: its cows, the rule by which it is shut away, weaned or fostered; and who leaves."""

from datetime import timedelta

import pytest

from store.book.facts.calves import ApartRule, Share
from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.snapshot import Snapshot
from store.book.turn import turn_at
from store.book.words import Stage
from store.herd.calf import CalfSheet, WeaningSheet
from store.herd.leaving import LeavingSheet
from store.herd.nights import some_nights
from store.herd.sheet import Wrong
from store.round.amount import Unreadable
from store.round.plan import plan
from store.round.steps import LookStep
from tests.farm import HandClock, morning
from tests.store.herd.filled import animal, filled, register, write


def rooks(snapshot: Snapshot) -> Share:
    """Whose milk Rook shares now."""
    return next(share for share in snapshot.shares if snapshot.names[share.calf_id] == "Rook")


def test_a_rule_is_set_and_said(book: Book) -> None:
    """Twelve hours, from day 21, not on Sundays."""
    sheet = CalfSheet(register(book), animal(book, "Rook"))
    typed = {"apart_h": "12", "from_day": "21", "nights": "not Sun"}
    assert sheet.told(filled(sheet, **typed).answers()) == "sucks Fennel; shut away 12 h, from day 21, Mon to Sat"
    assert rooks(write(book, sheet, **typed)).rule == ApartRule(12, 21, "1111110")


def test_a_sheet_left_as_it_stands_writes_nothing(book: Book, clock: HandClock) -> None:
    """With and without a rule."""
    for _ in range(2):
        sheet = CalfSheet(register(book), animal(book, "Rook"))
        assert sheet.rows(filled(sheet).answers()) == []
        write(book, sheet, apart_h="12", nights="Mon to Sat")
        clock.move(minutes=1)


@pytest.mark.parametrize(
    ("typed", "question"),
    [
        ({"apart_h": "14"}, "apart_h"),
        ({"second_id": "Fennel"}, "second_id"),
        ({"cow_id": "no cow", "second_id": "Hazel"}, "cow_id"),
    ],
)
def test_what_does_not_fit_together_is_said(book: Book, typed: dict[str, str], question: str) -> None:
    sheet = CalfSheet(register(book), animal(book, "Rook"))
    with pytest.raises(Wrong) as problem:
        sheet.rows(filled(sheet, **typed).answers())
    assert problem.value.question == question


def test_a_rule_is_not_taken_away_by_an_empty_answer(book: Book, clock: HandClock) -> None:
    rook = animal(book, "Rook")
    write(book, CalfSheet(register(book), rook), apart_h="12")
    clock.move(minutes=1)
    sheet = CalfSheet(register(book), rook)
    with pytest.raises(Wrong, match="The rule needs its hours"):
        sheet.rows(filled(sheet, apart_h="").answers())


def test_a_calf_has_two_cows_and_goes_on_with_the_other_when_one_is_sold(book: Book, clock: HandClock) -> None:
    rook, hazel = animal(book, "Rook"), animal(book, "Hazel")
    both = rooks(write(book, CalfSheet(register(book), rook), second_id="Hazel"))
    assert both.cow_ids == (both.cow_id, hazel)
    clock.move(minutes=1)
    after = rooks(write(book, LeavingSheet(register(book), both.cow_id), how="sold"))
    assert after.cow_ids == (hazel,)


def test_the_second_cow_that_is_sold_leaves_it_with_the_first(book: Book, clock: HandClock) -> None:
    both = rooks(write(book, CalfSheet(register(book), animal(book, "Rook")), second_id="Hazel"))
    clock.move(minutes=1)
    after = rooks(write(book, LeavingSheet(register(book), animal(book, "Hazel")), how="sold"))
    assert after.cow_ids == (both.cow_id,)


def test_a_calf_that_died_shares_no_more_with_either(book: Book, clock: HandClock) -> None:
    rook = animal(book, "Rook")
    write(book, CalfSheet(register(book), rook), second_id="Hazel")
    clock.move(minutes=1)
    after = write(book, LeavingSheet(register(book), rook), how="died")
    assert after.shares == ()
    assert [share.calf_id for share in after.shared_before] == [rook]


def test_weaned_from_a_day_on_it_shares_until_then(book: Book, clock: HandClock) -> None:
    """Its class is another from then on too."""
    sheet = WeaningSheet(register(book), animal(book, "Rook"))
    typed = {"why": "weaned", "stage": "steer", "from_at": "tomorrow"}
    assert sheet.told(filled(sheet, **typed).answers()) == "weaned"
    before = write(book, sheet, **typed)
    assert rooks(before).until is None
    clock.move(days=1)
    after = morning(book)
    assert after.shares == ()
    assert next(each for each in after.animals if each.name == "Rook").stage is Stage.STEER
    (ended,) = after.shared_before
    assert ended.until is not None
    assert ended.until - before.turn.day_begins("Europe/Dublin") == timedelta(days=1)


def test_a_nose_flap_is_asked_about_once_it_has_been_in_for_so_long(book: Book, clock: HandClock) -> None:
    """Seven days: in the morning round of the seventh day, and not before."""
    sheet = WeaningSheet(register(book), animal(book, "Rook"))
    assert sheet.told(filled(sheet, why="weaned", flap_days="7").answers()) == "weaned, nose flap in for 7 days"
    write(book, sheet, why="weaned", flap_days="7")
    for day in range(1, 9):
        clock.move(days=1)
        today = turn_at(clock.now(), "Europe/Dublin", 12)
        found = [s.look.name for s in plan(read_snapshot(book.desk, today, clock.now())) if isinstance(s, LookStep)]
        assert found == ["nose flap: part it, or take it out"] * (day >= 7)


def test_a_fostered_calf_shares_with_another_cow_from_then_on(book: Book) -> None:
    sheet = WeaningSheet(register(book), animal(book, "Rook"))
    with pytest.raises(Wrong, match="only where it is fostered"):
        sheet.rows(filled(sheet, why="weaned", cow_id="Hazel").answers())
    after = write(book, sheet, why="fostered", cow_id="Hazel")
    assert rooks(after).cow_id == animal(book, "Hazel")
    assert [share.cow_id for share in after.shared_before] == [animal(book, "Fennel")]


@pytest.mark.parametrize(
    ("typed", "nights"),
    [
        ("every night", "1111111"),
        ("", "1111111"),
        ("no night", "0000000"),
        ("Mon-Sat", "1111110"),
        ("Fri to Mon", "1000111"),
        ("Mon, Wednesday and Fri", "1010100"),
        ("not Sat, Sun", "1111100"),
        ("not Sun Thu", "1110110"),
        ("Mon Wed Fri", "1010100"),
        ("not Fri to Sun Tue", "1011000"),
        ("all but Sun", "1111110"),
    ],
)
def test_nights_are_read_as_they_are_said(typed: str, nights: str) -> None:
    assert some_nights(typed) == nights


@pytest.mark.parametrize("typed", ["most", "Mo", "Mon to Wed to Fri", "7", "Mon,", "Mon not Thu", "not Sun, not Thu"])
def test_what_is_no_night_is_said(typed: str) -> None:
    with pytest.raises(Unreadable, match="are no nights"):
        some_nights(typed)
