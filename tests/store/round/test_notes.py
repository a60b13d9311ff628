"""Notes: the keeper's words about an animal, a pen or the whole yard, and those that the next person must see."""

from datetime import timedelta

import pytest

from store.book.drafts import Subject
from store.book.errors import DamagedBook
from store.book.figures import NotedFigure
from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.reading.round import PASSED_OVER_MOST
from store.book.snapshot import Snapshot, notes_of
from store.book.words import Kind, State
from store.round.confirm import noted, undone
from store.round.plan import plan
from tests.farm import MORNING, HandClock, morning
from tests.farm import hand as hand_at
from tests.store.book.tools import all_rows
from tests.store.round.made import animal_named, dawn, hand, pen_named

EVENING_AT = MORNING + timedelta(hours=12)


def after(book: Book) -> Snapshot:
    """The round behind the pretend morning."""
    return read_snapshot(book.desk, dawn().turn.after(), EVENING_AT)


def test_a_note_is_about_what_it_was_written_at() -> None:
    """An animal, a pen, or the whole yard; it belongs to no step."""
    hazel, orchard = animal_named(dawn(), "Hazel").id, pen_named(dawn(), "Orchard").id
    for subject in (Subject(animal_id=hazel), Subject(pen_id=orchard), Subject()):
        draft = noted(hand(dawn()), subject, "Limps on the off hind", tell=True)
        assert (draft.kind, draft.subject, draft.state) == (Kind.NOTE, subject, State.DONE)
        assert (draft.step_id, draft.shown) == (None, None)
        assert draft.figures == (NotedFigure("Limps on the off hind", tell=True),)


def test_the_next_round_sees_the_notes_of_the_one_before(book: Book) -> None:
    """All of them, and which are to be told; in the order written."""
    found = morning(book)
    hazel = Subject(animal_id=animal_named(found, "Hazel").id)
    book.append(noted(hand_at(book, found), hazel, "Limps on the off hind", tell=True))
    book.append(noted(hand_at(book, found), Subject(), "The hinge squeaks", tell=False))
    notes = notes_of(after(book).last.entries)
    assert [note.of(NotedFigure) for note in notes] == [
        (NotedFigure("Limps on the off hind", tell=True),),
        (NotedFigure("The hinge squeaks", tell=False),),
    ]
    assert [after(book).name_of(note.subject) for note in notes] == ["Hazel", ""]


def test_the_notes_of_this_round_stand_among_its_entries(book: Book) -> None:
    """Each of them, and none is a step."""
    found = morning(book)
    for words in ("First", "Second"):
        book.append(noted(hand_at(book, found), Subject(), words, tell=False))
    entries = morning(book).entries
    assert [entry.the(NotedFigure) for entry in entries] == [NotedFigure("First"), NotedFigure("Second")]
    assert len(morning(book).counts()) == 2
    assert [step.entry for step in plan(morning(book)) if step.entry] == []


def test_a_note_that_was_taken_back_is_not_told_to_the_next_person(book: Book) -> None:
    """Undone before the round ended."""
    found = morning(book)
    book.append(noted(hand_at(book, found), Subject(), "Wrong yard", tell=True))
    book.append(undone(hand_at(book, found), morning(book).entries[-1]))
    assert notes_of(after(book).last.entries) == ()


def test_notes_of_two_rounds_ago_are_not_told_again(book: Book) -> None:
    """The round in between saw them."""
    book.append(noted(hand_at(book, morning(book)), Subject(), "Hinge", tell=True))
    book.clock = HandClock(EVENING_AT)
    book.append(noted(hand_at(book, after(book)), Subject(), "Oiled", tell=False))
    tomorrow = read_snapshot(book.desk, dawn().turn.after().after(), MORNING + timedelta(days=1))
    assert [note.the(NotedFigure) for note in notes_of(tomorrow.last.entries)] == [NotedFigure("Oiled", tell=False)]


@pytest.mark.parametrize(("unopened", "told"), [(1, True), (PASSED_OVER_MOST - 1, True), (PASSED_OVER_MOST, False)])
def test_a_round_that_nobody_opened_loses_no_note(book: Book, unopened: int, told: bool) -> None:
    """It is passed over, up to a week of rounds."""
    book.append(noted(hand_at(book, morning(book)), Subject(), "Hinge", tell=True))
    turn = dawn().turn.after()
    for _ in range(unopened):
        turn = turn.after()
    last = read_snapshot(book.desk, turn, MORNING + timedelta(days=20)).last
    assert last.turn == (dawn().turn if told else turn.before())
    assert [note.the(NotedFigure) for note in notes_of(last.entries)] == [NotedFigure("Hinge", tell=True)][: int(told)]


@pytest.mark.parametrize(("words", "kept"), [("x" * 500, "x" * 500), ("  Élan eats\nnothing ", "Élan eats\nnothing")])
def test_a_note_may_be_long_and_in_any_letters(book: Book, words: str, kept: str) -> None:
    """Blanks around it are none of it."""
    book.append(noted(hand_at(book, morning(book)), Subject(), words, tell=True))
    assert morning(book).entries[-1].the(NotedFigure) == NotedFigure(kept, tell=True)


@pytest.mark.parametrize("words", ["", "   ", "x" * 501])
def test_a_note_of_no_words_or_endless_is_refused_in_a_sentence(book: Book, words: str) -> None:
    """And nothing of it is written."""
    before = all_rows(book.desk)
    with pytest.raises(DamagedBook, match=r"^Nothing was written: "):
        book.append(noted(hand_at(book, morning(book)), Subject(), words, tell=True))
    assert all_rows(book.desk) == before
