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

from store.book.drafts import Draft, Subject
from store.book.merging import merge
from store.book.opening import Book, open_book
from store.book.reading import read_snapshot
from store.book.snapshot import Snapshot, Written
from store.book.words import SKIP_REASONS, State
from store.round.confirm import Hand, counted, got_out, left_open, moved_on, noted, skipped, undone
from store.round.plan import plan
from store.round.steps import ApartStep, CountStep, Step
from tests.farm import MORNING, HandClock, built, hand, morning
from tests.store.book.tools import all_rows
from tests.store.keys import pressed

BENCHES = ("barn", "kitchen")
ROUNDS = (MORNING, MORNING + timedelta(hours=12))
"""The pretend morning, and its evening: what the morning moves on is asked for there."""

Act = tuple[int, int, int, str, int]
"""Which bench; which round; which step; what; by how much its clock is moved before, back or on. [s]"""

ACTS = st.lists(
    st.tuples(
        st.integers(0, 1),
        st.sampled_from((0, 0, 0, 1)),
        st.sampled_from((0, 0, 1, 1, 2, *range(3, 17))),  # often the same one; every kind of step is among them
        st.sampled_from(
            ("confirm", "confirm", "skip", "undo", "merge", "move on", "move on", "paper", "short", "words")
        ),
        st.sampled_from((0, 0, 1, 40, -1, -90, -4000)),
    ),
    max_size=14,
)


def drafts(at: Hand, step: Step, what: str) -> list[Draft]:
    """What a keeper writes at a step; nothing where there is nothing to undo."""
    if what == "undo":
        return [undone(at, step.entry)] if step.entry is not None and step.state is not State.OPEN else []
    if what == "words":
        note = noted(at, Subject() if step.subject.task_id else step.subject, "Look at this again", tell=True)
        return [note, got_out(at, step.cow.id, step.calf.calf.id, at.now)] if isinstance(step, ApartStep) else [note]
    if what == "short" and isinstance(step, CountStep):
        return [counted(at, step, 0)]
    written = {
        "skip": lambda: skipped(at, step, SKIP_REASONS[0]),
        "move on": lambda: moved_on(at, step),
        "paper": lambda: left_open(at, step, State.ON_PAPER),
    }
    return [written.get(what, lambda: pressed(at, step))()]


@dataclass
class Bench:
    """A laptop with its book and its clock; what was confirmed at it."""

    place: Path
    clock: HandClock
    book: Book
    wrote: dict[UUID, Draft] = field(default_factory=dict)

    def act(self, round_at: int, step_at: int, what: str, moved_s: int) -> None:
        """Do one thing at one step of a round, as the lamp would."""
        self.clock.move(seconds=moved_s)
        snapshot = self.seen(round_at)
        steps = plan(snapshot)
        for draft in drafts(hand(self.book, snapshot), steps[step_at % len(steps)], what):
            self.wrote[self.book.append(draft)] = draft

    def seen(self, round_at: int = 0) -> Snapshot:
        """The pretend morning's round or its evening's, whatever the clock says meanwhile."""
        turn = morning_of(self.book).turn
        return read_snapshot(self.book.desk, turn.after() if round_at else turn, ROUNDS[round_at])

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


def assert_nothing_lost(found: tuple[Snapshot, ...], wrote: dict[UUID, Draft]) -> None:
    """Every entry that either bench wrote is there once, as it was confirmed, and no other one."""
    entries = [entry for snapshot in found for entry in snapshot.entries]
    assert {entry.id for entry in entries} == wrote.keys()
    assert len(entries) == len(wrote)
    for entry in entries:
        draft = wrote[entry.id]
        assert (entry.step_id, entry.state, entry.reason) == (draft.step_id or entry.id, draft.state, draft.reason)
        assert (entry.kind, entry.subject, entry.figures) == (draft.kind, draft.subject, draft.figures)
        assert (entry.replaces_id, entry.happened_at) == (draft.shown, draft.happened_at)
        assert entry.happened_from == draft.happened_from


def assert_newest_counts(found: Snapshot) -> None:
    """Of each step the newest entry counts, and the plan shows it; what it replaces is older."""
    by_id = {entry.id: entry for entry in found.entries}
    for step_id, counting in found.counts().items():
        assert counting == newest_of(found.entries, step_id)
    assert all(step.entry == found.counts().get(step.step_id) for step in plan(found))
    for entry in found.entries:
        if entry.replaces_id is not None:
            assert entry.written_at > by_id[entry.replaces_id].written_at


def assert_moved_on_is_asked_for(before: Snapshot, after: Snapshot) -> None:
    """Just the steps whose newest entry moves them on are asked for in the next round, each once."""
    moved = {entry.id for entry in before.counts().values() if entry.state is State.MOVED_ON}
    assert (after.last.turn == before.turn) == bool(before.entries)
    assert {entry.id for entry in after.last.left(State.MOVED_ON)} == moved
    assert sum(step.moved_from == before.turn for step in plan(after)) == len(moved)


@given(acts=ACTS, apart_s=st.sampled_from([0, 1, -1, 90, -7200]))
@example(acts=[(0, 0, 0, "confirm", 0), (1, 0, 0, "confirm", 0), (0, 0, 0, "undo", 0), (1, 0, 0, "skip", 0)], apart_s=0)
@example(
    acts=[(0, 0, 1, "confirm", 0), (1, 0, 1, "merge", 0), (1, 0, 1, "confirm", -4000), (0, 0, 1, "skip", 40)],
    apart_s=-7200,
)
@example(
    acts=[(0, 0, 4, "move on", 0), (1, 0, 4, "confirm", 0), (0, 1, 0, "confirm", 0), (1, 0, 5, "words", 0)], apart_s=90
)
@settings(max_examples=25, deadline=None)
def test_whatever_two_benches_write_merging_makes_one_book_of_it(acts: list[Act], apart_s: int) -> None:
    """Both ways of merging give the same rows, snapshots and plans; nothing is lost, and the newest entry counts."""
    with two_benches(apart_s) as benches:
        for which, round_at, step_at, what, moved_s in acts:
            if what == "merge":
                benches[which].take_in(benches[1 - which])
            else:
                benches[which].act(round_at, step_at, what, moved_s)
        benches[0].take_in(benches[1])
        benches[1].take_in(benches[0])
        found = [(bench.seen(0), bench.seen(1)) for bench in benches]
        assert all_rows(benches[0].book.desk) == all_rows(benches[1].book.desk)
        assert found[0] == found[1]
        assert [plan(each) for each in found[0]] == [plan(each) for each in found[1]]
        assert_nothing_lost(found[0], benches[0].wrote | benches[1].wrote)
        for snapshot in found[0]:
            assert_newest_counts(snapshot)
        assert_moved_on_is_asked_for(*found[0])


def test_the_law_draws_from_every_kind_of_step() -> None:
    """So many steps there are at least, and of every kind."""
    with two_benches(0) as (bench, _):
        steps = plan(bench.seen(0))
        kinds = {step.kind.value for step in steps}
    assert len(steps) == 18
    assert kinds == {"count", "soak", "hay", "feed", "apart", "udder", "milk", "cool", "task"}
