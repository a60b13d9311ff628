"""Task steps: the farm's own standing jobs, each in its slot, every day or when it falls due."""

from collections.abc import Iterator
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts.jobs import Job
from store.book.snapshot import Snapshot
from store.book.words import Kind
from store.round.planning import Planning
from store.round.steps import TaskStep


def tasks(planning: Planning, pen_id: UUID | None, place: str, *, closing: bool) -> Iterator[TaskStep]:
    """The jobs of one place in this slot. pen_id None: the bench."""
    for job in planning.snapshot.jobs:
        if (job.pen_id, job.closing) == (pen_id, closing) and is_due(planning.snapshot, job):
            head = planning.head(Kind.TASK, Subject(task_id=job.id), job.name, place)
            yield TaskStep(*head, adult_only=job.adult_only, two_people=job.two_people, job=job)


def is_due(snapshot: Snapshot, job: Job) -> bool:
    """Whether a job is asked for in a round: in its slot, in its season, while such an animal stands there.

    One that comes every so many days is due so many days after it was last done; one that comes once, until it was.
    One that was never done is due at once.
    """
    turn, due = snapshot.turn, job.due
    if job.slot != turn.slot or not due.comes_on(turn.day) or not _is_there(snapshot, job):
        return False
    return job.last_on is None or (not due.once and (turn.day - job.last_on).days >= due.every_days)


def _is_there(snapshot: Snapshot, job: Job) -> bool:
    """Whether an animal of the job's stage stands in its pen, or anywhere for a job of the bench."""
    animals = snapshot.heads(job.pen_id) if job.pen_id else snapshot.animals
    return job.due.stage is None or any(animal.stage is job.due.stage for animal in animals)
