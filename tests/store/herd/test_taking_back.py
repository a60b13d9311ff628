"""Whatever a sheet writes, U makes it as it was: each step of the rounds to come is as before."""

from collections.abc import Callable
from datetime import timedelta
from uuid import UUID

import pytest

from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.register import SAME, Register
from store.book.turn import Turn
from store.book.words import FEEDING
from store.herd.animal import OneAnimal
from store.herd.birth import BirthSheet
from store.herd.calf import CalfSheet, WeaningSheet
from store.herd.drying_off import DryingOffSheet
from store.herd.leaving import LeavingSheet
from store.herd.milking import MilkingSheet
from store.herd.sheet import YardSheet
from store.herd.substitute import SubstituteSheet
from store.herd.taking_back import ENDS, as_before, still_in_force
from store.herd.task import TaskSheet
from store.herd.treatment import TreatmentSheet
from store.round.plan import plan
from store.round.steps import Step
from tests.farm import MORNING, HandClock, morning
from tests.store.book.seeing import TODAY
from tests.store.herd.filled import animal, filled, id_of, register

NO_END = {"setting", "measure_as", "volume", "weighing", "pail_as", "composition", "soak_rule"}
"""What has no end, and is measured or said again."""


def of(kind: Callable[[Register, UUID], YardSheet], table: str, name: str) -> Callable[[Register], YardSheet]:
    """The sheet of something by its name."""
    return lambda found: kind(found, id_of(found, table, name))


def cow(kind: type[OneAnimal], name: str) -> Callable[[Register], YardSheet]:
    """The sheet of an animal."""
    return of(kind, "animal_as", name)


def rounds(book: Book) -> list[tuple[Step, ...]]:
    """The plans of three days and of the tenth day."""
    found = []
    for days in (0, 1, 2, 10):
        for at, slot in enumerate(FEEDING):
            now = max(book.clock.now(), MORNING + timedelta(days=days, hours=11 * at))
            found.append(tuple(plan(read_snapshot(book.desk, Turn(TODAY + timedelta(days=days), slot), now))))
    return found


CHANGES = [
    (cow(DryingOffSheet, "Fennel"), {"last_on": "in 5 days"}),
    (cow(MilkingSheet, "Fennel"), {"evening": "no", "every": "every other", "calf_id": "no calf"}),
    (cow(CalfSheet, "Rook"), {"second_id": "Hazel"}),
    (cow(WeaningSheet, "Rook"), {"why": "weaned", "stage": "heifer", "flap_days": "7"}),
    (cow(LeavingSheet, "Fennel"), {"how": "died"}),
    (cow(TreatmentSheet, "Hazel"), {"product": "tube", "doses": "3", "every_h": "12", "first_at": "6:00"}),
    (cow(BirthSheet, "Tansy"), {"when": "3:10", "second": "alive"}),
    (of(SubstituteSheet, "feed_as", "lucerne pellets"), {"by_id": "dairy nuts"}),
]


@pytest.mark.parametrize(("made", "typed"), CHANGES)
@pytest.mark.parametrize("from_at", ["now", "yesterday", "tomorrow"])
def test_what_is_taken_back_is_as_it_was(
    book: Book, clock: HandClock, made: Callable[[Register], YardSheet], typed: dict[str, str], from_at: str
) -> None:
    before, substitutes = rounds(book), morning(book).substitutes
    sheet = made(register(book))
    filling = filled(sheet, **typed)
    filling.texts |= {"from_at": from_at} if "from_at" in filling.texts else {}
    rows = sheet.rows(filling.answers())
    back = list(as_before(register(book), rows))
    book.change(rows)
    clock.move(minutes=4)
    assert rounds(book) != before or morning(book).substitutes != substitutes or from_at == "tomorrow"
    book.change(list(still_in_force(register(book), back)))
    clock.move(minutes=4)
    assert rounds(book) == before
    assert morning(book).substitutes == substitutes


def test_a_rule_of_a_calf_that_is_taken_back_leaves_no_night_out(book: Book, clock: HandClock) -> None:
    """As without a rule: it is shut away every evening."""
    sheet = CalfSheet(register(book), animal(book, "Rook"))
    rows = sheet.rows(filled(sheet, apart_h="11", from_day="90", nights="no night").answers())
    back = list(as_before(register(book), rows))
    book.change(rows)
    clock.move(hours=11)
    assert "apart" not in {step.kind for step in plan(morning(book)) if step.name == "Rook"}
    book.change(list(still_in_force(register(book), back)))
    assert "apart" in {step.kind for step in plan(morning(book)) if step.name == "Rook"}


def test_a_job_that_came_every_third_day_is_due_every_day_again(book: Book, clock: HandClock) -> None:
    before = [[step.step_id for step in each] for each in rounds(book)]
    sheet = of(TaskSheet, "task_as", "Water trough runs")(register(book))
    rows = sheet.rows(filled(sheet, every_days="3").answers())
    back = list(as_before(register(book), rows))
    book.change(rows)
    assert [[step.step_id for step in each] for each in rounds(book)] != before
    clock.move(minutes=4)
    book.change(list(still_in_force(register(book), back)))
    assert [[step.step_id for step in each] for each in rounds(book)] == before


def test_every_thing_has_an_end_or_is_known_to_have_none() -> None:
    assert set(SAME) - set(ENDS) == NO_END
