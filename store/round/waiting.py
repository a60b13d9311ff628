"""What a round has set going and waits for its hour: soaks, calves that are shut away, doses."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime, timedelta
from uuid import UUID

from store.book.facts.calves import Parting
from store.book.facts.care import Treatment
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import MORNING, Apart, State
from store.husbandry.soak import start_window
from store.round.dose import due, runs
from store.round.item import Item
from store.round.steps import ApartStep, DoseStep, SoakCheckStep, SoakStartStep, Step
from store.round.tonight import to_shut_away
from store.round.where import where


def soaks(snapshot: Snapshot, steps: Iterable[Step]) -> Iterator[Item]:
    """Until when something can be put to soak; then from when it is soft, and until when it can be fed."""
    turn = snapshot.turn
    for step in steps:
        if isinstance(step, SoakStartStep) and step.state is State.OPEN:
            yield from _start(snapshot, step, turn.after())
        if isinstance(step, SoakStartStep) and step.state is State.DONE and step.entry:
            yield from _soaking(snapshot, step, step.entry.happened_at)
        if isinstance(step, SoakCheckStep) and step.state is State.OPEN:
            yield from _checked(snapshot, step)


def _checked(snapshot: Snapshot, step: SoakCheckStep) -> Iterator[Item]:
    """What this round feeds: what stands in the bucket, or what was not put to soak yet."""
    if step.batch:
        yield from _soaking(snapshot, step, step.batch.started_at)
    else:
        yield from _start(snapshot, step, snapshot.turn)


def _start(snapshot: Snapshot, step: SoakStartStep | SoakCheckStep, turn: Turn) -> Iterator[Item]:
    """The last moment at which it is soft when a round begins."""
    at = snapshot.farm.round_begins(turn)
    if at and step.limit:
        latest = start_window(at, step.limit.least_h, step.limit.most_h).latest
        note = f"for the {turn.slot} round, {step.limit.water.value} water, your {step.limit.least_h:g} h"
        yield Item(latest, f"start soak by then: {step.name}", note, step=step, turn=snapshot.turn)


def _soaking(snapshot: Snapshot, step: SoakStartStep | SoakCheckStep, since: datetime) -> Iterator[Item]:
    if step.limit:
        ready, most = (since + timedelta(hours=h) for h in (step.limit.least_h, step.limit.most_h))
        yield Item(ready, f"{step.name}: soaked long enough", asks=False, step=step, turn=snapshot.turn)
        yield Item(most, f"{step.name}: to be fed by then, your limit", step=step, turn=snapshot.turn)


def calves(snapshot: Snapshot, steps: Iterable[Step]) -> Iterator[Item]:
    """When a calf is to be shut away by its rule; until when one that is shut away is let in to its cow."""
    parted = [step for step in steps if isinstance(step, ApartStep)]
    yield from _to_shut_away(snapshot, _by_calf(parted, Apart.SHUT_AWAY))
    let_in = _by_calf(parted, Apart.LET_IN)
    for share in snapshot.shares:
        last = where(share, share.cow_id)
        if last and last.state is Apart.SHUT_AWAY and last.cow_id is None:
            names = (snapshot.names.get(id_, "") for id_ in (share.calf_id, share.cow_id))
            at = last.earliest + timedelta(hours=share.longest_h)
            note = f"shut away {share.longest_h:g} h then"
            words, missed = "let {} in to {} at the latest".format(*names), _missed(snapshot, last)
            yield Item(at, words, note, step=let_in.get(share.calf_id), missed=missed)


def _by_calf(steps: Iterable[ApartStep], want: Apart) -> Mapping[UUID | None, ApartStep]:
    return {step.subject.animal_id: step for step in steps if step.want is want}


def _missed(snapshot: Snapshot, shut: Parting) -> Turn | None:
    """In the evening: the morning round that would have let a calf in which was shut away before it."""
    turn = snapshot.turn.before()
    return turn if turn.slot == MORNING and shut.at < snapshot.farm.usually_begins(turn) else None


def _to_shut_away(snapshot: Snapshot, shut_away: Mapping[UUID | None, ApartStep]) -> Iterator[Item]:
    for calf, cow, at in to_shut_away(snapshot):
        yield Item(at, f"shut {calf.name} away from {cow.name}", "your rule", step=shut_away.get(calf.id))


def doses(snapshot: Snapshot, steps: Iterable[Step]) -> Iterator[Item]:
    """The next dose of every treatment that runs, as label or vet has it."""
    own = {step.treatment.id: step for step in steps if isinstance(step, DoseStep)}
    for treatment in snapshot.treatments:
        if any(animal.id == treatment.animal_id for animal in snapshot.animals):
            yield from _dose(snapshot, treatment, own.get(treatment.id))


def _dose(snapshot: Snapshot, treatment: Treatment, step: DoseStep | None) -> Iterator[Item]:
    """In this round; behind one that was given in it, the next; one that was skipped is not asked for again in it."""
    number, at = len(treatment.given_at) + 1, due(treatment)
    if step and step.state is State.DONE and step.entry:
        number, at, step = step.number + 1, step.entry.happened_at + timedelta(hours=treatment.every_h), None
    waits = step is None or step.state in (State.OPEN, State.ON_PAPER)
    if waits and number <= treatment.doses and runs(treatment, at):
        words = f"{treatment.product}, dose {number} of {treatment.doses}"
        whose = snapshot.names.get(treatment.animal_id, "")
        turn = snapshot.turn if step else None
        yield Item(at, f"{whose}: {words}", f"{treatment.amount} {treatment.route}", step=step, turn=turn)
