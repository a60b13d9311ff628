"""A round left as not recorded, or as on paper, never hides what another bench wrote of it."""

import shutil
from datetime import timedelta
from pathlib import Path

import pytest

from store.book.merging import merge
from store.book.opening import Book, open_book
from store.book.reading import read_facts, read_snapshot
from store.book.turn import Turn
from store.book.words import State
from store.round.plan import plan
from tests.farm import MORNING, HandClock, built, hand
from tests.store.keys import pressed
from tui.closing.ending import end_round
from tui.walker import Walker

DAY = MORNING.date()


def bench(folder: Path, name: str, hours: float) -> Book:
    """A laptop with the small farm's book, so many hours after the pretend morning."""
    place = folder / f"{name}.penwalk"
    shutil.copy(built(), place)
    return open_book(str(place), HandClock(MORNING + timedelta(hours=hours)), name)


@pytest.mark.parametrize("state", [State.OPEN, State.ON_PAPER])
def test_what_was_walked_on_the_other_laptop_counts_whoever_merges(tmp_path: Path, state: State) -> None:
    """One walks the evening; the other, which knows nothing of it, leaves it so the next morning."""
    evening = Turn(DAY, "evening")
    barn, kitchen = bench(tmp_path, "barn", 12), bench(tmp_path, "kitchen", 24)
    for step in plan(read_snapshot(barn.desk, evening, barn.clock.now())):
        found = read_snapshot(barn.desk, evening, barn.clock.now())
        barn.append(pressed(hand(barn, found), step))
    walker = Walker(kitchen, read_facts(kitchen.desk, kitchen.clock.now()), turn=evening)
    assert end_round(walker, state) is None
    assert {step.state for step in walker.steps} == {state}
    for book in (barn, kitchen):
        book.close()
    for name, other in (("barn", "kitchen"), ("kitchen", "barn")):
        book = open_book(str(tmp_path / f"{name}.penwalk"), HandClock(MORNING + timedelta(hours=25)), name)
        merge(book.desk, tmp_path / f"{other}.penwalk")
        merged = plan(read_snapshot(book.desk, evening, book.clock.now()))
        assert {step.state for step in merged} == {State.DONE}
        book.close()
