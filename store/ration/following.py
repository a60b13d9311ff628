"""A change under way, followed by the round: every meal of it held, stepped back or ended, as rows of the feed plan."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime, timedelta
from enum import StrEnum
from typing import Any
from uuid import UUID

from msgspec import Struct

from store.book.clock import MICROSECOND
from store.book.drafts import RowDraft, Subject
from store.book.facts.feed import PlanRow, Told
from store.book.register import Register
from store.book.turn import Turn, local
from store.book.words import SLOTS
from store.herd.dating import at, kept
from store.round.change import (
    ONE_CHANGE,
    change_of,
    days_back,
    days_on,
    due_kg_at,
    ended,
    held,
    stepping,
    with_rows,
)  # fmt: skip


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
    """The meals that a change under way changes: those that are at their end already or begin later too."""
    meals = sorted(meals_of(register, subject), key=lambda meal: (SLOTS.index(meal.slot), meal.name))
    if not any(change_of(meal.rows, now, register.farm.zone) for meal in meals):
        return ()
    moments = _of_one_change((at for meal in meals for at in _moments(meal)), now)
    return tuple(meal for meal in meals if not moments.isdisjoint(_moments(meal)))


def _moments(meal: Meal) -> Iterator[datetime]:
    """When it steps; what stood before is no step."""
    yield from (row.begins_at for row in stepping(meal.rows)[1:])


def _of_one_change(moments: Iterable[datetime], now: datetime) -> set[datetime]:
    """Those of the change that is under way, of all its meals."""
    found: list[datetime] = []
    for begins_at in sorted(moments):
        if found and begins_at - found[-1] > ONE_CHANGE:
            if begins_at > now:
                break
            found.clear()
        found.append(begins_at)
    return set(found)


def meals_of(register: Register, subject: Subject) -> Iterator[Meal]:
    """Every meal of an own plan."""
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


class Here(Struct, frozen=True):
    """Where somebody stands: which round, whether its meal is fed, and the farm's zone."""

    turn: Turn
    is_fed: bool
    zone: str

    @property
    def first(self) -> Turn:
        """The next round that is not fed yet."""
        return self.turn.after() if self.is_fed else self.turn

    def begins(self, slot: str) -> datetime:
        """When a slot is fed next; one before that round follows a day later."""
        return _first_of(slot, self.first).day_begins(self.zone)

    @property
    def day_ends(self) -> datetime:
        """The last moment of the day of this round."""
        return Turn(self.turn.day + timedelta(days=1), self.turn.slot).day_begins(self.zone) - MICROSECOND


def changed_by(act: Act, meals: Sequence[Meal], here: Here) -> tuple[tuple[PlanRow, ...], ...]:
    """By meal the rows to add. All of them go the same days back, so that they stay at one step of their way.

    Where a feed is up in a meal of this day that is fed already, a later one of this day is not above its plan: else
    the day might have more than either.
    """
    if act is Act.END:
        return tuple(ended(meal.rows, here.day_ends) for meal in meals)
    fed = [days_back(meal.rows, here.begins(meal.slot), here.zone) for meal in meals]
    days = min((each for each in fed if each), default=1) if act is Act.BACK else 1
    up = {meal.feed_id for meal in meals if _is_up(meal, here, days)}
    return tuple(
        held(meal.rows, here.begins(meal.slot), here.zone, days, no_more=meal.feed_id in up and _is_today(meal, here))
        for meal in meals
    )


def _is_today(meal: Meal, here: Here) -> bool:
    """Whether it is still to come on the day of the next round."""
    return SLOTS.index(meal.slot) >= SLOTS.index(here.first.slot)


def _is_up(meal: Meal, here: Here, days: int) -> bool:
    """Whether it was fed already on the day of the next round, and more of it than so many days before."""
    before = days_on(here.begins(meal.slot), -1, here.zone)
    kg, was_kg = (due_kg_at(meal.rows, at) or 0.0 for at in (before, days_on(before, -days, here.zone)))
    return not _is_today(meal, here) and kg > was_kg


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
