"""A ration from now to new: the farm's limits, all feeds together, as dated rows that the round then walks by."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import RowDraft
from store.book.facts.feed import Told
from store.book.opening import Book
from store.book.turn import Turn
from store.book.words import SettingName
from store.herd.taking_back import as_before
from store.ration.change import Change, preview, steps
from store.ration.dated import rows
from store.ration.parts import Amounts, Case, Limits
from store.ration.step_limits import Rules, rules_of
from store.round.change import change_of
from tests.farm import HandClock, morning
from tests.store.herd.filled import register
from tests.store.ration.made import case_of, feed_of_book, id_of, kg
from tests.store.round.named import feed_of

SCOOP_KG = 0.675
TOMORROW = Turn(date(2026, 3, 12), "morning")
ZONE = "Europe/Dublin"


def sloe(book: Book, **limits: object) -> Case:
    """A heifer with a scoop and a half of nuts in the morning."""
    nuts = feed_of_book(register(book), "dairy nuts", limits=Limits(**limits))  # type: ignore[arg-type]
    return case_of(book, "Sloe", nuts)


def rules(book: Book, **settings: str) -> Rules:
    """The farm's rules, some of them set."""
    book.change([RowDraft("setting", {"name": SettingName(name), "value": value}) for name, value in settings.items()])
    return rules_of(register(book))


def to(case: Case, scoops: float, slot: str = "morning", name: str = "dairy nuts") -> Amounts:
    """As now, but for one meal."""
    return {**case.now, (slot, id_of(case, name)): scoops * SCOOP_KG}


def given(found: Change, case: Case, slot: str = "morning", name: str = "dairy nuts") -> list[float]:
    """What one meal gives on each day on which something steps, in scoops."""
    return [round(day.amounts.get((slot, id_of(case, name)), 0.0) / SCOOP_KG, 4) for day in found.days]


def test_a_limit_of_25_percent_proposes_a_scoop_and_a_quarter_between_a_half_more_and_one(book: Book) -> None:
    case = sloe(book)
    found = preview(case, to(case, 1.0), rules(book, change_step_percent="25"), TOMORROW)
    assert given(found, case) == [1.25, 1.0]
    assert [day.on for day in found.days] == [date(2026, 3, 12), date(2026, 3, 13)]
    assert (found.steps, found.lasts.amount if found.lasts else None) == (2, 2)


def test_a_farm_that_lets_a_feed_be_taken_away_at_once_sets_a_hundred_percent(book: Book) -> None:
    case = sloe(book)
    assert given(preview(case, to(case, 0), rules(book, change_step_percent="100"), TOMORROW), case) == [0]


def test_of_a_heifer_grain_rises_a_quarter_of_a_kilogram_a_day_until_the_farm_says_otherwise(book: Book) -> None:
    """0.25 kg, from memory, is told as a quarter of a scoop; a cow would get 0.34 kg, 25 % of what she gets."""
    case = sloe(book)
    found = preview(case, to(case, 3), rules_of(register(book)), TOMORROW)
    assert given(found, case) == [1.75, 2.0, 2.25, 2.5, 2.75, 3.0]
    most = found.limits[0].inputs["most_kg"]
    assert (most.amount, most.name, most.came) == (0.25, "more a day of all that is no forage", "a starting value")
    assert [each.words for each in most.sources()] == ["0.1 to 0.25 kg of grain more a day for calves and heifers"]


def test_the_feeds_own_step_and_days_go_before_the_farms(book: Book) -> None:
    own = rules(book, change_step_kg="0.2", change_step_days="1", change_step_percent="100")
    case = sloe(book)
    assert given(preview(case, to(case, 2), own, TOMORROW), case) == [1.75, 2.0]
    case = sloe(book, step_kg=kg(0.5), step_days=kg(2))
    found = preview(case, to(case, 2), own, TOMORROW)
    assert (given(found, case), found.limits[0].came) == ([2.0], "your limit of this feed")
    found = preview(case, to(case, 3), own, TOMORROW)
    assert [day.on.day for day in found.days] == [12, 14, 16]


def test_a_supplement_from_nothing_begins_with_a_quarter_cup_and_takes_its_days(book: Book) -> None:
    """New to her: a step every third day, so that four steps end on the tenth."""
    found = register(book)
    oil = replace(feed_of_book(found, "lucerne pellets", told=False), told=Told(found.farm.id, "cup", "cups", 0.24))
    case = case_of(book, "Sloe", oil)
    change = preview(case, {("morning", oil.feed.id): 0.24}, rules_of(register(book)), TOMORROW)
    assert [day.amounts["morning", oil.feed.id] for day in change.days] == pytest.approx([0.06, 0.12, 0.18, 0.24])
    assert [day.on.day for day in change.days] == [12, 15, 18, 21]
    assert change.lasts
    assert change.lasts.amount == 10


def test_forage_comes_down_as_grain_goes_up_and_no_meal_breaks_its_cap_on_the_way(book: Book) -> None:
    """Lucerne of 0.9 kg a meal is taken for nuts; a meal is 3.6 kg now and in the end, and the cap."""
    found = register(book)
    nuts = feed_of_book(found, "dairy nuts", told=False)
    case = case_of(book, "Fennel", nuts, feed_of_book(found, "lucerne pellets", told=False), meal_limit_kg=3.6)
    new = {**case.now, ("morning", id_of(case, "lucerne pellets")): 0.0, ("morning", nuts.feed.id): 3.6}
    change = preview(case, new, rules_of(register(book)), TOMORROW)
    assert change.steps == 4
    assert change.biggest.amount == pytest.approx(3.6)
    for day in change.days:
        meal = [amount for (slot, _), amount in day.amounts.items() if slot == "morning"]
        assert sum(meal) == pytest.approx(3.6)


def test_begun_in_the_evening_the_morning_follows_a_day_later(book: Book) -> None:
    nuts = feed_of_book(register(book), "dairy nuts")
    case = case_of(book, "Hazel", nuts)
    new = {meal: amount + SCOOP_KG / 4 for meal, amount in case.now.items()}
    found = preview(case, new, rules_of(register(book)), Turn(date(2026, 3, 11), "evening"))
    assert [day.on.day for day in found.days] == [11, 12]
    assert found.days[0].amounts["morning", nuts.feed.id] == 2.0
    assert found.days[0].amounts["evening", nuts.feed.id] == pytest.approx(1.35 + SCOOP_KG / 4)
    assert found.days[-1].amounts == pytest.approx(new)


def test_nothing_to_change_is_no_day(book: Book) -> None:
    case = sloe(book)
    assert steps(case, case.now, rules_of(register(book)), TOMORROW) == ()


def test_the_rows_are_what_the_round_walks_by_day_by_day(book: Book, clock: HandClock) -> None:
    case = sloe(book)
    days = steps(case, to(case, 2.5), rules_of(register(book)), TOMORROW)
    book.change(rows(register(book), case, days))
    seen = []
    for _ in range(6):
        seen.append(feed_of(morning(book), "Sloe").due[0].measures)
        clock.move(days=1)
    assert seen == [1.5, 1.75, 2.0, 2.25, 2.5, 2.5]


def test_the_morning_after_a_start_is_day_one_of_so_many_also_from_nothing(book: Book, clock: HandClock) -> None:
    lucerne = feed_of_book(register(book), "lucerne pellets", limits=Limits(step_days=kg(1)))
    case = case_of(book, "Sloe", lucerne)
    days = steps(case, {("morning", lucerne.feed.id): 0.9}, rules_of(register(book)), TOMORROW)
    book.change(rows(register(book), case, days))
    clock.move(days=1)
    due = next(each for each in feed_of(morning(book), "Sloe").due if each.feed.id == lucerne.feed.id)
    change = change_of(due.rows, clock.now(), ZONE)
    assert change
    assert (change.day, change.days, change.was_kg) == (1, 4, 0.0)


def test_what_was_planned_of_a_meal_is_taken_back_and_taking_back_the_change_brings_it_again(
    book: Book, clock: HandClock
) -> None:
    case = sloe(book)
    usual = rules_of(register(book))
    book.change(rows(register(book), case, steps(case, to(case, 3), usual, TOMORROW)))
    clock.move(minutes=5)
    found = register(book)
    other = rows(found, case, steps(case, to(case, 1.0), usual, TOMORROW))
    before = tuple(as_before(found, other))
    book.change(other)
    clock.move(minutes=5)
    late = clock.at + timedelta(days=9)
    assert _at(book, late) == pytest.approx(SCOOP_KG)
    book.change(before)
    assert _at(book, late) == pytest.approx(3 * SCOOP_KG)


def test_until_it_begins_they_get_what_they_get_now(book: Book, clock: HandClock) -> None:
    """Three scoops were to begin tomorrow; the new change begins on Friday."""
    case = sloe(book)
    usual = rules_of(register(book))
    book.change(rows(register(book), case, steps(case, to(case, 3), usual, TOMORROW)))
    clock.move(minutes=5)
    days = steps(case, to(case, 1.0), usual, Turn(date(2026, 3, 13), "morning"))
    book.change(rows(register(book), case, days))
    seen = []
    for _ in range(5):
        seen.append(feed_of(morning(book), "Sloe").due[0].measures)
        clock.move(days=1)
    assert seen == [1.5, 1.5, 1.25, 1.0, 1.0]


def _at(book: Book, moment: object) -> float:
    """Sloe's nuts at a moment to come."""
    found = register(book)
    course = next(
        rows for (animal_id, _, _, _), rows in found.history["feed_plan"].items()
        if animal_id and found.name("animal_as", animal_id) == "Sloe"
    )  # fmt: skip
    return float(next(row["due_kg"] for row in reversed(course) if row["begins_at"] <= moment))
