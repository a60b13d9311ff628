"""A change under way: which meals belong to it, and that each of its meals is held from its own next feeding on."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.opening import Book
from store.book.turn import Turn
from store.husbandry.starting import CHANGE_STEP_PERCENT
from store.husbandry.why import given
from store.ration.change import steps
from store.ration.dated import rows
from store.ration.following import Act, Here, Meal, changed_by, course_of, drafts, under_way
from store.ration.parts import Limits
from store.ration.step_limits import Rules, rules_of
from store.round.change import due_kg_at, with_rows
from tests.farm import MORNING, HandClock
from tests.store.herd.filled import of_animal, register
from tests.store.ration.made import case_of, feed_of_book, kg

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
    meals = tuple(seen(book, subject).values())
    for meal, added in zip(meals, changed_by(Act.HOLD, meals, Here(evening, False, ZONE)), strict=True):
        was = dict(course_of(meal.rows, meal.slot, evening, clock.now(), ZONE))
        now = dict(course_of(with_rows(meal.rows, added), meal.slot, evening, clock.now(), ZONE))
        assert {day + DAY: kg for day, kg in was.items()}.items() <= now.items()
    assert min(now) == date(2026, 3, 12)


@pytest.mark.parametrize("act", list(Act))
def test_what_is_written_keeps_measure_and_place(book: Book, clock: HandClock, act: Act) -> None:
    subject = raised(book, 3, Turn(date(2026, 3, 12), "morning"))
    clock.move(days=1)
    found = register(book)
    meal = seen(book, subject)["morning"]
    (added,) = changed_by(act, [meal], Here(Turn(date(2026, 3, 12), "morning"), False, ZONE))
    made = list(drafts(found, subject, meal, added))
    (before,) = {(row["measure_id"], row["position"]) for row in found.course(
        "feed_plan", subject.animal_id, subject.pen_id, meal.slot, meal.feed_id)}  # fmt: skip
    assert [(draft.values["measure_id"], draft.values["position"]) for draft in made] == [before] * len(added)
    assert [draft.values["due_kg"] for draft in made] == [row.due_kg for row in added]


@pytest.mark.parametrize("is_fed", [False, True])
def test_ended_in_the_evening_both_meals_stay_as_on_this_day(book: Book, clock: HandClock, is_fed: bool) -> None:
    """Tomorrow's step does not come, of the morning neither, also where the evening is fed already."""
    subject = raised(book, 3, Turn(date(2026, 3, 12), "morning"))
    clock.at = MORNING + DAY + timedelta(hours=12)
    meals, evening = tuple(seen(book, subject).values()), Turn(date(2026, 3, 12), "evening")
    for meal, added in zip(meals, changed_by(Act.END, meals, Here(evening, is_fed, ZONE)), strict=True):
        course = with_rows(meal.rows, added)
        assert len({kg for _, kg in course_of(course, meal.slot, evening, clock.now(), ZONE)}) == 1
        today = due_kg_at(meal.rows, clock.now())
        assert {due_kg_at(course, clock.now() + n * DAY) for n in range(20)} == {today}


def test_a_meal_that_is_at_its_end_already_belongs_to_it_as_long_as_another_steps(book: Book, clock: HandClock) -> None:
    """The evening is raised by one quarter, the morning by eight: stepped back both go back together."""
    case = case_of(book, "Hazel", feed_of_book(register(book), "dairy nuts"))
    slow = Rules(CHANGE_STEP_PERCENT, step_days=given(3, "days from step to step", "d", "your setting"))
    new = {meal: kg + (8 if meal[0] == "morning" else 1) * QUARTER_KG for meal, kg in case.now.items()}
    book.change(rows(register(book), case, steps(case, new, slow, Turn(date(2026, 3, 12), "morning"))))
    subject = of_animal(book, "Hazel")
    clock.move(days=8)
    assert sorted(seen(book, subject)) == ["evening", "morning"]


def test_a_new_feed_in_two_steps_is_under_way_between_them(book: Book, clock: HandClock) -> None:
    oil = feed_of_book(register(book), "lucerne pellets", limits=Limits(step_kg=kg(0.45)))
    case = case_of(book, "Sloe", oil)
    half = Rules(replace(CHANGE_STEP_PERCENT, amount=50.0))
    found = steps(case, {("morning", oil.feed.id): 0.9}, half, Turn(date(2026, 3, 12), "morning"))
    assert [day.on.day for day in found] == [12, 21]
    book.change(rows(register(book), case, found))
    clock.move(days=4)
    assert [meal.name for meal in seen(book, of_animal(book, "Sloe")).values()] == ["lucerne pellets"]
