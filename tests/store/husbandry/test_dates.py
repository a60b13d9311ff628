"""How long by breed, ages, and what is refused."""

from datetime import date

import pytest

from store.husbandry.dates.ages import days_between, months
from store.husbandry.dates.gestation import ANY_BREED, BREEDS, before, days_to_calving, due_on, gestation_of
from store.husbandry.why import given


@pytest.mark.parametrize(
    ("breed", "cow", "heifer"),
    [("Jersey", 280, 278), ("pedigree jersey", 280, 278), ("Milking Shorthorn", 281, 279), ("Shorthorn", 284, 284),
     ("Jersey x Angus", 283, 283), ("Jersey cross", 283, 283), ("Angus/Hereford", 283, 283), ("", 283, 283),
     ("Dexter", 283, 283), ("LIMOUSIN", 289, 289)],
)  # fmt: skip
def test_a_breed_carries_so_long(breed: str, cow: int, heifer: int) -> None:
    """A cross as any breed, and one that is not listed."""
    found = gestation_of(breed)
    assert (found.days(first_calf=False), found.days(first_calf=True)) == (cow, heifer)


def test_every_breed_is_found_by_its_own_name() -> None:
    assert all(gestation_of(each.breed) == each and each.source.words for each in BREEDS)
    assert all(abs(each.cow_days - ANY_BREED.cow_days) < 7 and each.heifer_days <= each.cow_days for each in BREEDS)


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="days is -1; it must be 0 or more"):
        due_on(date(2026, 1, 1), -1)
    with pytest.raises(ValueError, match="days is -1"):
        before(date(2026, 1, 1), -1)
    with pytest.raises(ValueError, match="last is 2025-12-31; it must not be before 2026-01-01"):
        days_between(date(2026, 1, 1), date(2025, 12, 31))
    with pytest.raises(ValueError, match="days is -3"):
        months(-3)


def test_days_to_calving_say_what_they_were_made_of() -> None:
    carried = given(280, "a Jersey cow carries", "days", "table", BREEDS[1].source)
    found = days_to_calving.of(gestation_days=carried, since_service_days=given(270, "served", "days", "3 Mar"))
    assert found.amount == 10
    assert BREEDS[1].source in set(found.sources())
