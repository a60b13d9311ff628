"""The rations of the demo farm are such as somebody of the trade would find on a farm."""

from collections.abc import Iterator

import pytest

from store.book.drafts import Subject
from store.book.opening import Book
from store.book.register import read_register
from store.book.words import Species
from store.ration.balance import balance
from store.ration.case import read_case
from store.ration.parts import Case, Part
from tests.demo import demo_book
from tests.store.ration.small_ration import line, said

UNWEIGHED, ON_MILK = {"Flint"}, {"Rook", "Wren"}


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Book]:
    """The demo farm at its pretend moment."""
    with demo_book(tmp_path_factory.mktemp("demo")) as book:
        yield book


@pytest.fixture(scope="module")
def cases(demo: Book) -> dict[str, Case]:
    """Of every animal, by name."""
    now = demo.clock.now()
    register = read_register(demo.desk, now)
    kept = [row for row in register.all("animal_as") if row["kept"]]
    return {row["name"]: read_case(demo.desk, register, now, Subject(animal_id=row["animal_id"])) for row in kept}


def test_every_cattle_of_the_demo_that_was_weighed_gets_about_what_it_needs(cases: dict[str, Case]) -> None:
    told = {name: case for name, case in cases.items() if case.needs and name not in ON_MILK}
    cattle = {name for name, case in cases.items() if case.heads[0].animal.species is Species.CATTLE}
    assert set(told) == cattle - UNWEIGHED - ON_MILK
    for name, case in told.items():
        found = balance(case, case.now)
        energy, eaten = line(found.lines, Part.ENERGY), line(found.lines, Part.DRY_MATTER)
        assert energy.percent is not None, name
        assert 80 < energy.percent < 120, name
        assert eaten.percent is not None, name
        assert 65 < eaten.percent < 115, name
        assert found.broken == (), name
        assert found.cost is not None, name


def test_a_cow_in_milk_needs_19_mcal_and_eats_13_kg(cases: dict[str, Case]) -> None:
    case = cases["Fennel"]
    needs = {need.part: need for need in case.needs}
    energy, eats = needs[Part.ENERGY].least, needs[Part.DRY_MATTER].most
    assert energy is not None
    assert eats is not None
    assert (round(energy.amount), round(eats.amount)) == (19, 13)


def test_what_is_missing_in_the_demo_is_one_weight(cases: dict[str, Case]) -> None:
    missing = [each for name, case in cases.items() for each in said(case.missing) if name not in ON_MILK]
    assert [each for each in missing if "no needs are kept for a sheep" not in each] == [
        "Flint has no weight: F, animals, Flint, weight or heart girth."
    ]
