"""Merging as a law: in whatever order, however often, on however many benches, the same rows and contradictions."""

import shutil
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import example, given, settings
from hypothesis import strategies as st
from msgspec.structs import astuple

from store.book.contradictions import Contradiction, contradictions
from store.book.desk import FileDesk
from store.book.merging import Merged, merge
from store.book.opening import open_book
from store.book.reading import read_snapshot
from store.book.words import State
from tests.farm import MORNING, HandClock, built
from tests.store.book.test_laws import ROUNDS, Bench, morning_of
from tests.store.book.tools import Rows, all_rows

NAMES = ("barn", "kitchen", "phone")
Act = tuple[int, int, int, str, int]
ACTS = st.lists(
    st.tuples(
        st.integers(0, 2),
        st.sampled_from((0, 0, 0, 1)),
        st.sampled_from((0, 0, 1, 2, *range(3, 17))),
        st.sampled_from(("confirm", "confirm", "skip", "undo", "move on", "paper", "short", "words")),
        st.sampled_from((0, 1, 40, -90)),
    ),
    max_size=12,
)


@contextmanager
def three_books(acts: list[Act]) -> Iterator[Path]:
    """A folder with the books of three benches, each written on its own."""
    with TemporaryDirectory(prefix="penwalk-laws-") as folder:
        benches: list[Bench] = []
        for name in NAMES:
            place = Path(shutil.copy(built(), Path(folder) / f"{name}.penwalk"))
            clock = HandClock(MORNING + timedelta(seconds=7 * len(benches)))
            benches.append(Bench(place, clock, open_book(str(place), clock, name)))
        for which, round_at, step_at, what, moved_s in acts:
            benches[which].act(round_at, step_at, what, moved_s)
        for bench in benches:
            bench.book.close()
        yield Path(folder)


def merged(folder: Path, into: str, *others: str) -> tuple[Rows, tuple[Contradiction, ...]]:
    """What a copy of one bench's book holds after others were merged into it, one after the other."""
    place = Path(shutil.copy(folder / f"{into}.penwalk", folder / f"{into}+{'+'.join(others)}.penwalk"))
    with closing(FileDesk(place)) as desk:
        for other in others:
            merge(desk, folder / f"{other}.penwalk")
        return all_rows(desk), contradictions(desk)


@given(acts=ACTS)
@example(acts=[(0, 0, 0, "confirm", 0), (1, 0, 0, "skip", 0), (2, 0, 0, "short", 0)])
@example(acts=[(0, 0, 2, "confirm", 0), (1, 0, 2, "confirm", 0), (1, 0, 2, "undo", 0), (2, 0, 2, "skip", -90)])
@settings(max_examples=12, deadline=None)
def test_three_books_merge_in_any_order_any_number_of_times(acts: list[Act]) -> None:
    """Commutative, associative, idempotent, and never refused; what contradicts is the same from every side."""
    with three_books(acts) as folder:
        barn, kitchen, phone = NAMES
        pair = merged(folder, barn, kitchen)
        assert pair == merged(folder, kitchen, barn)
        whole = merged(folder, barn, kitchen, phone)
        merged(folder, kitchen, phone)
        assert whole == merged(folder, barn, "kitchen+phone")
        assert whole == merged(folder, phone, kitchen, barn)
        assert whole == merged(folder, phone, barn, kitchen, phone, barn)
        with closing(FileDesk(folder / "barn+kitchen+phone.penwalk")) as desk:
            for name in NAMES:
                assert merge(desk, folder / f"{name}.penwalk") == Merged(0, (), (), ())


@given(acts=ACTS)
@settings(max_examples=12, deadline=None)
def test_a_contradiction_shows_different_words_and_the_newest_counts(acts: list[Act]) -> None:
    """Told without the code that is tested: of its versions the one that counts is the plan's own."""
    with three_books(acts) as folder:
        merged(folder, *NAMES)
        book = open_book(str(folder / "barn+kitchen+phone.penwalk"), HandClock(), "barn")
        with closing(book):
            turn = morning_of(book).turn
            rounds = [read_snapshot(book.desk, each, at) for each, at in zip((turn, turn.after()), ROUNDS, strict=True)]
            counting = {entry.id for each in rounds for entry in each.counts().values()}
            replaced = {entry.replaces_id for each in rounds for entry in each.entries}
            for found in contradictions(book.desk):
                assert len({version.words for version in found.versions}) > 1
                assert len({version.bench for version in found.versions}) > 1
                assert not replaced & {version.id for version in found.versions}
                assert {version.id for version in found.versions if version.counts} <= counting


@given(acts=ACTS)
@settings(max_examples=12, deadline=None)
def test_what_is_told_of_a_merge_adds_up(acts: list[Act]) -> None:
    """Steps and notes by bench are the entries that came; what came is told to each side once."""
    with three_books(acts) as folder, closing(FileDesk(folder / "barn.penwalk")) as desk:
        before = {row[0] for row in all_rows(desk)["entry"]}
        found = merge(desk, folder / "kitchen.penwalk")
        came = [row for row in all_rows(desk)["entry"] if row[0] not in before]
        assert sum(each.steps + each.notes for each in found.came) == len(came)
        assert {each.bench for each in found.came} <= {"kitchen"}
        assert all(each.rounds in (1, 2) for each in found.came)


def test_an_untouched_step_that_a_bench_only_closed_contradicts_nothing() -> None:
    """One bench walked it; the other one left it on paper: nobody has to decide anything."""
    with three_books([(0, 0, 3, "confirm", 0), (1, 0, 3, "paper", 0), (2, 0, 4, "skip", 0)]) as folder:
        _, found = merged(folder, *NAMES)
        assert found == ()


def test_two_figures_for_one_milking_stand_side_by_side() -> None:
    """With bench, person and time; the later one counts."""
    with three_books([(0, 0, 0, "confirm", 0), (1, 0, 0, "skip", 0)]) as folder:
        _, (found,) = merged(folder, "barn", "kitchen")
        assert [(each.bench, each.person, each.counts) for each in found.versions] == [
            ("barn", "Ann", False),
            ("kitchen", "Ann", True),
        ]
        assert found.versions[0].words.startswith(State.DONE)
        assert found.versions[1].words == "skipped, not needed today"
        assert all(astuple(each) for each in found.versions)
