"""What a change of the yard changes in the rounds to come: the plan before it and after it, step by step."""

from collections.abc import Iterator
from datetime import datetime

from store.book.desk import ReadingDesk
from store.book.facts.farm import FarmFacts
from store.book.reading import read_snapshot
from store.book.snapshot import Snapshot
from store.book.turn import Turn, local, turn_at
from store.book.words import EVENING, MORNING, Kind, Units
from store.herd.substitute import replacements
from store.husbandry.measures import SAME_KG
from store.round.plan import plan
from store.round.saying import exact
from store.round.steps import ApartStep, CountStep, DueFeed, FeedStep, PastStep, Step

NO_MORE, NEW = "no more", "new"


def rounds_from(begins: datetime | None, now: datetime, zone: str, evening_from_h: int) -> tuple[Turn, Turn]:
    """The two rounds that something changes first: this one and the next; from a day on, both of that day."""
    if begins is None:
        turn = turn_at(now, zone, evening_from_h)
        return turn, turn.after()
    day = local(begins, zone).date()
    return Turn(day, MORNING), Turn(day, EVENING)


def read_rounds(desk: ReadingDesk, turns: tuple[Turn, ...], begins: datetime, zone: str) -> tuple[Snapshot, ...]:
    """What those rounds are walked by, each as of its own beginning, or of the moment where that is later."""
    return tuple(read_snapshot(desk, turn, max(begins, turn.begins(zone))) for turn in turns)


def differences(before: Snapshot, after: Snapshot) -> Iterator[str]:
    """In words, what is another than before in one round."""
    old, new = (
        {step.step_id: step for step in plan(each) if not isinstance(step, PastStep)} for each in (before, after)
    )
    for step_id, step in new.items():
        if step_id not in old:
            yield f"{NEW}: {_said(step)}"
        else:
            yield from _changes(old[step_id], step, after.farm)
    for step_id, step in old.items():
        if step_id not in new:
            yield f"{NO_MORE}: {_said(step)}"
    yield from replacements(before, after)


def _said(step: Step) -> str:
    """`Sloe milk, in Stall`; a job is its own name."""
    what = step.name if step.kind is Kind.TASK else f"{step.name} {step.kind}"
    return f"{what}, in {step.place}"


def _changes(old: Step, new: Step, farm: FarmFacts) -> Iterator[str]:
    if old.name != new.name:
        yield f"{new.name} {new.kind}: was called {old.name}"
    if old.place != new.place:
        yield f"{new.name} {new.kind}: in {new.place}, was in {old.place}"
    if isinstance(old, CountStep) and isinstance(new, CountStep) and len(old.heads) != len(new.heads):
        yield f"{new.name}: {_heads(new)}, was {len(old.heads)}"
    if isinstance(old, FeedStep) and isinstance(new, FeedStep):
        yield from _feeds(old, new, farm.units)
    if isinstance(old, ApartStep) and isinstance(new, ApartStep) and old.shut_at != new.shut_at:
        now, was = (f"{local(at, farm.zone):%H:%M}" if at else "no hour" for at in (new.shut_at, old.shut_at))
        yield f"{new.name} shut away: {now}, was {was}"


def _feeds(old: FeedStep, new: FeedStep, units: Units) -> Iterator[str]:
    was = {due.feed.id: due for due in old.due}
    now = {due.feed.id: due for due in new.due}
    for id_ in dict.fromkeys((*now, *was)):
        then, due = was.get(id_), now.get(id_)
        if then and due and (then.due_kg, then.measures) == (due.due_kg, due.measures):
            continue
        words = [_amount(each, units) if each else "none" for each in (due, then)]
        yield f"{new.name} {(due or was[id_]).feed.name}: {words[0]}, was {words[1]}"


def _heads(step: CountStep) -> str:
    return "1 head" if len(step.heads) == 1 else f"{len(step.heads)} heads"


def _amount(due: DueFeed, units: Units) -> str:
    """What is due, and what it is told as: `1.35 kg (2)`, `1.40 kg (about 2)`."""
    if due.measures is None:
        return exact(due.due_kg, units)
    about = "" if abs(due.as_shown_kg - due.due_kg) < SAME_KG else "about "
    return f"{exact(due.due_kg, units)} ({about}{due.measures:g})"
