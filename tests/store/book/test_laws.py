"""The law of the book: whatever two benches write, apart or together, merging makes one truth of it."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from uuid import UUID

from hypothesis import example, given, settings
from hypothesis import strategies as st

from store.book.drafts import Draft
from store.book.merging import merge
from store.book.opening import Book, open_book
from store.book.reading import read_snapshot
from store.book.snapshot import Snapshot, Written
from store.book.words import SKIP_REASONS, State
from store.round.confirm import skipped, undone
from store.round.plan import plan
from tests.farm import MORNING, HandClock, built, hand, morning
from tests.store.book.tools import all_rows
from tests.store.book.walking import confirmed

BENCHES = ("barn", "kitchen")
STEPS = 5
"""Few steps, so that both benches often write the same one."""

Act = tuple[int, int, str, int]
"""Which bench; which step; confirm, skip, undo or merge; by how much its clock is moved before, back or on. [s]"""

ACTS = st.lists(
    st.tuples(
        st.integers(0, 1),
        st.integers(0, STEPS - 1),
        st.sampled_from(["confirm", "confirm", "skip", "undo", "merge"]),
        st.sampled_from([0, 0, 1, 40, -1, -90, -4000]),
    ),
    max_size=12,
)


@dataclass
class Bench:
    """A laptop with its book and its clock; what was confirmed at it."""

    place: Path
    clock: HandClock
    book: Book
    wrote: dict[UUID, Draft] = field(default_factory=dict)

    def act(self, step_at: int, what: str, moved_s: int) -> None:
        """Do one thing at one step of the morning, as the lamp would."""
        self.clock.move(seconds=moved_s)
        snapshot = self.seen()
        step = plan(snapshot)[step_at]
        if what == "confirm":
            draft = confirmed(self.book, snapshot, step)
        elif what == "skip":
            draft = skipped(hand(self.book, snapshot), step, SKIP_REASONS[step_at])
        elif step.entry is not None and step.entry.state is not State.OPEN:
            draft = undone(hand(self.book, snapshot), step.entry)
        else:
            return
        self.wrote[self.book.append(draft)] = draft

    def seen(self) -> Snapshot:
        """The pretend morning's round, whatever the clock says meanwhile."""
        return read_snapshot(self.book.desk, morning_of(self.book).turn, MORNING)

    def take_in(self, other: "Bench") -> None:
        """Merge another bench's book into this one; it is closed meanwhile."""
        other.book.close()
        merge(self.book.desk, other.place)
        other.book = open_book(str(other.place), other.clock, other.book.bench)


def morning_of(book: Book) -> Snapshot:
    """The round of the pretend morning, read at its beginning."""
    clock, book.clock = book.clock, HandClock()
    try:
        return morning(book)
    finally:
        book.clock = clock


@contextmanager
def two_benches(apart_s: int) -> Iterator[list[Bench]]:
    """Two copies of one book. apart_s: how much the second clock runs ahead. [s]"""
    with TemporaryDirectory(prefix="penwalk-laws-") as folder:
        benches = []
        for name, ahead_s in zip(BENCHES, (0, apart_s), strict=True):
            place = Path(shutil.copy(built(), Path(folder) / f"{name}.penwalk"))
            clock = HandClock(MORNING + timedelta(seconds=ahead_s))
            benches.append(Bench(place, clock, open_book(str(place), clock, name)))
        try:
            yield benches
        finally:
            for bench in benches:
                bench.book.close()


def newest_of(entries: tuple[Written, ...], step_id: UUID) -> Written:
    """The entry of a step that must count, told without the code that is tested."""
    return max((each for each in entries if each.step_id == step_id), key=lambda each: (each.written_at, each.id.bytes))


def assert_nothing_lost(found: Snapshot, wrote: dict[UUID, Draft]) -> None:
    """Every key press is in the book once, as it was meant, and nothing else is."""
    ids = [entry.id for entry in found.entries]
    assert sorted(ids) == sorted(wrote)
    for entry in found.entries:
        draft = wrote[entry.id]
        assert (entry.step_id, entry.state, entry.reason) == (draft.step_id, draft.state, draft.reason)
        assert (*entry.fed, *([entry.milked] if entry.milked else [])) == draft.figures
        assert (entry.replaces_id, entry.happened_at) == (draft.shown, draft.happened_at)


def assert_newest_counts(found: Snapshot) -> None:
    """Of each step the newest entry counts, and the plan shows it; what it replaces is older."""
    by_id = {entry.id: entry for entry in found.entries}
    for step_id, counting in found.counts().items():
        assert counting == newest_of(found.entries, step_id)
    assert all(step.entry == found.counts().get(step.step_id) for step in plan(found))
    for entry in found.entries:
        if entry.replaces_id is not None:
            assert entry.written_at > by_id[entry.replaces_id].written_at


@given(acts=ACTS, apart_s=st.sampled_from([0, 1, -1, 90, -7200]))
@example(acts=[(0, 0, "confirm", 0), (1, 0, "confirm", 0), (0, 0, "undo", 0), (1, 0, "skip", 0)], apart_s=0)
@example(acts=[(0, 1, "confirm", 0), (1, 1, "merge", 0), (1, 1, "confirm", -4000), (0, 1, "skip", 40)], apart_s=-7200)
@settings(max_examples=25, deadline=None)
def test_whatever_two_benches_write_merging_makes_one_book_of_it(acts: list[Act], apart_s: int) -> None:
    """Both ways of merging give the same rows, snapshot and plan; nothing is lost, and the newest entry counts."""
    with two_benches(apart_s) as benches:
        for which, step_at, what, moved_s in acts:
            if what == "merge":
                benches[which].take_in(benches[1 - which])
            else:
                benches[which].act(step_at, what, moved_s)
        benches[0].take_in(benches[1])
        benches[1].take_in(benches[0])
        found = [bench.seen() for bench in benches]
        assert all_rows(benches[0].book.desk) == all_rows(benches[1].book.desk)
        assert found[0] == found[1]
        assert plan(found[0]) == plan(found[1])
        assert_nothing_lost(found[0], benches[0].wrote | benches[1].wrote)
        assert_newest_counts(found[0])
