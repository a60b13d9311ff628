"""A change as dated rows of the feed plan; what was planned of these meals for later is taken back."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from store.book.clock import MICROSECOND
from store.book.drafts import RowDraft
from store.book.register import SAME, Register, Values
from store.book.turn import Turn
from store.herd.dating import Step, rows_of
from store.herd.plan import position_of
from store.ration.change import DayPlan
from store.ration.parts import Amounts, Case
from store.ration.step_limits import Meal, feed_of


def rows(register: Register, case: Case, days: Sequence[DayPlan]) -> tuple[RowDraft, ...]:
    """A row for each step of each meal that changes, from the midnight of its day on, or from now.

    A meal that begins from nothing has a row that says so, so that the round counts its days.
    """
    meals = dict.fromkeys(meal for day in days for meal in day.amounts)
    return tuple(row for meal in meals for row in _of_meal(register, case, days, meal))


def planned(register: Register, case: Case, meals: Sequence[Meal]) -> bool:
    """Whether something is planned of some meals for later already, which a change takes back."""
    courses = (_course(register, case, meal) for meal in meals)
    return any(row["begins_at"] > register.at for course in courses for row in course)


def as_planned(register: Register, case: Case, meals: Sequence[Meal]) -> tuple[Amounts, tuple[Sequence[Values], ...]]:
    """What is given of some meals as the book stands, and every row of them: the same as long as nobody changed any."""
    found = {meal: register.get("feed_plan", *_key(case, meal)) for meal in meals}
    amounts = {meal: (row and row["due_kg"]) or 0.0 for meal, row in found.items()}
    return amounts, tuple(_course(register, case, meal) for meal in meals)


def _key(case: Case, meal: Meal) -> tuple[object, ...]:
    same = _same(case, meal)
    return tuple(same[name] for name in SAME["feed_plan"])


def _same(case: Case, meal: Meal) -> dict[str, object]:
    return {
        "animal_id": case.subject.animal_id, "pen_id": case.subject.pen_id, "slot": meal[0], "feed_id": meal[1],
    }  # fmt: skip


def _course(register: Register, case: Case, meal: Meal) -> tuple[Values, ...]:
    return register.course("feed_plan", *_key(case, meal))


def _of_meal(register: Register, case: Case, days: Sequence[DayPlan], meal: Meal) -> Iterator[RowDraft]:
    course, told = _course(register, case, meal), feed_of(case, meal[1]).told
    position = position_of(register, case.subject, meal[1])
    columns = {"measure_id": told.id if told else None, "position": position}
    found: list[Step] = [(at, columns | {"due_kg": kg or None}) for at, kg in _steps(register, case.now, days, meal)]
    if not found:
        return
    first = next((row["begins_at"] for row in course if register.at < row["begins_at"] < found[0][0]), None)
    if first:  # what is planned before it begins is taken back too, or its first step would be another
        found.insert(0, (first, columns | {"due_kg": case.now.get(meal) or None}))
    if not any(row["begins_at"] <= register.at for row in course):
        found.insert(0, (register.at - MICROSECOND, columns | {"due_kg": None}))
    for row in rows_of(course, register.at, found, whole=True):
        yield RowDraft("feed_plan", {**row, **_same(case, meal)})


def _steps(register: Register, now: Amounts, days: Sequence[DayPlan], meal: Meal) -> Iterator[tuple[datetime, float]]:
    """From when on a meal is so much. [kg]"""
    was_kg = now.get(meal, 0.0)
    for day in days:
        kg = day.amounts.get(meal, 0.0)
        if kg != was_kg:
            yield max(Turn(day.on, meal[0]).day_begins(register.farm.zone), register.at), kg
        was_kg = kg
