"""What is planned of each feed in rounds past and to come. Not on the way to the first frame."""

from collections.abc import Iterator, Sequence
from datetime import date, datetime
from typing import Any
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import FoundRow, ReadingDesk
from store.book.drafts import Subject
from store.book.needs import Need, NeedRow, Needs
from store.book.reading import facts, feed_sql, sql, stock_sql
from store.book.reading.facts import maybe_uid, read_facts, uid
from store.book.reading.reading import FOR_EVER
from store.book.reading.stock import feeds_at, since_day
from store.book.turn import Turn, turn_at
from store.book.words import EVENING, MORNING, Kind, State

SUBJECTS = (
    ("animal_id", feed_sql.ANIMAL_PLANS, stock_sql.ANIMAL_PLANS_TO_COME),
    ("pen_id", feed_sql.PEN_PLANS, stock_sql.PEN_PLANS_TO_COME),
)


def read_needs(desk: ReadingDesk, now: datetime, since: datetime | None = None) -> Needs:
    """The feed plans in force and to come, for the animals that are kept and as they stand now. Raises DamagedBook.

    since: from when on plans and entries are looked at; now, where it is not said.
    """
    farm = read_facts(desk, now)
    turn = turn_at(now, farm.zone, farm.evening_from_h)
    first = since_day(since or now, farm.zone)
    written = desk.rows(stock_sql.RECORDED, {"since_day": first.isoformat()})
    settled = _steps(written, farm.id, State.DONE, State.SKIPPED)
    moved_on = _steps(written, farm.id, State.MOVED_ON)
    return Needs(farm.zone, now, turn, tuple(_needs(desk, now, since or now)), settled, moved_on)


def _needs(desk: ReadingDesk, now: datetime, since: datetime) -> Iterator[Need]:
    feeds, heads = feeds_at(desk, now), _heads(desk, now)
    for subject, in_force, to_come in SUBJECTS:
        for slot in (MORNING, EVENING):
            values = {"at": micros(since), "slot": slot, "known": FOR_EVER}
            plans = _plan_rows(desk.rows(in_force, values), desk.rows(to_come, values))
            for (id_, feed_id), rows in plans.items():
                if id_ in heads and feed_id in feeds and feeds[feed_id].in_use:
                    yield Need(Subject(**{subject: id_}), feed_id, slot, heads[id_], rows)


def _heads(desk: ReadingDesk, now: datetime) -> dict[UUID, int]:
    """A kept animal is one, a pen in use as many as stand in it."""
    values: dict[str, Any] = {"at": micros(now)}
    animals = facts.animals(desk.rows(sql.ANIMALS, values))
    pens = facts.pens(desk.rows(sql.PENS, values))
    return {animal.id: 1 for animal in animals} | {
        pen.id: sum(animal.pen_id == pen.id for animal in animals) for pen in pens
    }


def _plan_rows(now: Sequence[FoundRow], to_come: Sequence[FoundRow]) -> dict[tuple[UUID, UUID], tuple[NeedRow, ...]]:
    """Of each subject and feed the plan's rows, oldest first; of two that begin together the one written last."""
    found: dict[tuple[UUID, UUID], dict[int, NeedRow]] = {}
    for id_, feed, due_kg, measure, begins, _ in now:
        found.setdefault((uid(id_), uid(feed)), {})[begins] = NeedRow(moment(begins), due_kg, maybe_uid(measure))
    for id_, feed, due_kg, measure, begins in to_come:
        found.setdefault((uid(id_), uid(feed)), {})[begins] = NeedRow(moment(begins), due_kg, maybe_uid(measure))
    return {key: tuple(rows.values()) for key, rows in found.items()}


def _steps(written: Sequence[FoundRow], farm_id: UUID, *states: State) -> frozenset[tuple[Turn, UUID]]:
    """The planned steps of some rounds that are in one of some states; what nobody planned is none of them."""
    steps = (
        (Turn(date.fromisoformat(day), slot), uid(animal if animal is not None else pen), Kind(kind), uid(step_id))
        for step_id, kind, day, slot, animal, pen, state in written
        if state in states
    )
    return frozenset((turn, id_) for turn, id_, kind, step in steps if step == turn.step_id(farm_id, kind, id_))
