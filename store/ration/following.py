"""A change under way, followed by the round: every meal of it held, stepped back or ended, as rows of the feed plan."""

from collections.abc import Callable, Iterator, Sequence
from datetime import date, datetime
from enum import StrEnum
from typing import Any
from uuid import UUID

from msgspec import Struct

from store.book.drafts import RowDraft, Subject
from store.book.facts.feed import PlanRow, Told
from store.book.register import Register
from store.book.turn import Turn, local
from store.book.words import SLOTS
from store.herd.dating import at, kept
from store.round.change import ONE_CHANGE, change_of, ended, held, stepped_back, stepping, with_rows


class Act(StrEnum):
    """What can be done with a change under way."""

    HOLD = "held for a day"
    BACK = "stepped back"
    END = "ended here"


class Meal(Struct, frozen=True):
    """One feed of one meal that is being changed. rows: of one head, oldest first; of two that begin together one."""

    slot: str
    feed_id: UUID
    name: str
    told: Told | None
    rows: tuple[PlanRow, ...]


def under_way(register: Register, subject: Subject, now: datetime) -> tuple[Meal, ...]:
    """The meals whose amount is being changed; those that a change under way reaches within its days too."""
    meals = sorted(_meals(register, subject), key=lambda meal: (SLOTS.index(meal.slot), meal.name))
    zone = register.farm.zone
    if not any(change_of(meal.rows, now, zone) for meal in meals):
        return ()
    return tuple(meal for meal in meals if change_of(meal.rows, now, zone) or _begins_soon(meal.rows, now))


def _begins_soon(rows: Sequence[PlanRow], now: datetime) -> bool:
    return any(now < row.begins_at <= now + ONE_CHANGE for row in stepping(rows))


def _meals(register: Register, subject: Subject) -> Iterator[Meal]:
    for (animal_id, pen_id, slot, feed_id), course in register.history["feed_plan"].items():
        if (animal_id, pen_id) == (subject.animal_id, subject.pen_id):
            rows = with_rows((), [PlanRow(row["begins_at"], row["due_kg"]) for row in course])
            yield Meal(slot, feed_id, register.name("feed_as", feed_id), _told(register, course[-1]), rows)


def _told(register: Register, row: Any) -> Told | None:
    measure = register.get("measure_as", row["measure_id"])
    if measure is None:
        return None
    weighed = register.get("weighing", row["measure_id"], row["feed_id"])
    return Told(row["measure_id"], measure["name"], measure["plural"], weighed["holds_kg"] if weighed else None)


def changed_by(act: Act, meal: Meal, first: Turn, now: datetime, zone: str) -> tuple[PlanRow, ...]:
    """The rows to add to a meal. first: the next round that is not fed yet; a slot before it follows a day later."""
    begins = _first_of(meal.slot, first).day_begins(zone)
    acts: dict[Act, Callable[[], tuple[PlanRow, ...]]] = {
        Act.HOLD: lambda: held(meal.rows, begins, zone),
        Act.BACK: lambda: stepped_back(meal.rows, begins, zone),
        Act.END: lambda: ended(meal.rows, max(begins, now)),
    }
    return acts[act]()


def _first_of(slot: str, first: Turn) -> Turn:
    """The first round of a slot from a round on."""
    turn = first
    while turn.slot != slot:
        turn = turn.after()
    return turn


def course_of(
    rows: Sequence[PlanRow], slot: str, first: Turn, now: datetime, zone: str
) -> Iterator[tuple[date, float]]:
    """What a meal gives from the first round on: that day, then each day on which it is otherwise. [kg a head]"""
    begins = max(_first_of(slot, first).day_begins(zone), now)
    moments = [begins, *(row.begins_at for row in rows if row.begins_at > begins)]
    was_kg: float | None = None
    for moment in moments:
        row = next((row for row in reversed(rows) if row.begins_at <= moment), None)
        kg = row.due_kg or 0.0 if row else 0.0
        if kg != was_kg:
            yield local(moment, zone).date(), kg
        was_kg = kg


def drafts(register: Register, subject: Subject, meal: Meal, added: Sequence[PlanRow]) -> Iterator[RowDraft]:
    """The rows as they are written: each keeps the measure and the place of what is planned for then."""
    key = (subject.animal_id, subject.pen_id, meal.slot, meal.feed_id)
    course = register.course("feed_plan", *key)
    for row in added:
        here = at(course, row.begins_at) or course[0]
        yield RowDraft("feed_plan", {**kept(here), "begins_at": row.begins_at, "due_kg": row.due_kg})
