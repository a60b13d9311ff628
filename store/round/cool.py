"""The milk of a round into ice: one step at the bench behind the last milking, while any of it may be for people."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from math import fsum

from store.book.drafts import Draft, Subject
from store.book.figures import CooledFigure
from store.book.words import Fate, Kind, State
from store.round.amount import Unreadable
from store.round.confirm import Hand, draft, time_of
from store.round.pails import FOR_PEOPLE, mixed, pailfuls, withheld_in
from store.round.planning import BENCH, Planning
from store.round.steps import CoolStep, MilkStep, Step

LATE_FATES = (Fate.HOUSE, Fate.CALVES, Fate.OTHER_ANIMALS, Fate.THROWN_AWAY)
"""What can become of milk that was cold too late; the first: it is kept where each pail says, all the same."""
UNSETTLED = (State.OPEN, State.ON_PAPER)


def with_ice(planning: Planning, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps of a round with the milk into ice behind the place in which the last cow is milked."""
    milked = [at for at, step in enumerate(steps) if isinstance(step, MilkStep)]
    if not milked:
        return steps
    at = milked[-1] + 1
    while at < len(steps) and steps[at].place == steps[milked[-1]].place:
        at += 1
    return (*steps[:at], *_ice(planning, steps), *steps[at:])


def _ice(planning: Planning, steps: tuple[Step, ...]) -> Iterator[CoolStep]:
    """None once all is milked and none of it is for people, unless it is written already."""
    head = planning.head(Kind.COOL, Subject(), "Milk", BENCH)
    written = pailfuls(planning.counts.values(), withheld_in(planning.snapshot, steps))
    kept = [each.pailful for each in mixed(tuple(written)) if each.use in FOR_PEOPLE]
    entry = planning.counts.get(head[0])
    to_milk = any(isinstance(step, MilkStep) and step.state in UNSETTLED for step in steps)
    if kept or to_milk or (entry and entry.state is not State.OPEN):
        yield CoolStep(
            *head,
            within_min=planning.snapshot.farm.milk_limits.cold_within_min,
            first_at=min((each.when.earliest for each in kept), default=None),
            kept_kg=fsum(each.milk_kg for each in kept),
        )


def since_first(step: CoolStep, at: datetime) -> timedelta | None:
    """How long since the first pail for people; None where there is none."""
    return None if step.first_at is None else max(at - step.first_at, timedelta(0))


def is_late(step: CoolStep, at: datetime) -> bool:
    """Whether it is more than the farm's limit after the first pail for people."""
    elapsed = since_first(step, at)
    return elapsed is not None and elapsed > timedelta(minutes=step.within_min)


def too_soon(step: CoolStep, at: datetime) -> str:
    """Why milk cannot be in ice at a moment; empty where it can."""
    if step.first_at is None:
        return "No pail for people is written yet: the time counts from the first one. Write the pails first."
    return "That is before the first pail. T sets another time; or correct the pail." if at < step.first_at else ""


def cooled(hand: Hand, step: CoolStep, fate: Fate | None) -> Draft:
    """The milk is in ice. fate: what becomes of it, asked only where it is late. Raises Unreadable without it then."""
    late = is_late(step, time_of(hand, step).latest)
    if late and fate is None:
        raise Unreadable("It is late for milk. What becomes of it? 1 to 4, or Up and Down; then Enter.")
    return draft(hand, step, State.DONE, (CooledFigure(fate if late else None),))
