"""What of an animal is not known is said, and never put in its place: another lactation, half of her milk."""

from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from store.book.facts.milk import PastPail
from store.book.turn import Turn
from store.ration.milk import whole_days
from store.ration.parts import Case
from store.round.timed import GOT_OUT, NOT_KNOWN, TimedPail
from tests.farm import HandClock
from tests.store.ration.small_ration import Row, case_of, ration_book, said


def read(folder: Path, name: str, *more: Row, days: float = 0) -> Case:
    """The case of an animal, so many days later."""
    book = ration_book(folder, *more)
    assert isinstance(book.clock, HandClock)
    book.clock.move(days=days)
    case = case_of(book, name)
    book.close()
    return case


def rook_weighs(kg: str) -> Row:
    """Her calf, weighed anew."""
    return "body", {"id": "r2", "animal_id": "rook", "begins_at": "2026-03-05", "weight_kg": kg}


def in_calf(name: str, breed: str, **days: str) -> Row:
    """When an animal was served, or is due."""
    return "breeding", {"id": f"{name}-f", "animal_id": name, "begins_at": "2026-01-31", "breed": breed, **days}


def test_no_pail_of_a_week_is_no_milk_known_although_her_calf_was_weighed(tmp_path: Path) -> None:
    case = read(tmp_path, "Fennel", days=9)
    assert case.heads[0].milk_kg is None
    assert case.needs == ()
    assert "Fennel has no pail of the last seven days: weigh one in a round, at her milk." in said(case.missing)


@pytest.mark.parametrize(
    ("kg", "why"),
    [
        ("", "Rook has no weight, so what it takes is not known: F, animals, Rook, weight."),
        ("250", "Rook weighs 250 kg: what one above 120 kg sucks is not known. If it is weaned: F, animals, Rook."),
    ],
)
def test_milk_is_not_known_where_the_part_of_a_calf_is_not(tmp_path: Path, kg: str, why: str) -> None:
    case = read(tmp_path, "Fennel", rook_weighs(kg))
    assert (case.heads[0].milk_kg, case.needs) == (None, ())
    assert said(case.missing) == [why]


def test_a_calf_too_heavy_for_what_is_printed_of_milk_is_told_no_milk(tmp_path: Path) -> None:
    assert read(tmp_path, "Rook", rook_weighs("250")).heads[0].milk_kg is None


def test_a_milk_test_of_before_she_calved_is_not_hers_of_now(tmp_path: Path) -> None:
    test = {"id": "h", "animal_id": "hazel", "begins_at": "2025-08-18", "fat_percent": "6.5", "protein_percent": "4.5"}
    head = read(tmp_path, "Hazel", ("milk_test", test)).heads[0]
    assert head.milk_fat_percent is not None
    assert head.milk_fat_percent.came == "starting value for an Ayrshire"


@pytest.mark.parametrize("days", [{"due_on": "2026-01-09"}, {"served_on": "2025-04-01", "due_on": "2026-01-07"}])
def test_a_cow_that_has_calved_since_is_not_in_calf(tmp_path: Path, days: dict[str, str]) -> None:
    """Fennel calved on 9 Jan."""
    assert read(tmp_path, "Fennel", in_calf("fennel", "Jersey", **days)).heads[0].days_in_calf is None


def test_longer_in_calf_than_any_cow_is_not_known(tmp_path: Path) -> None:
    case = read(tmp_path, "Sloe", in_calf("sloe", "Angus", served_on="2025-03-01", due_on="2025-12-08"))
    assert case.heads[0].days_in_calf is None
    (why,) = said(case.missing)
    assert why.startswith("Sloe: 375 days in calf, served 1 Mar 2025, is longer than any cow is. F, animals, Sloe,")


def test_a_day_with_a_pail_that_does_not_compare_is_no_day_of_her_milk() -> None:
    """The calf had got out on the 7th: 1.5 kg are not what she gives."""
    found = [
        TimedPail(
            PastPail(
                datetime(2026, 3, day, 6, tzinfo=UTC),
                kg,
                held_back=False,
                turn=Turn(date(2026, 3, day), "morning"),
            ),
            None,
            why,
        )
        for day, kg, why in ((8, 6.0, ""), (7, 1.5, GOT_OUT), (6, 5.5, NOT_KNOWN))
    ]
    assert [each.pail.milk_kg for each in whole_days(found)] == [6.0, 5.5]
    assert whole_days(found[1:2]) == found[1:2]


def test_a_calf_with_two_weights_drinks_by_its_gain_and_both_are_said(tmp_path: Path) -> None:
    """31 kg in 50 days are 0.62 kg a day, and 6.8 kg of milk; 15 % or more of its weight would be more."""
    before = ("body", {"id": "r0", "animal_id": "rook", "begins_at": "2026-01-14", "weight_kg": "27"})
    head = read(tmp_path, "Rook", before, rook_weighs("58")).heads[0]
    assert head.milk_kg is not None
    assert head.milk_kg.amount == pytest.approx(10.9 * 31 / 50)
    assert head.milk_kg.came.startswith("by its gain; by its weight 8.7 kg")
    (tmp_path / "cow").mkdir()
    cow = read(tmp_path / "cow", "Fennel", before, rook_weighs("58")).heads[0]
    assert cow.milk_kg is not None
    assert list(cow.milk_kg.inputs.values())[1].amount == pytest.approx(10.9 * 31 / 50)
