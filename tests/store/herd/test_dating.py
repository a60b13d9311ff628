"""A change among rows that are there and rows that are planned holds from its moment on, and changes nothing else."""

from datetime import timedelta
from typing import Any
from uuid import UUID

from hypothesis import given
from hypothesis import strategies as st

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.register import Values
from store.book.words import Stage
from store.herd.animal import AnimalSheet
from store.herd.birth import BirthSheet
from store.herd.dating import at, kept, rows_of
from store.herd.feed import FeedSheet
from store.herd.filling import Filling
from store.herd.leaving import LeavingSheet
from store.herd.moving import MovingSheet
from store.herd.pen import PenSheet
from store.herd.sheet import YardSheet
from store.herd.taking_back import as_before, still_in_force
from store.herd.treatment import TreatmentSheet
from store.round.plan import plan
from tests.farm import MORNING, HandClock, morning
from tests.store.herd.filled import animal, filled, register
from tests.store.round.made import unhurried

NOW = 6
"""The hour of a change, in the hours of these courses."""
COURSES = st.lists(st.tuples(st.integers(0, 12), st.sampled_from("ab"), st.integers(0, 2)), min_size=1, max_size=6)
STEPS = st.lists(
    st.tuples(st.integers(0, 12), st.sampled_from("abc")), min_size=1, max_size=3, unique_by=lambda s: s[0]
)


def hour(number: int) -> Any:
    """A moment."""
    return MORNING + timedelta(hours=number)


def course(rows: list[tuple[int, str, int]]) -> tuple[Values, ...]:
    """Rows of one thing: from an hour on a pen and a class."""
    made = [
        {"begins_at": hour(begins), "written_at": hour(min(begins, NOW - 1)), "pen": pen, "stage": stage}
        for begins, pen, stage in rows
    ]
    return tuple(sorted(made, key=lambda row: (row["begins_at"], row["written_at"])))


def after(rows: tuple[Values, ...], added: list[dict[str, Any]]) -> tuple[Values, ...]:
    """The course with what was added now."""
    new = [{"begins_at": hour(NOW), "written_at": hour(NOW), **row} for row in added]
    return tuple(sorted((*rows, *new), key=lambda row: (row["begins_at"], row["written_at"])))


@unhurried
@given(rows=COURSES, steps=STEPS, take_back=st.booleans())
def test_a_change_holds_from_its_moment_on_and_leaves_the_rest(
    rows: list[tuple[int, str, int]],
    steps: list[tuple[int, str]],
    take_back: bool,
) -> None:
    """At every hour: the pen of the last step, if it is another than now; the class as it was planned, or as now."""
    before, in_order = course(rows), sorted(steps)
    added = list(rows_of(before, hour(NOW), [(hour(h), {"pen": pen}) for h, pen in in_order], take_back=take_back))
    then = after(before, added)
    shown = at(before, hour(NOW))
    for now in range(14):
        was, is_now = kept(at(before, hour(now))), kept(at(then, hour(now)))
        asked = [pen for h, pen in in_order if h <= now]
        if not asked:
            assert is_now == was
            continue
        if shown is None or asked[-1] != shown["pen"]:
            assert is_now["pen"] == asked[-1]
        if not take_back and was:
            assert is_now.get("stage") == was["stage"]


@unhurried
@given(rows=COURSES)
def test_what_is_as_it_stands_now_adds_nothing_and_taken_back_it_stays_so(rows: list[tuple[int, str, int]]) -> None:
    before = course(rows)
    shown = at(before, hour(NOW))
    values = {} if shown is None else {"pen": shown["pen"], "stage": shown["stage"]}
    if shown is not None:
        assert list(rows_of(before, hour(NOW), [(hour(NOW), values)])) == []
        then = after(before, list(rows_of(before, hour(NOW), [(hour(NOW), values)], take_back=True)))
        assert {(row["pen"], row["stage"]) for h in range(NOW, 14) if (row := at(then, hour(h)))} == {
            (shown["pen"], shown["stage"])
        }


def test_a_row_that_was_written_by_a_clock_ahead_is_written_over() -> None:
    """It is written after it, whatever that clock said."""
    ahead = ({"begins_at": hour(9), "written_at": hour(9), "pen": "a", "stage": 0},)
    (row, later) = rows_of(ahead, hour(NOW), [(hour(NOW), {"pen": "b", "stage": 0})])
    assert "begins_at" not in row
    assert later["begins_at"] == hour(9)
    assert later["written_at"] > hour(9)
    assert at(after(ahead, [row, later]), hour(10)) == {**later}


def test_taken_back_everything_is_as_it_was(book: Book, clock: HandClock) -> None:
    """Whatever a sheet changed, at once or planned."""
    before = plan(morning(book))
    found = register(book)
    for sheet, typed in (
        (MovingSheet(found, animal(book, "Hazel")), {"pen_id": "Orchard"}),
        (LeavingSheet(found, animal(book, "Fennel")), {"how": "sold"}),
        (AnimalSheet(found, animal(book, "Tansy")), {"stage": "heifer", "from_at": "tomorrow"}),
        (AnimalSheet(found), {"name": "Willow"}),
    ):
        rows = sheet.rows(filled(sheet, **typed).answers())
        back = list(as_before(register(book), rows))
        book.change(rows)
        clock.move(minutes=1)
        book.change(back)
        clock.move(minutes=1)
        assert plan(morning(book)) == before
    clock.move(days=1)
    assert next(each for each in morning(book).animals if each.name == "Tansy").stage is Stage.DRY


def test_something_new_that_was_changed_and_changed_back_is_gone_when_it_is_taken_back(
    book: Book, clock: HandClock
) -> None:
    """A calf begins at midnight, a pen and a treatment when they are written: each is changed once before."""
    hazel = animal(book, "Hazel")
    for new, table, mended in (
        (BirthSheet(register(book), animal(book, "Tansy")), "animal_as", {"name": "Wren"}),
        (PenSheet(register(book)), "pen_as", {"name": "Bull pen"}),
        (FeedSheet(register(book)), "feed_as", {"name": "bran"}),
        (TreatmentSheet(register(book), hazel), "treatment_as", {"product": "other tube"}),
    ):
        before = plan(morning(book))
        typed = {"when": "3:10", "name": "Rue", "product": "tube", "first_at": "6:00"}
        done = [changed(book, new, **{name: typed[name] for name in typed if name in Filling(new).texts})]
        clock.move(minutes=1)
        done.append(changed(book, opened(book, table, hazel), **mended))
        for back in reversed(done):
            clock.move(minutes=1)
            book.change(list(still_in_force(register(book), back)))
        clock.move(minutes=1)
        assert plan(morning(book)) == before


def changed(book: Book, sheet: YardSheet, **typed: str) -> list[RowDraft]:
    """Written; the rows that make it as before."""
    rows = sheet.rows(filled(sheet, **typed).answers())
    back = list(as_before(register(book), rows))
    book.change(rows)
    return back


def opened(book: Book, table: str, animal_id: UUID) -> YardSheet:
    """The sheet of what was written last in a table."""
    found = register(book)
    ((id_,), _) = max(found.rows[table].items(), key=lambda each: each[1]["written_at"])
    sheets: dict[str, YardSheet] = {
        "animal_as": AnimalSheet(found, id_), "pen_as": PenSheet(found, id_), "feed_as": FeedSheet(found, id_),
        "treatment_as": TreatmentSheet(found, animal_id, id_),
    }  # fmt: skip
    return sheets[table]
