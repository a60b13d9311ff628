"""What an animal or pen gets: typed in measures, kept in weight, changed in steps, never what is barred."""

import pytest

from store.book.drafts import RowDraft, Subject
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.book.words import SettingName
from store.herd.feed import FeedSheet
from store.herd.plan import PlanSheet
from store.herd.sheet import Wrong
from store.round.plan import plan
from store.round.steps import DueFeed, FeedStep
from tests.farm import HandClock, morning
from tests.store.herd.filled import animal, filled, id_of, register, write


def sheet(book: Book, name: str, feed: str | None = "dairy nuts") -> PlanSheet:
    """What an animal gets of a feed; None: of one it does not get yet."""
    found = register(book)
    return PlanSheet(
        found, Subject(animal_id=animal(book, name)), name, id_of(found, "feed_as", feed) if feed else None
    )


def due(snapshot: Snapshot, name: str, feed: str) -> DueFeed:
    """What she is to get of it this morning."""
    steps = (step for step in plan(snapshot) if isinstance(step, FeedStep) and step.name == name)
    return next(each for step in steps for each in step.due if each.feed.name == feed)


def limit(book: Book, kg: str) -> None:
    """The farm's own limit for one step of a change."""
    book.change([RowDraft("setting", {"name": SettingName.CHANGE_STEP_KG, "value": kg})])


def test_scoops_are_typed_and_kilograms_are_kept(book: Book) -> None:
    after = write(book, sheet(book, "Fennel"), morning="2 1/2", evening="1 kg")
    assert due(after, "Fennel", "dairy nuts").measures == 2.5
    assert due(after, "Fennel", "dairy nuts").due_kg == pytest.approx(2.5 * 0.675)


def test_nothing_in_the_morning_ends_that_plan_alone(book: Book) -> None:
    before = register(book)
    write(book, sheet(book, "Fennel"), morning="")
    rows = [row for row in register(book).all("feed_plan") if row["animal_id"] == animal(book, "Fennel")]
    nuts = id_of(before, "feed_as", "dairy nuts")
    assert {row["slot"]: row["due_kg"] is None for row in rows if row["feed_id"] == nuts} == {
        "morning": True,
        "evening": False,
    }


def test_more_at_once_than_the_farms_own_limit_is_refused_and_said(book: Book) -> None:
    """With the days it takes; over so many days it is written, a step a day."""
    limit(book, "0.5")
    found = sheet(book, "Fennel")
    was_kg = due(morning(book), "Fennel", "dairy nuts").due_kg
    to = f"{was_kg + 1.4:.3f} kg!"
    with pytest.raises(Wrong, match=r"1\.40 kg more in the morning; your limit for one step is 0\.50 kg\. Type 3 days"):
        found.rows(filled(found, morning=to).answers())
    rows = found.rows(filled(found, morning=to, days="3").answers())
    steps = [row.values["due_kg"] for row in rows if row.values["slot"] == "morning"]
    assert steps == pytest.approx([was_kg + 1.4 / 3, was_kg + 2.8 / 3, was_kg + 1.4], abs=0.001)


def test_a_change_over_days_reaches_its_end_on_the_last_day(book: Book, clock: HandClock) -> None:
    was_kg = due(morning(book), "Fennel", "dairy nuts").due_kg
    first = write(book, sheet(book, "Fennel"), morning=f"{was_kg + 0.4:.3f} kg", days="4")
    assert due(first, "Fennel", "dairy nuts").due_kg == pytest.approx(was_kg + 0.1, abs=0.001)
    clock.move(days=3)
    assert due(morning(book), "Fennel", "dairy nuts").due_kg == pytest.approx(was_kg + 0.4, abs=0.001)


def test_less_may_come_at_once(book: Book) -> None:
    """Taking feed away hurts nobody by a step."""
    limit(book, "0.1")
    assert due(write(book, sheet(book, "Fennel"), morning="1/4"), "Fennel", "dairy nuts").measures == 0.25


def test_by_percent_a_step_down_is_held_too_and_it_comes_down_at_once_where_the_keeper_says_so(book: Book) -> None:
    """A scoop and a half to one, 25 % of the meal in whole quarters: a scoop and a quarter first."""
    book.change([RowDraft("setting", {"name": SettingName.CHANGE_STEP_PERCENT, "value": "25"})])
    found = sheet(book, "Sloe")
    with pytest.raises(Wrong, match=r"0\.34 kg less in the morning; .* is 0\.25 kg\. Type 2 days or more\. With !"):
        found.rows(filled(found, morning="1").answers())
    assert len(found.rows(filled(found, morning="1!").answers())) == 1
    rows = found.rows(filled(found, morning="1", days="2").answers())
    assert [row.values["due_kg"] / 0.675 for row in rows] == pytest.approx([1.25, 1.0])


def test_the_feeds_own_step_and_days_go_before_the_farms(book: Book) -> None:
    limit(book, "0.5")
    nuts = id_of(register(book), "feed_as", "dairy nuts")
    book.change([RowDraft("feed_limit", {"feed_id": nuts, "step_kg": 0.2, "step_days": 2})])
    found = sheet(book, "Sloe")
    with pytest.raises(Wrong, match=r"your limit for one step is 0\.20 kg\. Type 3 days or more\.$"):
        found.rows(filled(found, morning="2").answers())


def test_a_feed_that_is_never_for_her_kind_is_refused_with_the_reason(book: Book, clock: HandClock) -> None:
    nuts = id_of(register(book), "feed_as", "dairy nuts")
    write(book, FeedSheet(register(book), nuts), not_for="cattle")
    clock.move(seconds=1)
    found = sheet(book, "Sloe", None)
    with pytest.raises(Wrong, match="dairy nuts is never for cattle, and Sloe would get it"):
        found.rows(filled(found, feed_id="dairy nuts", morning="1 kg").answers())


def test_a_pen_gets_it_by_the_head(book: Book) -> None:
    found = register(book)
    orchard = PlanSheet(found, Subject(pen_id=id_of(found, "pen_as", "Orchard")), "Orchard")
    after = write(book, orchard, feed_id="dairy nuts", morning="1 kg")
    heads = [each for each in after.animals if each.pen_id == orchard.of.pen_id]
    assert due(after, "Orchard", "dairy nuts").due_kg == pytest.approx(len(heads))


def test_a_change_dated_ahead_is_not_fed_before(book: Book, clock: HandClock) -> None:
    was = due(morning(book), "Fennel", "dairy nuts").measures
    assert (
        due(write(book, sheet(book, "Fennel"), morning="1/2", from_at="tomorrow"), "Fennel", "dairy nuts").measures
        == was
    )
    clock.move(days=1)
    assert due(morning(book), "Fennel", "dairy nuts").measures == 0.5


def test_an_amount_typed_at_once_ends_a_change_that_was_under_way(book: Book, clock: HandClock) -> None:
    """Up to 6 kg in four days; ten minutes later 1 kg: it stays 1 kg."""
    write(book, sheet(book, "Fennel"), morning="6 kg!", days="4")
    clock.move(minutes=10)
    found = sheet(book, "Fennel")
    assert any("morning 6.00 kg from 14 Mar 2026" in question.hint for question in found.questions())
    write(book, found, morning="1 kg")
    for _ in range(5):
        assert due(morning(book), "Fennel", "dairy nuts").due_kg == pytest.approx(1.0)
        clock.move(days=1)


def test_a_planned_change_is_taken_back(book: Book, clock: HandClock) -> None:
    was_kg = due(morning(book), "Fennel", "dairy nuts").due_kg
    write(book, sheet(book, "Fennel"), morning="6 kg!", from_at="tomorrow")
    clock.move(minutes=10)
    write(book, sheet(book, "Fennel"), take_back="yes")
    clock.move(days=3)
    assert due(morning(book), "Fennel", "dairy nuts").due_kg == pytest.approx(was_kg)


def test_a_feed_that_is_out_of_use_stays_picked_and_nothing_else_takes_its_place(book: Book, clock: HandClock) -> None:
    write(book, FeedSheet(register(book), id_of(register(book), "feed_as", "dairy nuts")), in_use="no")
    clock.move(minutes=1)
    found = sheet(book, "Fennel")
    assert found.rows(filled(found).answers()) == []


def test_far_more_than_a_meal_is_asked_about_and_an_answer_says_weight_and_scoops(book: Book) -> None:
    """Ninety-nine scoops are a slip; what is written is told in both."""
    found = sheet(book, "Fennel")
    with pytest.raises(
        Wrong, match=r"That is 66\.83 kg for one head in the morning; up to 3\.50 kg is not asked about"
    ):
        found.rows(filled(found, morning="99").answers())
    assert found.told(filled(found, morning="2 1/2", evening="").answers()) == (
        "gets dairy nuts: morning 1.69 kg = 2.50 scoops, evening none"
    )
