"""A change under way: which meals belong to it, and that each of its meals is held from its own next feeding on."""

from datetime import date, timedelta

import pytest

from store.book.drafts import Subject
from store.book.opening import Book
from store.book.turn import Turn
from store.ration.change import steps
from store.ration.dated import rows
from store.ration.following import Act, Meal, changed_by, course_of, drafts, under_way
from store.ration.step_limits import rules_of
from store.round.change import with_rows
from tests.farm import MORNING, HandClock
from tests.store.herd.filled import of_animal, register
from tests.store.ration.made import case_of, feed_of_book

ZONE, QUARTER_KG = "Europe/Dublin", 0.675 / 4
DAY = timedelta(days=1)


def raised(book: Book, quarters: int, start: Turn) -> Subject:
    """Hazel gets so many quarter scoops more nuts in both meals, step by step from a round on."""
    case = case_of(book, "Hazel", feed_of_book(register(book), "dairy nuts"))
    new = {meal: kg + quarters * QUARTER_KG for meal, kg in case.now.items()}
    book.change(rows(register(book), case, steps(case, new, rules_of(register(book)), start)))
    return of_animal(book, "Hazel")


def seen(book: Book, subject: Subject) -> dict[str, Meal]:
    """The meals of the change by their slot."""
    return {meal.slot: meal for meal in under_way(register(book), subject, book.clock.now())}


def test_both_meals_belong_to_it_also_the_one_that_begins_tomorrow(book: Book, clock: HandClock) -> None:
    subject = raised(book, 3, Turn(date(2026, 3, 11), "evening"))
    clock.move(hours=12)
    assert list(seen(book, subject)) == ["morning", "evening"]


def test_before_it_begins_and_when_it_is_over_there_is_none(book: Book, clock: HandClock) -> None:
    subject = raised(book, 2, Turn(date(2026, 3, 13), "morning"))
    assert seen(book, subject) == {}
    clock.move(days=12)
    assert seen(book, subject) == {}


def test_held_in_the_evening_the_morning_that_is_fed_already_follows_tomorrow(book: Book, clock: HandClock) -> None:
    """Each meal repeats what it gave last."""
    subject = raised(book, 3, Turn(date(2026, 3, 12), "morning"))
    clock.at = MORNING + DAY + timedelta(hours=12)
    evening = Turn(date(2026, 3, 12), "evening")
    for slot, meal in seen(book, subject).items():
        held = with_rows(meal.rows, changed_by(Act.HOLD, meal, evening, clock.now(), ZONE))
        was = dict(course_of(meal.rows, slot, evening, clock.now(), ZONE))
        now = dict(course_of(held, slot, evening, clock.now(), ZONE))
        assert {day + DAY: kg for day, kg in was.items()}.items() <= now.items()
    assert min(now) == date(2026, 3, 12)


@pytest.mark.parametrize("act", list(Act))
def test_what_is_written_keeps_measure_and_place(book: Book, clock: HandClock, act: Act) -> None:
    subject = raised(book, 3, Turn(date(2026, 3, 12), "morning"))
    clock.move(days=1)
    found = register(book)
    meal = seen(book, subject)["morning"]
    added = changed_by(act, meal, Turn(date(2026, 3, 12), "morning"), clock.now(), ZONE)
    made = list(drafts(found, subject, meal, added))
    (before,) = {(row["measure_id"], row["position"]) for row in found.course(
        "feed_plan", subject.animal_id, subject.pen_id, meal.slot, meal.feed_id)}  # fmt: skip
    assert [(draft.values["measure_id"], draft.values["position"]) for draft in made] == [before] * len(added)
    assert [draft.values["due_kg"] for draft in made] == [row.due_kg for row in added]
