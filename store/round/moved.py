"""What the last round moved on to this one, each as the kind of step it was."""

from collections.abc import Iterator
from uuid import UUID

from msgspec.structs import replace

from store.book.facts.feed import Portion
from store.book.facts.jobs import Job
from store.book.figures import FedFigure, LookedFigure
from store.book.snapshot import Written
from store.book.words import Kind, State
from store.round.feed import due_feed
from store.round.planning import BENCH, GONE, Head, Planning
from store.round.steps import FeedStep, LookStep, Step, TaskStep


def may_move(step: Step) -> bool:
    """Whether the next round can do it in this one's stead.

    A count, a pail, a calf, a soak or a dose has a step of its own there; and a meal of grain is not made up for later.
    """
    return isinstance(step, LookStep | TaskStep) or (isinstance(step, FeedStep) and step.kind is Kind.HAY)


def moved_here(planning: Planning, pen_id: UUID | None, place: str = BENCH) -> Iterator[Step]:
    """What was moved on, in its own pen; pen_id None: what has no pen, at the bench."""
    for last in planning.snapshot.last.with_between:
        for entry in last.left(State.MOVED_ON):
            if planning.snapshot.pen_id_of(entry.subject) == pen_id:
                yield replace(_step(planning, entry, place), moved_from=last.turn)


def _step(planning: Planning, entry: Written, place: str) -> Step:
    name = planning.snapshot.name_of(entry.subject) or GONE
    head = planning.head(entry.kind, entry.subject, name, place, f"moved {entry.step_id.hex}")
    made = _fed(planning, entry, head) if entry.of(FedFigure) else _looked(planning, entry, head)
    return made or _task(planning, entry, head)


def _fed(planning: Planning, entry: Written, head: Head) -> FeedStep | None:
    """The same weights again, for who stands there now."""
    snapshot, subject = planning.snapshot, entry.subject
    animals = tuple(animal for animal in snapshot.animals if animal.id == subject.animal_id)
    heads = animals or (snapshot.heads(subject.pen_id) if subject.pen_id else ())
    portions = (
        Portion(snapshot.feeds[each.feed_id], each.due_kg, snapshot.told_as(each.measure_id, each.feed_id))
        for each in entry.of(FedFigure)
        if each.due_kg is not None
    )
    due = tuple(due_feed(portion, heads=1) for portion in portions)
    return FeedStep(*head, animal=animals[0] if animals else None, heads=heads, due=due, before=None) if heads else None


def _looked(planning: Planning, entry: Written, head: Head) -> LookStep | None:
    found = entry.the(LookedFigure)
    look = next((each for each in planning.snapshot.looks if found and each.id == found.look_id), None)
    animal = next((each for each in planning.snapshot.animals if each.id == entry.subject.animal_id), None)
    return LookStep(*head, animal=animal, look=look) if look and animal else None


def _task(planning: Planning, entry: Written, head: Head) -> TaskStep:
    """A job, and who must not do it alone; also what is left of a step whose animal or look is gone."""
    jobs = planning.snapshot.jobs
    job: Job | None = next((job for job in jobs if job.id == entry.subject.task_id), None)
    adult_only, two_people = bool(job and job.adult_only), bool(job and job.two_people)
    return TaskStep(*head, adult_only=adult_only, two_people=two_people, job=job)
