"""Task steps: the farm's own standing jobs, at the bench or in a pen, at the start or the end."""

from collections.abc import Iterator
from uuid import UUID

from store.book.drafts import Subject
from store.book.words import Kind
from store.round.planning import Planning
from store.round.steps import TaskStep


def tasks(planning: Planning, pen_id: UUID | None, place: str, *, closing: bool) -> Iterator[TaskStep]:
    """The jobs of one place. pen_id None: the bench."""
    for job in planning.snapshot.jobs:
        if job.pen_id == pen_id and job.closing is closing:
            subject = Subject(task_id=job.id)
            step_id = planning.step_id(Kind.TASK, subject)
            yield TaskStep(step_id, Kind.TASK, subject, job.name, place, planning.counts.get(step_id))
