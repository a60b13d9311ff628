"""Adding an entry, on both kinds of desk: it is there, whole, once, and it counts; or nothing was written."""

from datetime import timedelta
from uuid import UUID

import pytest
from msgspec.structs import replace

from store.book.clock import EPOCH, new_id
from store.book.drafts import Draft, weighing
from store.book.errors import DamagedBook, Overtaken
from store.book.figures import FedFigure, MilkedFigure
from store.book.opening import Book
from store.book.snapshot import Written
from store.book.words import Fate, State
from store.round.confirm import moved_on, skipped, undone
from store.round.measured import fed
from store.round.plan import plan
from store.round.steps import FeedStep
from tests.farm import MORNING, HandClock, hand, morning, step_of
from tests.store.book.tools import all_rows, count
from tests.store.book.walking import confirmed


def counting(book: Book, step_id: UUID) -> Written:
    """The entry that counts for a step, as the book holds it."""
    return morning(book).counts()[step_id]


def assert_reads_back(book: Book, draft: Draft, id_: UUID) -> None:
    """The entry that counts for the draft's step is the draft, figure for figure."""
    assert draft.step_id is not None
    found = counting(book, draft.step_id)
    assert found.id == id_
    assert (found.kind, found.subject, found.state) == (draft.kind, draft.subject, draft.state)
    assert (found.reason, found.happened_at, found.person_id) == (draft.reason, draft.happened_at, draft.person_id)
    assert found.replaces_id == draft.shown
    assert found.figures == draft.figures


def test_what_is_confirmed_reads_back_as_it_was_confirmed(desk_book: Book) -> None:
    """For every step of the morning, whatever kind it is: its figures, in the order of the screen."""
    snapshot = morning(desk_book)
    for step in plan(snapshot):
        draft = confirmed(desk_book, snapshot, step)
        assert_reads_back(desk_book, draft, desk_book.append(draft))
    assert {step.state for step in plan(morning(desk_book))} == {State.DONE}


def test_what_is_skipped_reads_back_with_its_reason_and_what_was_due(desk_book: Book) -> None:
    """For every step of the morning."""
    snapshot = morning(desk_book)
    for step in plan(snapshot):
        draft = skipped(hand(desk_book, snapshot), step, "ran out")
        assert_reads_back(desk_book, draft, desk_book.append(draft))
    assert {step.state for step in plan(morning(desk_book))} == {State.SKIPPED}


def test_what_is_moved_on_reads_back_with_what_was_due(desk_book: Book) -> None:
    """For every step of the morning."""
    snapshot = morning(desk_book)
    for step in plan(snapshot):
        draft = moved_on(hand(desk_book, snapshot), step)
        assert_reads_back(desk_book, draft, desk_book.append(draft))
    assert {step.state for step in plan(morning(desk_book))} == {State.MOVED_ON}


def test_the_figures_of_an_entry_stand_in_the_order_they_were_shown(desk_book: Book) -> None:
    """Fennel gets two feeds; each time they are confirmed they come back as the screen had them."""
    for _ in range(3):
        snapshot = morning(desk_book)
        step = step_of(snapshot, "Fennel", "feed")
        draft = fed(hand(desk_book, snapshot), step, {}) if isinstance(step, FeedStep) else None
        assert draft is not None
        desk_book.append(draft)
        assert counting(desk_book, step.step_id).figures == draft.figures


def test_an_undone_step_is_open_and_its_entry_stays_as_history(desk_book: Book) -> None:
    """Undo writes a third entry; nothing goes away."""
    step = step_of(morning(desk_book), "Sloe", "feed")
    first = desk_book.append(confirmed(desk_book, morning(desk_book), step))
    second = desk_book.append(undone(hand(desk_book, morning(desk_book)), counting(desk_book, step.step_id)))
    found = morning(desk_book)
    assert step_of(found, "Sloe", "feed").state is State.OPEN
    assert [entry.id for entry in found.entries] == [first, second]
    assert found.entries[1].replaces_id == first


def test_a_step_that_somebody_else_wrote_is_not_written_over(desk_book: Book) -> None:
    """The draft was made of an older screen: a sentence, and the book is as it was."""
    snapshot = morning(desk_book)
    step = step_of(snapshot, "Hazel", "milk")
    stale = confirmed(desk_book, snapshot, step)
    desk_book.append(confirmed(desk_book, snapshot, step))
    before = all_rows(desk_book.desk)
    with pytest.raises(Overtaken, match=r"Another bench wrote this step first\. Nothing was written"):
        desk_book.append(stale)
    assert all_rows(desk_book.desk) == before


def test_a_draft_that_saw_an_entry_the_book_has_moved_on_from_is_refused(desk_book: Book) -> None:
    """Two corrections of one entry: the second one saw the first entry only."""
    step = step_of(morning(desk_book), "Hazel", "milk")
    desk_book.append(confirmed(desk_book, morning(desk_book), step))
    stale = undone(hand(desk_book, morning(desk_book)), counting(desk_book, step.step_id))
    desk_book.append(replace(stale, state=State.SKIPPED, reason="no time"))
    before = all_rows(desk_book.desk)
    with pytest.raises(Overtaken):
        desk_book.append(stale)
    assert all_rows(desk_book.desk) == before


def test_a_draft_that_saw_an_entry_the_book_never_had_is_refused(desk_book: Book) -> None:
    """Whatever it saw, it was not this book."""
    snapshot = morning(desk_book)
    strange = replace(confirmed(desk_book, snapshot, plan(snapshot)[0]), shown=new_id(MORNING))
    with pytest.raises(Overtaken):
        desk_book.append(strange)
    assert morning(desk_book) == snapshot


@pytest.mark.parametrize("back", [timedelta(0), timedelta(microseconds=1), timedelta(hours=3), timedelta(days=400)])
def test_a_correction_counts_though_the_clock_was_set_back(desk_book: Book, clock: HandClock, back: timedelta) -> None:
    """It is written after what it replaces; when it happened stays what the clock said."""
    step = step_of(morning(desk_book), "Sloe", "feed")
    desk_book.append(confirmed(desk_book, morning(desk_book), step))
    first, snapshot = counting(desk_book, step.step_id), morning(desk_book)
    clock.at -= back
    draft = undone(hand(desk_book, snapshot), first)
    second = desk_book.append(draft)
    clock.at = first.written_at + timedelta(seconds=1)
    found = counting(desk_book, step.step_id)
    assert found.id == second
    assert found.written_at > first.written_at
    assert found.happened_at == draft.happened_at


def test_a_figure_the_database_cannot_place_leaves_no_entry_behind(desk_book: Book) -> None:
    """Entry and figures are one transaction: a feed nobody knows takes the entry with it, in a sentence."""
    snapshot = morning(desk_book)
    draft = confirmed(desk_book, snapshot, step_of(snapshot, "Sloe", "feed"))
    before = all_rows(desk_book.desk)
    with pytest.raises(DamagedBook, match=r"(?s)^Nothing was written: .*\.$"):
        desk_book.append(replace(draft, figures=(*draft.figures, FedFigure(new_id(EPOCH), None, 1.0, 1.0))))
    assert all_rows(desk_book.desk) == before
    desk_book.append(draft)
    assert count(desk_book.desk, "entry") == len(before["entry"]) + 1


def test_a_figure_out_of_bounds_leaves_no_entry_behind(desk_book: Book) -> None:
    """In a sentence; nothing of the entry stays."""
    snapshot = morning(desk_book)
    draft = confirmed(desk_book, snapshot, step_of(snapshot, "Hazel", "milk"))
    before = all_rows(desk_book.desk)
    with pytest.raises(DamagedBook, match=r"^Nothing was written: "):
        desk_book.append(replace(draft, figures=(MilkedFigure(80.5, fate=Fate.HOUSE),)))
    assert all_rows(desk_book.desk) == before


def test_a_weighing_is_one_row_that_begins_when_it_was_written(desk_book: Book) -> None:
    """And counts from then on."""
    due = plan(morning(desk_book))[3]
    assert isinstance(due, FeedStep)
    told = due.due[0].told
    assert told is not None
    before = all_rows(desk_book.desk)["weighing"]
    desk_book.change([weighing(told.id, due.due[0].feed.id, 0.9)])
    (row,) = set(all_rows(desk_book.desk)["weighing"]) - set(before)
    assert row[1] == row[2]
    again = plan(morning(desk_book))[3]
    assert isinstance(again, FeedStep)
    assert again.due[0].told is not None
    assert again.due[0].told.holds_kg == 0.9


def test_rows_and_all_entries_with_them_are_written_together_or_not_at_all(desk_book: Book) -> None:
    """A second entry that the book refuses takes back the row and the first one."""
    snapshot = morning(desk_book)
    count, last = (confirmed(desk_book, snapshot, plan(snapshot)[at]) for at in (0, 1))
    due = plan(snapshot)[3]
    assert isinstance(due, FeedStep)
    assert due.due[0].told is not None
    row = weighing(due.due[0].told.id, due.due[0].feed.id, 0.9)
    before = all_rows(desk_book.desk)
    with pytest.raises(DamagedBook, match=r"^Nothing was written: "):
        desk_book.change([row], count, replace(last, figures=(MilkedFigure(80.5, fate=Fate.HOUSE),)))
    assert all_rows(desk_book.desk) == before
    desk_book.change([row], count, last)
    after = all_rows(desk_book.desk)
    assert len(after["entry"]) == len(before["entry"]) + 2
    assert len(after["weighing"]) == len(before["weighing"]) + 1


def test_an_entry_says_which_bench_wrote_it(desk_book: Book) -> None:
    """The word for the laptop."""
    snapshot = morning(desk_book)
    id_ = desk_book.append(confirmed(desk_book, snapshot, plan(snapshot)[0]))
    found = desk_book.desk.rows("SELECT bench FROM entry WHERE id = :id", {"id": id_.bytes})
    assert list(found) == [("bench",)]
