"""When a job that does not come every day was done: its steps of other rounds are named, and looked up so."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from uuid import UUID

from store.book.desk import FoundRow, ReadingDesk
from store.book.facts.jobs import Job
from store.book.reading import sql
from store.book.reading.facts import uid
from store.book.turn import Turn
from store.book.words import EVERY_MOST_DAYS, Kind, State

Rows = Callable[..., Sequence[FoundRow]]
A_DAY = timedelta(days=1)


def done_on(rows: Rows, farm_id: UUID, job: Job, turn: Turn) -> date | None:
    """The day before a round on which a job was done in its slot, or after it was moved on.

    Of one that comes every so many days the last, at most a year back; of one that comes once the first since then.
    """
    days = _since(job, turn.day) if job.due.once else _back(turn.day)
    for some in days:
        steps = {(of := Turn(day, job.slot)).step_id(farm_id, Kind.TASK, job.id): of for day in some}
        if found := _done(rows, farm_id, job, steps, turn):
            return found
    return None


def _back(day: date) -> Iterator[list[date]]:
    """The days of a year before a day, newest first, some at once."""
    for ago in range(1, EVERY_MOST_DAYS, sql.STEPS_AT_ONCE):
        yield [day - A_DAY * (ago + more) for more in range(sql.STEPS_AT_ONCE)]


def _since(job: Job, until: date) -> Iterator[list[date]]:
    """The days since a job stands, oldest first: one that comes once is mostly done soon."""
    day = job.due.since or until
    while day < until:
        yield [on for more in range(sql.STEPS_AT_ONCE) if (on := day + A_DAY * more) < until]
        day += A_DAY * sql.STEPS_AT_ONCE


def _done(rows: Rows, farm_id: UUID, job: Job, steps: Mapping[UUID, Turn], before: Turn) -> date | None:
    """The newest day on which one of some steps was done, itself or where it was moved on to."""
    states = _states(rows, list(steps))
    days = [steps[step_id].day for step_id, state in states.items() if state is State.DONE]
    for step_id in (step_id for step_id, state in states.items() if state is State.MOVED_ON):
        moved = {
            turn.step_id(farm_id, Kind.TASK, job.id, f"moved {step_id.hex}"): turn
            for turn in _between(steps[step_id], before)
        }
        if found := _done(rows, farm_id, job, moved, before):
            days.append(found)
    return max(days, default=None)


def _between(turn: Turn, before: Turn) -> Iterator[Turn]:
    """The feeding rounds of a week in which what a round moved on can stand: not the one that asks, nor later."""
    for _ in range(14):
        turn = turn.after()
        if not turn.is_before(before):
            return
        yield turn


def _states(rows: Rows, step_ids: Sequence[UUID]) -> dict[UUID, State]:
    """What became of some steps, as far as anything was written."""
    found: dict[UUID, State] = {}
    for at in range(0, len(step_ids), sql.STEPS_AT_ONCE):
        some = step_ids[at : at + sql.STEPS_AT_ONCE]
        named = {f"step_{place}": some[min(place, len(some) - 1)].bytes for place in range(sql.STEPS_AT_ONCE)}
        found |= {uid(step_id): State(state) for step_id, state in rows(sql.STEPS, **named)}
    return found


def newest_of(desk: ReadingDesk, step_id: UUID) -> UUID | None:
    """The entry that counts for a step; None where nothing was ever written for it."""
    found = desk.rows(sql.NEWEST_OF_STEP, {"step": step_id.bytes})
    return uid(found[0][0]) if found else None
