"""Task steps: the farm's own standing jobs, and what the round before moved on to this one."""

from collections.abc import Iterator
from uuid import UUID

from store.book.drafts import Subject
from store.book.words import Kind
from store.round.planning import BENCH, GONE, Planning
from store.round.steps import TaskStep


def tasks(planning: Planning, pen_id: UUID | None, place: str, *, closing: bool) -> Iterator[TaskStep]:
    """The jobs of one place. pen_id None: the bench."""
    for job in planning.snapshot.jobs:
        if job.pen_id == pen_id and job.closing is closing:
            head = planning.head(Kind.TASK, Subject(task_id=job.id), job.name, place)
            yield TaskStep(*head, adult_only=job.adult_only, two_people=job.two_people)


def moved_here(planning: Planning, place: str, walked: frozenset[str]) -> Iterator[TaskStep]:
    """What the round before moved on to this one, named after what it was, in its own pen; else at the bench."""
    snapshot = planning.snapshot
    slot = snapshot.turn.before().slot
    for entry in snapshot.moved_here:
        where = snapshot.place_of(entry.subject)
        if (where if where in walked else BENCH) == place:
            what = "" if entry.kind is Kind.TASK else f" ({entry.kind})"
            name = f"{snapshot.name_of(entry.subject) or GONE}{what}, moved on from the {slot}"
            yield TaskStep(*planning.head(Kind.TASK, entry.subject, name, place, f"moved {entry.step_id.hex}"))
