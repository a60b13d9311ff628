"""The plan: what is due in this round, in walking order, and all that the book already holds for it.

A pure function: the same snapshot gives the same steps, on any laptop, however often it is drawn.
"""

from collections.abc import Iterable, Iterator
from uuid import UUID

from store.book.facts.farm import Animal, Pen
from store.book.snapshot import Snapshot
from store.book.words import Kind, State
from store.round.apart import let_in, shut_away
from store.round.cool import with_ice
from store.round.count import pen_count
from store.round.dose import animal_doses
from store.round.feed import animal_feed, pen_feed
from store.round.look import animal_looks
from store.round.milk import animal_milk
from store.round.milked_last import last_of_all
from store.round.moved import moved_here
from store.round.planning import BENCH, GONE, NO_PEN, Planning
from store.round.soak import soak_checks, soak_starts
from store.round.steps import LookStep, PastStep, Step, TaskStep
from store.round.task import tasks
from store.round.udder import animal_quarters, animal_udder, is_felt

BESIDES, DROPPED = "Besides", "Dropped"
NO_STEP = (Kind.NOTE, Kind.ROUND)


def plan(snapshot: Snapshot) -> tuple[Step, ...]:
    """Every step of the round: the bench, each pen in turn, the bench again; then what is no longer planned."""
    planning = Planning(snapshot, snapshot.counts())
    asked = tuple(step for step in _due(planning) if snapshot.turn.feeds or _is_for_between(step))
    asked = last_of_all(snapshot, tuple(_once(asked, snapshot.turn.slot)))
    steps = with_ice(planning, asked)
    return steps + tuple(_past(planning, {step.step_id for step in steps}))


def _is_for_between(step: Step) -> bool:
    """A midday or night round has its own jobs and looks; what was moved on or left waits for the feeding round."""
    return isinstance(step, LookStep | TaskStep) and not step.moved_from


def _once(steps: tuple[Step, ...], slot: str) -> Iterator[Step]:
    """What was moved on from the same slot of an earlier day is not asked for beside the same thing of this round."""
    own = {_what(step) for step in steps if not step.moved_from}
    for step in steps:
        if not (step.moved_from and step.moved_from.slot == slot and _what(step) in own):
            yield step


def _what(step: Step) -> tuple[Kind, UUID, UUID | None]:
    return step.kind, step.subject.id, step.look.id if isinstance(step, LookStep) else None


def _due(planning: Planning) -> Iterator[Step]:
    yield from moved_here(planning, None)
    yield from soak_checks(planning)
    yield from tasks(planning, None, BENCH, closing=False)
    for pen in planning.snapshot.pens:
        yield from _pen(planning, pen)
        yield from moved_here(planning, pen.id, pen.name)
    pen_ids = {pen.id for pen in planning.snapshot.pens}
    yield from _animals(planning, (a for a in planning.snapshot.animals if a.pen_id not in pen_ids), NO_PEN)
    for pen_id in dict.fromkeys(job.pen_id for job in planning.snapshot.jobs if job.pen_id):
        if pen_id not in pen_ids:  # a job of a pen that is out of use is said, not dropped
            yield from tasks(planning, pen_id, NO_PEN, closing=False)
            yield from tasks(planning, pen_id, NO_PEN, closing=True)
    yield from soak_starts(planning)
    yield from tasks(planning, None, BENCH, closing=True)


def _pen(planning: Planning, pen: Pen) -> Iterator[Step]:
    """Heads and a look first, then forage for the pen, then each animal."""
    yield from pen_count(planning, pen)
    yield from tasks(planning, pen.id, pen.name, closing=False)
    yield from pen_feed(planning, pen)
    yield from _animals(planning, planning.snapshot.heads(pen.id), pen.name)
    yield from tasks(planning, pen.id, pen.name, closing=True)


def _animals(planning: Planning, animals: Iterable[Animal], place: str) -> Iterator[Step]:
    for animal in animals:
        felt = is_felt(planning, animal)
        yield from animal_quarters(planning, animal, place) if felt else ()
        yield from animal_udder(planning, animal, place)
        yield from animal_looks(planning, animal, place)
        yield from animal_feed(planning, animal, place)
        yield from animal_quarters(planning, animal, place) if not felt else ()
        yield from animal_milk(planning, animal, place)
        yield from animal_doses(planning, animal, place)
        yield from let_in(planning, animal, place)
        yield from shut_away(planning, animal, place)


def _past(planning: Planning, planned: set[UUID]) -> Iterator[PastStep]:
    """What was written in this round for a step that the plan has dropped since, or never had: it still counts."""
    for step_id, entry in planning.counts.items():
        if step_id not in planned and entry.kind not in NO_STEP and entry.state is not State.OPEN:
            name = planning.snapshot.name_of(entry.subject) or GONE
            place = BESIDES if step_id == entry.id else DROPPED
            yield PastStep(step_id, entry.kind, entry.subject, name, place, entry)
