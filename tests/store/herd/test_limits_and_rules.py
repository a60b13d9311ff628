"""Limits of a feed, and rules for a class: written, said, ended, taken back."""

from datetime import UTC, datetime
from typing import Any

import pytest

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.words import SettingName, Stage
from store.herd.class_rule import ClassRuleSheet, rule_of, rules
from store.herd.dating import kept
from store.herd.feed_limit import FeedLimitSheet
from store.herd.sheet import Wrong
from store.herd.taking_back import as_before
from store.round.rule import Rule
from tests.farm import HandClock, hand, morning
from tests.store.herd.filled import animal, filled, id_of, register, write

NUTS = "dairy nuts"
MILK_RULE = "0.25 per kg milk over 5 kg"


def limits(book: Book, name: str = NUTS) -> FeedLimitSheet:
    """Of a feed."""
    return FeedLimitSheet(register(book), id_of(register(book), "feed_as", name))


def held(book: Book) -> dict[str, Any]:
    """What the book holds of the nuts."""
    return dict(register(book).get("feed_limit", id_of(register(book), "feed_as", NUTS)) or {})


def class_rule(book: Book, stage: Stage | None = None) -> ClassRuleSheet:
    """A new rule, or that of a class for the nuts."""
    return ClassRuleSheet(register(book), stage, id_of(register(book), "feed_as", NUTS) if stage else None)


def test_limits_are_kept_as_they_are_typed_and_said(book: Book, clock: HandClock) -> None:
    typed = {"forage": "no", "most_meal_kg": "2", "most_day_kg": "4 kg", "share_percent": "40 %", "step_kg": "250 g",
             "step_days": "3"}  # fmt: skip
    sheet = limits(book)
    assert sheet.told(filled(sheet, **typed).answers()) == (
        "limits: forage no; most in a meal 2.00 kg; most in a day 4.00 kg; most of the ration 40 %; "
        "most more in one step 0.25 kg; between steps 3 days"
    )
    write(book, sheet, **typed)
    clock.move(minutes=1)
    kept = {"forage": False, "most_meal_kg": 2, "most_day_kg": 4, "share_percent": 40, "step_kg": 0.25, "step_days": 3}
    assert {name: held(book)[name] for name in kept} == kept
    again = limits(book)
    assert again.told(filled(again, most_day_kg="").answers()) == "limits: most in a day none, before 4.00 kg"
    assert again.told(filled(again).answers()) == "limits: as before"


def test_pounds_are_kept_to_the_last_place(book: Book, clock: HandClock) -> None:
    book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": "us"})])
    write(book, limits(book), most_meal_kg="4", step_kg="1/2")
    clock.move(minutes=1)
    assert held(book)["most_meal_kg"] == pytest.approx(4 * 0.45359237)
    assert [each.first for each in limits(book).questions() if each.name == "step_kg"] == ["0.50 lb"]
    assert list(limits(book).rows(filled(limits(book)).answers())) == []


@pytest.mark.parametrize(
    ("typed", "question", "words"),
    [({"most_meal_kg": "3", "most_day_kg": "2"}, "most_day_kg", "less than a meal of 3.00 kg"),
     ({"share_percent": "140"}, "share_percent", "does not fit here"),
     ({"step_days": "2.5"}, "step_days", "no whole number"),
     ({"step_kg": "0"}, "step_kg", "expected"), ({"most_meal_kg": "2 l"}, "most_meal_kg", "no weight")],
)  # fmt: skip
def test_a_limit_that_cannot_be_is_said(book: Book, typed: dict[str, str], question: str, words: str) -> None:
    with pytest.raises(Wrong, match=words) as problem:
        limits(book).rows(filled(limits(book), **typed).answers())
    assert problem.value.question == question


def test_limits_that_are_taken_back_are_none(book: Book, clock: HandClock) -> None:
    known = register(book)
    rows = limits(book).rows(filled(limits(book), forage="yes", most_meal_kg="2").answers())
    book.change(rows)
    clock.move(minutes=1)
    book.change(list(as_before(known, rows)))
    clock.move(minutes=1)
    assert (held(book)["forage"], held(book)["most_meal_kg"]) == (None, None)


def test_a_rule_is_written_shown_changed_and_ended(book: Book, clock: HandClock) -> None:
    write(book, class_rule(book), stage="in milk", feed_id=NUTS, rule=MILK_RULE)
    clock.move(minutes=1)
    (row,) = rules(register(book))
    assert rule_of(row) == Rule(per_kg_milk=0.25, above_kg=5)
    sheet = class_rule(book, Stage.IN_MILK)
    assert sheet.questions()[0].first == "0.25 per kg milk over 5.00 kg"
    assert sheet.told(filled(sheet, rule="2 kg").answers()) == "in milk, dairy nuts a day: 2.00 kg"
    assert sheet.told(filled(sheet, rule="").answers()) == "in milk, dairy nuts a day: no rule"
    write(book, sheet, rule="")
    clock.move(minutes=1)
    assert rules(register(book)) == []


@pytest.mark.parametrize(
    ("typed", "words"),
    [("some", "is no amount|is no weight"), ("0", "That gives nothing"), ("900 kg", "more than 500 kg"),
     ("9 per kg milk", "more feed than milk"), ("1 kg + 2 kg", "tells one thing twice"),
     ("150 % of weight", "is no rule")],
)  # fmt: skip
def test_a_rule_that_cannot_be_is_said(book: Book, typed: str, words: str) -> None:
    sheet = class_rule(book, Stage.DRY)
    with pytest.raises(Wrong, match=words) as problem:
        sheet.rows(filled(sheet, rule=typed).answers())
    assert problem.value.question == "rule"


def test_a_rule_that_is_taken_back_gives_nothing(book: Book, clock: HandClock) -> None:
    known = register(book)
    rows = class_rule(book).rows(
        filled(class_rule(book), stage="steer", feed_id=NUTS, rule="1.5 % of weight").answers()
    )
    book.change(rows)
    clock.move(minutes=1)
    assert len(rules(register(book))) == 1
    book.change(list(as_before(known, rows)))
    clock.move(minutes=1)
    assert rules(register(book)) == []


def test_a_limit_says_which_plans_are_over_it_now_and_later(book: Book, clock: HandClock) -> None:
    """Fennel gets 2.7 kg of nuts in a meal, Hazel 2.0, and 2.3 of it from the 14th on."""
    known = register(book)
    same = {"animal_id": animal(book, "Hazel"), "feed_id": id_of(known, "feed_as", NUTS), "slot": "morning"}
    row = known.get("feed_plan", same["animal_id"], None, "morning", same["feed_id"])
    assert row is not None
    later = datetime(2026, 3, 14, tzinfo=UTC)
    book.change([RowDraft("feed_plan", {**kept(row), "due_kg": 2.3, "begins_at": later})])
    clock.move(minutes=1)
    said = limits(book).says(filled(limits(book), most_meal_kg="2.2").answers(), hand(book, morning(book)))
    assert [each for each in said if "Fennel" in each][:1] == ["over it: Fennel, morning, 2.70 kg"]
    assert [each for each in said if "Hazel" in each] == ["over it: Hazel, morning, 2.30 kg from 14 Mar 2026"]
    assert limits(book).says(filled(limits(book), most_meal_kg="3").answers(), hand(book, morning(book))) == []
    by_day = limits(book).says(filled(limits(book), most_day_kg="3.4").answers(), hand(book, morning(book)))
    assert "over it: Hazel, a day, 3.65 kg from 14 Mar 2026" in by_day
