"""After an own entry only what it can have changed is read again: the snapshot is the one a whole reading gives."""

from collections.abc import Callable
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from store.book.desk import Desk
from store.book.drafts import Draft, Subject
from store.book.opening import Book
from store.book.reading import read_again, read_snapshot
from store.book.turn import Turn
from store.book.words import Kind, State
from store.round.confirm import ended, got_out, left_open, moved_on, noted, skipped, undone
from store.round.plan import plan
from store.round.steps import ApartStep
from tests.farm import HandClock, hand, morning, small_book
from tests.store.book.seeing import NOW, TODAY
from tests.store.keys import pressed

KEYS = st.lists(
    st.tuples(st.integers(0, 99), st.sampled_from(("enter", "skip", "move on", "paper", "undo", "note", "out", "end"))),
    max_size=8,
)


def press(book: Book, turn: Turn, at: int, key: str) -> None:
    """One key at one step of a round."""
    found = read_snapshot(book.desk, turn, NOW)
    steps = plan(found)
    step, made = steps[at % len(steps)], hand(book, found)
    apart = next((each for each in steps if isinstance(each, ApartStep)), None)
    drafts: dict[str, Callable[[], Draft | None]] = {
        "enter": lambda: pressed(made, step),
        "skip": lambda: skipped(made, step, "no time"),
        "move on": lambda: moved_on(made, step),
        "paper": lambda: left_open(made, step, State.ON_PAPER),
        "undo": lambda: undone(made, step.entry) if step.entry else None,
        "note": lambda: noted(made, Subject(), "Hinge", tell=True),
        "out": lambda: got_out(made, apart.cow.id, apart.calf.calf.id, None) if apart else None,
        "end": lambda: ended(made, turn.step_id(found.farm.id, Kind.ROUND, found.farm.id), None),
    }
    draft = drafts[key]()
    if draft and not (key == "end" and any(entry.kind is Kind.ROUND for entry in found.entries)):
        book.append(draft)


@pytest.mark.parametrize("turn", [Turn(TODAY, "morning"), Turn(TODAY, "evening"), Turn(date(2026, 3, 9), "evening")])
@settings(deadline=None, max_examples=20)
@given(keys=KEYS)
def test_what_is_read_again_is_what_a_whole_reading_gives(
    turn: Turn, keys: list[tuple[int, str]], tmp_path_factory: pytest.TempPathFactory
) -> None:
    """After each of any keys, in this round and in one that is typed in later."""
    book = small_book(tmp_path_factory.mktemp("again"), HandClock(NOW))
    at = NOW + timedelta(hours=13) if turn.slot == "evening" else NOW + timedelta(minutes=1)
    kept = read_snapshot(book.desk, turn, at)
    for where, key in keys:
        press(book, turn, where, key)
        kept = read_again(book.desk, kept, at)
        assert kept == read_snapshot(book.desk, turn, at)
    book.close()


def test_it_sees_what_was_written(desk_book: Book, desk: Desk) -> None:
    """On both kinds of desk."""
    before = morning(desk_book)
    apart = next(step for step in plan(before) if isinstance(step, ApartStep))
    desk_book.append(pressed(hand(desk_book, before), apart))
    after = read_again(desk, before, NOW)
    assert len(after.entries) == len(before.entries) + 1
    assert len(after.shares[0].partings) == len(before.shares[0].partings) + 1
