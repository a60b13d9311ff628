"""Task steps: the farm's own standing jobs, and what the round before moved on to this one."""

from collections.abc import Iterator
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts import Job
from store.book.snapshot import Written
from store.book.words import Kind
from store.round.planning import BENCH, GONE, Planning
from store.round.steps import TaskStep


def tasks(planning: Planning, pen_id: UUID | None, place: str, *, closing: bool) -> Iterator[TaskStep]:
    """The jobs of one place in this slot. pen_id None: the bench."""
    for job in planning.snapshot.jobs:
        if (job.pen_id, job.closing, job.slot) == (pen_id, closing, planning.snapshot.turn.slot):
            head = planning.head(Kind.TASK, Subject(task_id=job.id), job.name, place)
            yield TaskStep(*head, adult_only=job.adult_only, two_people=job.two_people)


def moved_here(planning: Planning, pen_id: UUID | None, place: str = BENCH) -> Iterator[TaskStep]:
    """What the round before moved on to this one, in its own pen; pen_id None: what has no pen, at the bench."""
    for entry in planning.snapshot.moved_here:
        if planning.snapshot.pen_id_of(entry.subject) == pen_id:
            yield _moved(planning, entry, place)


def _moved(planning: Planning, entry: Written, place: str) -> TaskStep:
    """A step named after what it was; it keeps that through every further move, and who must not do it alone."""
    snapshot = planning.snapshot
    was = Kind(entry.reason) if entry.reason in list(Kind) else entry.kind
    what = "" if was is Kind.TASK else f" ({was})"
    name = f"{snapshot.name_of(entry.subject) or GONE}{what}, moved on from the {snapshot.turn.before().slot}"
    job: Job | None = next((job for job in snapshot.jobs if job.id == entry.subject.task_id), None)
    return TaskStep(
        *planning.head(Kind.TASK, entry.subject, name, place, f"moved {entry.step_id.hex}"),
        adult_only=bool(job and job.adult_only),
        two_people=bool(job and job.two_people),
        was=was,
    )
