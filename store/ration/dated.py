"""A change as dated rows of the feed plan; what was planned of these meals for later is taken back."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from store.book.clock import MICROSECOND
from store.book.drafts import RowDraft
from store.book.register import SAME, Register
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


def _of_meal(register: Register, case: Case, days: Sequence[DayPlan], meal: Meal) -> Iterator[RowDraft]:
    subject, (slot, feed_id) = case.subject, meal
    same = {"animal_id": subject.animal_id, "pen_id": subject.pen_id, "slot": slot, "feed_id": feed_id}
    course = register.course("feed_plan", *(same[name] for name in SAME["feed_plan"]))
    told = feed_of(case, feed_id).told
    columns = {"measure_id": told.id if told else None, "position": position_of(register, subject, feed_id)}
    found: list[Step] = [(at, columns | {"due_kg": kg or None}) for at, kg in _steps(register, case.now, days, meal)]
    if not found:
        return
    begun = any(row["begins_at"] <= register.at for row in course)
    before: list[Step] = [] if begun else [(register.at - MICROSECOND, columns | {"due_kg": None})]
    for row in rows_of(course, register.at, [*before, *found], whole=True):
        yield RowDraft("feed_plan", {**row, **same})


def _steps(register: Register, now: Amounts, days: Sequence[DayPlan], meal: Meal) -> Iterator[tuple[datetime, float]]:
    """From when on a meal is so much. [kg]"""
    was_kg = now.get(meal, 0.0)
    for day in days:
        kg = day.amounts.get(meal, 0.0)
        if kg != was_kg:
            yield max(Turn(day.on, meal[0]).day_begins(register.farm.zone), register.at), kg
        was_kg = kg
