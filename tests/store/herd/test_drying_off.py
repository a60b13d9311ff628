"""A cow steps down, is milked a last time, is dry from the day after, and her udder is looked at for two weeks."""

from datetime import date, timedelta

import pytest

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.turn import Turn
from store.book.words import EVENING, MORNING, Stage
from store.herd.drying_off import DryingOffSheet
from store.herd.milking import MilkingSheet
from store.herd.sheet import Wrong
from store.round.plan import plan
from tests.farm import morning
from tests.store.herd.filled import animal, filled, register, write
from tests.store.round.made import animal_named

LAST = date(2026, 3, 18)


def sheet(book: Book, due_on: date | None = None) -> DryingOffSheet:
    """Hazel's, who is milked twice a day. due_on: when she is due."""
    hazel = animal(book, "Hazel")
    if due_on:
        book.change([RowDraft("breeding", {"animal_id": hazel, "due_on": due_on})])
    return DryingOffSheet(register(book), hazel)


def kinds(book: Book, day: date, slot: str) -> set[str]:
    """What Hazel is asked in a round to come, read as it begins."""
    turn = Turn(day, slot)
    snapshot = read_snapshot(book.desk, turn, turn.begins("UTC"))
    return {step.kind.value for step in plan(snapshot) if step.name == "Hazel"} & {"milk", "udder", "look"}


@pytest.fixture
def drying(book: Book) -> Book:
    """Hazel's last milking is on the 18th, every other one from a week before."""
    write(book, sheet(book), last_on="18 Mar 2026")
    return book


def test_two_months_before_she_is_due_is_proposed(book: Book) -> None:
    """17 May less 60 days; the hint says why."""
    first = sheet(book, date(2026, 5, 17)).questions()[0]
    assert first.first == "18 Mar 2026"
    assert first.hint == "due 17 May 2026, 60 days before are counted here; under 45 is short"


def test_where_it_is_past_the_day_today_is_proposed(book: Book) -> None:
    """It is late: what is told says how short."""
    late = sheet(book, date(2026, 4, 1))
    assert late.questions()[0].first == "11 Mar 2026"
    told = late.told(filled(late).answers())
    assert told == "dries off, last milking 11 Mar 2026, 21 days before she is due (short)"


def test_without_a_due_day_the_day_is_asked_for(book: Book) -> None:
    """And nothing is guessed."""
    asked = sheet(book)
    with pytest.raises(Wrong, match="The day of her last milking is needed"):
        asked.rows(filled(asked).answers())
    with pytest.raises(Wrong, match="today or later"):
        asked.rows({"last_on": date(2026, 3, 10), "days": 7, "tubes": ""})


def test_what_the_vet_said_of_tubes_is_kept_in_the_note(book: Book) -> None:
    """In the keeper's words; no dose is named here."""
    asked = sheet(book)
    told = asked.told(filled(asked, last_on="18 Mar 2026", tubes="sealant, all four").answers())
    assert told == "dries off, last milking 18 Mar 2026; tubes: sealant, all four"


def test_she_steps_down_to_every_other_milking_and_is_felt_at_the_others(drying: Book) -> None:
    """In the book's last pail she was milked on the 10th in the morning; skipped that evening; so now, not tonight."""
    assert "milk" in kinds(drying, date(2026, 3, 11), MORNING)


def test_from_the_day_after_she_is_dry_and_milked_no_more(drying: Book) -> None:
    """Felt in every round, looked at in the morning for two weeks."""
    assert kinds(drying, LAST, MORNING) == {"milk"}
    assert kinds(drying, LAST + timedelta(days=1), MORNING) == {"udder", "look"}
    assert kinds(drying, LAST + timedelta(days=1), EVENING) == {"udder"}
    assert "look" in kinds(drying, LAST + timedelta(days=14), MORNING)
    assert "look" not in kinds(drying, LAST + timedelta(days=15), MORNING)
    turn = Turn(LAST + timedelta(days=1), MORNING)
    assert animal_named(read_snapshot(drying.desk, turn, turn.begins("UTC")), "Hazel").stage is Stage.DRY


def test_a_later_day_takes_back_what_was_planned(drying: Book) -> None:
    """A week more; the look is the same one."""
    again = sheet(drying)
    assert again.questions()[-1].hint == "planned: dry from 19 Mar 2026"
    write(drying, again, last_on="25 Mar 2026", take_back="yes")
    assert kinds(drying, LAST + timedelta(days=1), EVENING) <= {"milk", "udder"}
    turn = Turn(LAST + timedelta(days=1), MORNING)
    snapshot = read_snapshot(drying.desk, turn, turn.begins("UTC"))
    assert animal_named(snapshot, "Hazel").stage is Stage.IN_MILK
    assert animal(drying, "Hazel") in snapshot.milkings
    assert kinds(drying, LAST + timedelta(days=8), MORNING) == {"udder", "look"}
    assert kinds(drying, LAST + timedelta(days=15), MORNING) == {"udder", "look"}


def test_every_other_milking_is_set_at_her_milking_sheet(book: Book) -> None:
    """Milked this morning by the count of the last pail; in the round after a pail it is not her turn."""
    hazel = animal(book, "Hazel")
    write(book, MilkingSheet(register(book), hazel), every="every other")
    snapshot = morning(book)
    assert snapshot.milkings[hazel].every == 2
    fennel = animal(book, "Fennel")
    write(book, MilkingSheet(register(book), fennel), every="every third")
    assert fennel not in morning(book).milkings
    assert any(step.name == "Fennel" and step.kind == "udder" for step in plan(morning(book)))
