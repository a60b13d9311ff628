"""Task steps: the farm's own standing jobs."""

from collections.abc import Iterator
from uuid import UUID

from store.book.drafts import Subject
from store.book.words import Kind
from store.round.planning import Planning
from store.round.steps import TaskStep


def tasks(planning: Planning, pen_id: UUID | None, place: str, *, closing: bool) -> Iterator[TaskStep]:
    """The jobs of one place in this slot. pen_id None: the bench."""
    for job in planning.snapshot.jobs:
        if (job.pen_id, job.closing, job.slot) == (pen_id, closing, planning.snapshot.turn.slot):
            head = planning.head(Kind.TASK, Subject(task_id=job.id), job.name, place)
            yield TaskStep(*head, adult_only=job.adult_only, two_people=job.two_people)
