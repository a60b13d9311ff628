"""Which plans, those of now and those to come, give a head more of a feed than a limit of it lets."""

from collections.abc import Iterator, Mapping
from datetime import datetime
from typing import Any, TypeAlias
from uuid import UUID

from store.book.register import Register, Values
from store.book.turn import local
from store.herd.dating import at
from store.herd.days import day_words
from store.round.saying import exact

ROUNDING_KG = 0.0005
Who: TypeAlias = tuple[UUID | None, UUID | None]
"""An animal or a pen."""
Courses: TypeAlias = Mapping[str, tuple[Values, ...]]
"""By slot every row of a plan."""


def plans_over(register: Register, feed_id: UUID, limits: Mapping[str, Any], begins: datetime) -> Iterator[str]:
    """A line for each: `over it: Fennel, morning, 2.70 kg from 12 Mar 2026`. begins: from when on the limits count."""
    for who, courses in _plans(register, feed_id).items():
        name = _name(register, who)
        if name:
            yield from (f"over it: {name}, {each}" for each in _of_one(register, courses, limits, begins))


def _plans(register: Register, feed_id: UUID) -> dict[Who, dict[str, tuple[Values, ...]]]:
    found: dict[Who, dict[str, tuple[Values, ...]]] = {}
    for (animal_id, pen_id, slot, of_id), course in register.history["feed_plan"].items():
        if of_id == feed_id:
            found.setdefault((animal_id, pen_id), {})[slot] = course
    return found


def _name(register: Register, who: Who) -> str:
    """Empty: it is not kept any more."""
    row = register.get("animal_as", who[0]) or register.get("pen_as", who[1])
    return str(row["name"]) if row and row.get("kept", row.get("in_use")) else ""


def _of_one(register: Register, courses: Courses, limits: Mapping[str, Any], begins: datetime) -> Iterator[str]:
    """The first time that each limit is broken."""
    moments = sorted({begins, *(row["begins_at"] for course in courses.values() for row in course
                                if row["begins_at"] > begins)})  # fmt: skip
    days = [(moment, {slot: _due_kg(course, moment) for slot, course in courses.items()}) for moment in moments]
    told = [(slot, [(moment, due[slot]) for moment, due in days], limits["most_meal_kg"]) for slot in courses]
    for words, kgs, most in (*told, ("a day", [(moment, sum(due.values())) for moment, due in days],
                                     limits["most_day_kg"])):  # fmt: skip
        over = next(((moment, kg) for moment, kg in kgs if most is not None and kg > most + ROUNDING_KG), None)
        if over:
            yield f"{words}, {exact(over[1], register.farm.units)}{_from(register, over[0], begins)}"


def _due_kg(course: tuple[Values, ...], moment: datetime) -> float:
    row = at(course, moment)
    return float(row["due_kg"] or 0.0) if row else 0.0


def _from(register: Register, moment: datetime, begins: datetime) -> str:
    return "" if moment == begins else f" from {day_words(local(moment, register.farm.zone).date())}"
