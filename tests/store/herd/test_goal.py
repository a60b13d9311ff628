"""What an animal is fed for, on the scale of her class, and what a test found in her milk."""

from datetime import UTC, datetime

import pytest

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.words import SettingName
from store.herd.condition import FOR_STAGE, scale_of
from store.herd.goal import GoalSheet
from store.herd.milk_test import MilkTestSheet
from store.herd.sheet import Wrong
from store.herd.taking_back import as_before, still_in_force
from store.husbandry.body.condition import TARGETS
from tests.farm import HandClock, hand, morning
from tests.store.herd.filled import animal, filled, register, write


def goal(book: Book, name: str = "Fennel") -> GoalSheet:
    """Hers."""
    return GoalSheet(register(book), animal(book, name))


@pytest.mark.parametrize(
    ("typed", "points"), [("3.25", 3.25), ("3 1/4 of 5", 3.25), ("6 of 9", 3.5), ("5 OF 9", 3.0), ("", None)]
)
def test_a_condition_is_told_on_the_scale_of_her_class(
    book: Book, clock: HandClock, typed: str, points: float | None
) -> None:
    write(book, goal(book), condition=typed, score_every_days="30")
    clock.move(minutes=1)
    row = register(book).get("feeding_goal", animal(book, "Fennel")) or {}
    assert (row["condition"], row["score_every_days"]) == (points, 30)


@pytest.mark.parametrize("typed", ["6", "0.5", "10 of 9", "3 of 10", "3 kg", "fat"])
def test_what_is_no_condition_is_said_with_both_scales(book: Book, typed: str) -> None:
    with pytest.raises(Wrong) as problem:
        filled(goal(book), condition=typed).answers()
    assert problem.value.question == "condition"
    assert str(problem.value).endswith(".")


def test_beyond_the_scale_names_the_other_one(book: Book) -> None:
    with pytest.raises(Wrong, match=r"«6» is no condition\. Type 1 to 5, or of the other scale, as 5 of 9\."):
        filled(goal(book), condition="6").answers()


def test_what_is_wanted_is_told_in_a_line(book: Book) -> None:
    sheet = goal(book)
    answers = filled(sheet, condition="3.25", gain_kg_day="0.8", mature_kg="600", forage_only="yes").answers()
    assert sheet.told(answers) == (
        "fed for condition 3.25 of 5, a gain of 0.80 kg a day, a grown weight of 600.00 kg, "
        "forage alone while she holds condition"
    )
    assert sheet.told(filled(sheet).answers()) == "fed for nothing more than she needs"


def test_pounds_are_kept_exactly_and_shown_as_pounds(book: Book, clock: HandClock) -> None:
    book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": "us"})])
    write(book, goal(book), gain_kg_day="1.8", mature_kg="1300 lb")
    clock.move(minutes=1)
    sheet = goal(book)
    assert [each.first for each in sheet.questions()][1:3] == ["1.80 lb", "1300.00 lb"]
    assert list(sheet.rows(filled(sheet).answers())) == []
    assert (register(book).get("feeding_goal", sheet.animal_id) or {})["gain_kg_day"] == pytest.approx(1.8 * 0.45359237)


def test_a_test_counts_from_the_day_of_the_milk(book: Book, clock: HandClock) -> None:
    fennel = animal(book, "Fennel")
    write(book, MilkTestSheet(register(book), fennel), fat_percent="4.6 %", protein_percent="3,5", taken="5 Mar")
    clock.move(minutes=1)
    sheet = MilkTestSheet(register(book), fennel)
    assert sheet.title == "MILK OF Fennel TESTED  last 5 Mar 2026: fat 4.6 %, protein 3.5 %"
    assert (register(book).get("milk_test", fennel) or {})["begins_at"] == datetime(2026, 3, 5, tzinfo=UTC)
    assert sheet.told(filled(sheet, fat_percent="4.2").answers()) == "milk tested on 11 Mar 2026: fat 4.2 %"


@pytest.mark.parametrize(
    ("typed", "question", "words"),
    [({"fat_percent": "42"}, "fat_percent", "does not fit here"),
     ({"protein_percent": "3.4"}, "fat_percent", "fat is needed"),
     ({"fat_percent": "4", "taken": "tomorrow"}, "taken", "12 Mar 2026 is still to come"),
     ({"fat_percent": "4", "taken": ""}, "taken", "needs an answer")],
)  # fmt: skip
def test_a_test_that_cannot_be_is_said(book: Book, typed: dict[str, str], question: str, words: str) -> None:
    sheet = MilkTestSheet(register(book), animal(book, "Fennel"))
    with pytest.raises(Wrong, match=words) as problem:
        sheet.rows(filled(sheet, **typed).answers())
    assert problem.value.question == question


def test_an_earlier_test_that_is_taken_back_leaves_the_later_one(book: Book, clock: HandClock) -> None:
    fennel = animal(book, "Fennel")
    write(book, MilkTestSheet(register(book), fennel), fat_percent="4.6", taken="5 Mar")
    clock.move(minutes=1)
    known = register(book)
    rows = MilkTestSheet(known, fennel).rows(
        filled(MilkTestSheet(known, fennel), fat_percent="9", taken="2 Mar").answers()
    )
    book.change(rows)
    clock.move(minutes=1)
    book.change(tuple(still_in_force(register(book), tuple(as_before(known, rows)))))
    clock.move(minutes=1)
    assert (register(book).get("milk_test", fennel) or {})["fat_percent"] == 4.6


def test_a_point_is_said_in_weight_and_in_hay(book: Book) -> None:
    sheet = goal(book)
    said = sheet.says(filled(sheet, condition="3").answers(), hand(book, morning(book)))
    assert "usual, dairy cow, dry-off and dry: 3.25 to 3.75 of 5" in said
    assert said[-1] == (
        "a point more is 45.0 kg to 64.0 kg of her, and takes 177 kg to 252 kg of dry hay beside what she needs"
    )
    assert sheet.says(filled(sheet).answers(), hand(book, morning(book))) == []


def test_every_target_is_told_to_a_class_of_its_scale() -> None:
    targets = {each.when: each for each in TARGETS}
    assert set(FOR_STAGE) <= set(targets)
    assert all(scale_of(stage) == targets[when].scale for when, told in FOR_STAGE.items() for stage in told)
