"""A change under way at M: held, stepped back, ended, each seen before it is written, told on and taken back."""

from collections.abc import Sequence
from datetime import timedelta

import pytest
from msgspec.structs import replace
from syrupy.assertion import SnapshotAssertion

from store.book.drafts import RowDraft, Subject
from store.book.figures import FedFigure, NotedFigure
from store.book.opening import Book
from store.book.reading import read_facts, read_snapshot
from store.round.change import PLAN_CHANGED
from store.round.confirm import noted
from tests.farm import MORNING, HandClock
from tests.store.herd.filled import register
from tests.store.round.made import animal_named
from tests.store.round.named import feed_of
from tests.store.round.test_change import changing
from tests.tui.keys import Sitting
from tui.rooms import House
from tui.walker import Walker
from tui.yard.told import to_tell

HOLD, BACK, END, REASON = "1", "2", "3", "4"


@pytest.fixture
def hazel(book: Book) -> Sitting:
    """At Hazel, who got 1.6 kg nuts yesterday, gets 1.8 today and 2.1 tomorrow."""
    changing(book)
    return Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True))).to_step("Hazel", "feed")


def given(book: Book, days: range) -> Sequence[float]:
    """What Hazel is due of nuts on some mornings, counted from the pretend one."""
    turn = Walker(book, read_facts(book.desk, book.clock.now())).this()
    snapshots = (
        read_snapshot(
            book.desk,
            replace(turn, day=turn.day + timedelta(days=n)),
            max(book.clock.now(), MORNING + timedelta(days=n)),
        )
        for n in days
    )
    return [feed_of(each, "Hazel").due[0].due_kg for each in snapshots]


@pytest.mark.parametrize("pick", [HOLD, BACK, END])
def test_it_is_seen_before_it_is_written(hazel: Sitting, screen: SnapshotAssertion, pick: str) -> None:
    hazel.press("m", "3", "enter", pick)
    assert hazel.text() == screen
    assert hazel.walker.changes == []


@pytest.mark.parametrize(("pick", "expected", "words"), [
    (HOLD, [1.6, 1.8, 2.1, 2.1], "held for a day"),
    (BACK, [2.0, 1.6, 1.8, 2.1], "stepped back"),
    (END, [1.8, 1.8, 1.8, 1.8], "ended here"),
])  # fmt: skip
def test_enter_writes_it_and_the_next_person_is_told(
    hazel: Sitting, book: Book, pick: str, expected: list[float], words: str
) -> None:
    hazel.press("m", "3", "enter", pick, "enter")
    assert hazel.said == f"dairy nuts: {words}. F, then U takes it back."
    assert given(book, range(4)) == expected
    told = hazel.newest().the(NotedFigure)
    assert told == NotedFigure(f"dairy nuts: the change was {words}", tell=True)
    hazel.press("enter")
    assert hazel.newest().of(FedFigure)[0].due_kg == expected[0]


@pytest.mark.parametrize("pick", [HOLD, BACK, END])
def test_it_is_gone_when_it_is_taken_back(hazel: Sitting, book: Book, clock: HandClock, pick: str) -> None:
    hazel.press("m", "3", "enter", pick, "enter")
    clock.move(minutes=1)
    hazel.press("f", "u", "enter")
    clock.move(minutes=1)
    assert given(book, range(4)) == [1.8, 2.1, 2.1, 2.1]


def test_behind_her_meal_it_counts_from_tomorrow(hazel: Sitting, book: Book) -> None:
    """What she ate this morning stays: held, she gets it again tomorrow."""
    hazel.press("enter").to_step("Hazel", "feed").press("m", "3", "enter", HOLD, "enter")
    assert given(book, range(4)) == [1.8, 1.8, 2.1, 2.1]


def test_what_it_is_for_is_typed_and_stands_there_the_next_time(hazel: Sitting) -> None:
    hazel.press("m", "3", "enter", REASON, "enter", "more milk", "enter")
    assert hazel.said == "Kept with the change."
    hazel.press("m", "3", "enter")
    assert "the change is for more milk  (Wed 11 Mar 06:31 Ann)" in hazel.text()


def test_other_notes_of_her_plan_are_no_notes_of_the_change(hazel: Sitting) -> None:
    hazel.press("m", "3", "enter", REASON, "enter", "more milk", "enter")
    subject = Subject(animal_id=animal_named(hazel.walker.snapshot, "Hazel").id)
    note = noted(hazel.walker.hand(), subject, "Hazel: fed for condition 3.25 of 5", tell=False)
    hazel.walker.write(replace(note, reason=PLAN_CHANGED))
    hazel.to_step("Hazel", "feed").press("m", "3", "enter")
    assert "more milk" in hazel.text()
    assert "fed for condition" not in hazel.text().split("WRITTEN")[0]


def test_the_step_says_that_it_is_held_today(hazel: Sitting) -> None:
    hazel.press("m", "3", "enter", HOLD, "enter").to_step("Hazel", "feed")
    assert "CHANGE  dairy nuts, HELD today: as the day before, Thu 12 Mar" in hazel.text()


def test_where_nothing_changes_m_does_not_offer_it(hazel: Sitting) -> None:
    assert "The change under way" not in hazel.to_step("Sloe", "feed").press("m").text()


def test_the_closing_tells_it_and_so_does_what_is_left_for_the_next_person(hazel: Sitting, clock: HandClock) -> None:
    hazel.press("m", "3", "enter", END, "enter")
    hazel.place = hazel.house.closing()
    assert "dairy nuts: the change was ended here" in hazel.text(100, 60)
    clock.move(hours=12)
    hazel.walker.open_turn(hazel.walker.this())
    assert any("dairy nuts: the change was ended here" in words for words, _ in to_tell(hazel.walker))


def test_what_another_bench_planned_meanwhile_is_shown_first(hazel: Sitting, book: Book) -> None:
    hazel.press("m", "3", "enter", HOLD)
    row = next(row for row in register(book).all("feed_plan") if row["due_kg"] == 1.8)
    kept = {key: value for key, value in row.items() if key not in {"id", "begins_at", "written_at"}}
    book.change([RowDraft("feed_plan", kept | {"due_kg": 1.7})])
    hazel.press("enter")
    assert "nothing is written yet" in hazel.said
    assert not hazel.walker.changes
    assert "1.70 kg" in hazel.text()


def test_why_lists_what_each_meal_gives_from_each_day_on(hazel: Sitting) -> None:
    page = hazel.press("m", "3", "enter", "w").text()
    assert "the change of Hazel" in page
    assert "dairy nuts, morning, from Thu 12 Mar on" in page
    assert "2.1 kg" in page
