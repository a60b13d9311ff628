"""A calving that was otherwise than was written: what of it is written again, and what follows it."""

from datetime import timedelta

import pytest

from store.book.opening import Book
from store.book.reading.births import last_birth
from store.book.reading.watches import open_watches
from store.book.snapshot import Snapshot
from store.book.words import Looks
from store.herd.birth_again import CalvingAgain
from store.herd.sheet import Wrong
from store.round.calving import CLEANSED, SUCKED, UP
from store.round.plan import plan
from store.round.watch import looked_again
from tests.farm import MORNING, HandClock, hand, morning
from tests.store.herd.filled import animal, filled, register
from tests.store.round.test_calving_paper import CALF, calved, waiting


def again(book: Book, **typed: str) -> Snapshot:
    """What was written of Tansy's calving is written again, otherwise."""
    desk, now = book.desk, book.clock.now()
    known = last_birth(desk, animal(book, "Tansy"), now)
    assert known is not None
    sheet = CalvingAgain(register(book), animal(book, "Tansy"), known, open_watches(desk, now))
    answers = filled(sheet, **typed).answers()
    book.change(sheet.rows(answers), *sheet.entries(answers, hand(book, morning(book))))
    return morning(book)


def looked(book: Book, words: str) -> None:
    """It was looked at, and all is right."""
    watch = next(each for each in open_watches(book.desk, book.clock.now()) if each.words == words)
    book.append(looked_again(hand(book, morning(book)), watch, Looks.RIGHT, None))


def test_a_calving_that_was_at_another_time_moves_what_nobody_has_looked_at(book: Book, clock: HandClock) -> None:
    """Found out later: the neighbour saw it at 03:10. What was looked at stays so; both entries stay in the book."""
    calved(book, "between 02:30 and 05:50")
    clock.move(minutes=5)
    looked(book, UP)
    clock.move(minutes=5)
    after = again(book, when="03:10")
    assert waiting(book) == {(CALF, SUCKED): "07:10", ("Tansy", CLEANSED): "15:10"}
    assert after.births[animal(book, "Tansy")].earliest == MORNING.replace(hour=3, minute=10)
    (counted,) = book.desk.rows("SELECT count(*) FROM entry WHERE kind = 'birth'", {})
    assert counted[0] == 2


def test_one_that_did_not_live_is_looked_at_no_more_and_is_not_here(book: Book, clock: HandClock) -> None:
    calved(book, "03:10", name="Wren")
    calf = animal(book, "Wren")
    clock.move(minutes=5)
    after = again(book, **{calf.hex: "dead"})
    assert "Wren" not in {each.name for each in after.animals}
    assert set(waiting(book)) == {("Tansy", CLEANSED), ("Tansy", UP)}
    assert after.births[animal(book, "Tansy")].calves == ((calf, False),)


def test_one_more_that_is_found_later_is_looked_at_too(book: Book, clock: HandClock) -> None:
    calved(book, "03:10", name="Wren")
    clock.move(minutes=5)
    after = again(book, more="alive")
    assert (CALF, SUCKED) in waiting(book)
    assert len(after.births[animal(book, "Tansy")].calves) == 2


def test_a_calving_of_the_day_before_has_that_day(book: Book, clock: HandClock) -> None:
    calved(book, "00:30", name="Wren")
    clock.move(minutes=5)
    after = again(book, when="yesterday 23:30")
    days = {each.name: (each.calved_on, each.born_on) for each in after.animals if each.name in ("Tansy", "Wren")}
    yesterday = MORNING.date() - timedelta(days=1)
    assert (days["Tansy"][0], days["Wren"][1]) == (yesterday, yesterday)


def test_a_calving_left_as_it_is_written_is_said(book: Book, clock: HandClock) -> None:
    calved(book, "02:30-05:50")
    clock.move(minutes=5)
    with pytest.raises(Wrong, match="Nothing here differs"):
        again(book)


def test_the_looks_in_every_round_end_a_day_earlier_where_she_calved_a_day_earlier(
    book: Book, clock: HandClock
) -> None:
    calved(book, "00:30", name="Wren")
    clock.move(minutes=5)
    again(book, when="yesterday 23:30")
    asked = []
    for _ in range(12):
        clock.move(hours=12)
        asked.append(any(step.kind == "look" and step.name == "Tansy" for step in plan(morning(book))))
    assert asked == [True] * 7 + [False] * 5


def test_one_more_shares_her_milk_where_she_is_milked(book: Book, clock: HandClock) -> None:
    calved(book, "03:10", first="dead", milked="morning and evening")
    clock.move(minutes=5)
    after = again(book, more="alive")
    assert [share.cow_id for share in after.shares if share.calf_id == animal(book, CALF)] == [animal(book, "Tansy")]
