"""How condition and weight have gone, when a score is due, and what a rule for a class proposes."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace

from store.book.opening import Book
from store.book.register import Register, read_register
from store.ration.by_rule import proposed_by_rule
from store.ration.trend import Went, condition_went, read_trend, score_due_on
from tests.store.feedroom.made import named
from tests.store.ration.small_ration import case_of, pen_case, ration_book, value
from tests.tui.whys import comes_out

CALVED, AT_CALVING, LATER = date(2026, 1, 9), date(2026, 1, 12), date(2026, 3, 4)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Book]:
    """The small farm, one animal of it weighed twice."""
    goal = ("feeding_goal", {"id": "g", "animal_id": "sloe", "begins_at": "2026-01-01", "score_every_days": "30"})
    before = ("body", {"id": "before", "animal_id": "sloe", "begins_at": "2026-01-11", "weight_kg": "580"})
    found = ration_book(tmp_path, before, goal)
    yield found
    found.close()


def register(book: Book) -> Register:
    """As it stands now."""
    return read_register(book.desk, book.clock.now())


def test_condition_is_held_against_the_score_at_calving() -> None:
    found = condition_went(
        [(date(2025, 9, 1), 3.0), (AT_CALVING, 3.25), (date(2026, 2, 9), 2.75), (LATER, 2.5)], CALVED
    )
    assert found == Went(AT_CALVING, 3.25, LATER, 2.5, at_calving=True)
    assert (found.change, found.days) == (-0.75, 51)


def test_without_a_score_at_calving_it_is_held_against_the_one_before() -> None:
    found = condition_went([(date(2025, 9, 1), 3.0), (LATER, 3.5)], CALVED)
    assert found is not None
    assert (found.change, found.at_calving) == (0.5, False)
    assert condition_went([(LATER, 3.5)], CALVED) is None


def test_a_score_is_due_so_many_days_after_the_last_one() -> None:
    assert score_due_on([(LATER, 3.0)], 14, date(2026, 3, 11)) == date(2026, 3, 18)
    assert score_due_on([], 14, date(2026, 3, 11)) == date(2026, 3, 11)
    assert score_due_on([(LATER, 3.0)], None, date(2026, 3, 11)) is None


def test_a_gain_is_told_of_two_weights(book: Book) -> None:
    found = read_trend(book.desk, register(book), named(book, "Sloe"))
    assert found.weight is not None
    assert (found.weight.change, found.weight.days) == (32, 40)
    assert found.gain_kg_day is not None
    assert found.gain_kg_day.amount == pytest.approx(0.8)
    assert found.score_due_on == date(2026, 3, 11)


def test_a_rule_for_her_class_is_proposed_by_her_milk_and_applied_nowhere(book: Book) -> None:
    """0.25 kg for each kilogram of milk over 5 kg: 17 kg of milk are 3 kg of nuts."""
    case = case_of(book, "Fennel")
    giving = replace(case, heads=(replace(case.heads[0], milk_kg=value(17.0)),))
    (found,) = proposed_by_rule(register(book), giving)
    comes_out(found.day_kg)
    assert found.day_kg.amount == pytest.approx(3.0)
    assert found.now_kg == pytest.approx(2.7 + 2.025)
    assert (
        found.says
        == "Your rule 0.25 per kg milk over 5.00 kg: 3.00 kg dairy nuts a day; now 4.72 kg, 1.72 kg more than the rule."
    )


def test_a_rule_needs_her_milk_and_is_of_her_class_alone(book: Book) -> None:
    case = case_of(book, "Fennel")
    dry = replace(case, heads=(replace(case.heads[0], milk_kg=None),))
    assert list(proposed_by_rule(register(book), dry)) == []
    assert list(proposed_by_rule(register(book), case_of(book, "Tansy"))) == []


def test_for_a_pen_a_rule_is_the_mean_of_its_heads(book: Book) -> None:
    one, other, pen = case_of(book, "Fennel"), case_of(book, "Hazel"), pen_case(book, "Stall")
    alone = [next(proposed_by_rule(register(book), case)).day_kg.amount for case in (one, other)]
    assert next(proposed_by_rule(register(book), pen)).day_kg.amount == pytest.approx(sum(alone) / 2)


def test_a_weight_that_was_a_slip_makes_no_gain(tmp_path: Path) -> None:
    """Between 560 and 612 kg somebody typed pounds."""
    before = ("body", {"id": "before", "animal_id": "sloe", "begins_at": "2026-01-11", "weight_kg": "560"})
    slip = ("body", {"id": "slip", "animal_id": "sloe", "begins_at": "2026-02-05", "weight_kg": "1320"})
    book = ration_book(tmp_path, before, slip)
    found = read_trend(book.desk, register(book), named(book, "Sloe")).weight
    book.close()
    assert found is not None
    assert (found.change, found.days) == (52, 40)
