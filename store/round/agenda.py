"""What comes by the clock between two rounds, from one list: the closing and the bench both draw it from here.

A pure function: the same snapshot and the same moment give the same list, in the order of time.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import chain
from uuid import UUID

from store.book.facts.farm import FarmFacts
from store.book.figures import MilkedFigure
from store.book.reading.watches import Watch
from store.book.snapshot import Snapshot, Written
from store.book.turn import Turn
from store.book.words import State
from store.round.item import Item
from store.round.steps import LookStep, MilkStep, Step
from store.round.waiting import calves, doses, soaks
from store.round.withholding import coming_milkings, first_to_keep, pails_of, withheld_of


@dataclass(frozen=True, slots=True)
class Besides:
    """What a round's own snapshot does not hold: the steps of midday and night rounds, and what is looked at again."""

    between: tuple[tuple[Turn, tuple[Step, ...]], ...] = ()
    watches: tuple[Watch, ...] = ()


NOTHING = Besides()


def all_coming(snapshot: Snapshot, steps: Sequence[Step], besides: Besides = NOTHING) -> tuple[Item, ...]:
    """All that comes by the clock, soonest first: the same for each moment until the book is read again.

    steps: the plan of the snapshot.
    """
    found = (
        *_rounds(snapshot),
        *soaks(snapshot, steps),
        *calves(snapshot, steps),
        *doses(snapshot, steps),
        *_milk(snapshot, steps),
        *_between(snapshot.farm, besides),
        *_watches(snapshot, besides.watches),
    )
    return tuple(sorted(found, key=lambda item: (item.at, item.words)))


def agenda(coming: Iterable[Item], now: datetime) -> tuple[Item, ...]:
    """Of all that comes, what counts at a moment; what is late stands first. What only comes and has gone by is left
    out, and so is what it is too late for."""
    open_still = (item for item in coming if item.over_at is None or now < item.over_at)
    return tuple(item for item in open_still if item.asks or item.at > now)


def _rounds(snapshot: Snapshot) -> Iterator[Item]:
    """This one, as long as nothing was written in it, and the next."""
    turn = snapshot.turn
    own = (turn,) if turn.feeds and not snapshot.entries else ()
    for each in (*own, turn.after()):
        at = snapshot.farm.round_begins(each)
        if at:
            yield Item(at, f"{each.slot} round", turn=each)


def _milk(snapshot: Snapshot, steps: Iterable[Step]) -> Iterator[Item]:
    """The first milking to come whose milk may be kept, of a cow whose milk is withheld; none where it is not known."""
    own = {step.subject.animal_id: step.entry for step in steps if isinstance(step, MilkStep) and step.entry}
    for animal in snapshot.animals:
        if pails_of(snapshot, animal.id) and withheld_of(snapshot, animal.id):
            times = _milkings(snapshot, animal.id, own.get(animal.id))
            soonest = next(times, None)
            first = first_to_keep(snapshot, animal.id, chain([soonest] if soonest else [], times))
            if first and first != soonest:
                yield Item(first, f"{animal.name}'s milk: the first that may be kept", asks=False)


def _milkings(snapshot: Snapshot, animal_id: UUID, written: Written | None) -> Iterator[datetime]:
    """When she was milked in this round, if she was, and then usually will be."""
    if written and _has_pail(written):
        yield written.happened_at
    yield from map(snapshot.farm.usually_begins, coming_milkings(snapshot, animal_id))


def _has_pail(entry: Written) -> bool:
    """Whether she was milked; that the calf had it is no milking."""
    figure = entry.the(MilkedFigure)
    return entry.state is State.DONE and figure is not None and figure.milk_kg is not None


def _between(farm: FarmFacts, besides: Besides) -> Iterator[Item]:
    """Looks and jobs of a midday or night round, as long as it can be walked."""
    for turn, steps in besides.between:
        ends = turn.ends(farm.zone, farm.evening_from_h)
        for step in steps:
            words = f"look at {step.name}: {step.look.name}" if isinstance(step, LookStep) else step.name
            yield Item(turn.begins(farm.zone), words, f"{turn.slot} round", step=step, turn=turn, over_at=ends)


def _watches(snapshot: Snapshot, watches: Iterable[Watch]) -> Iterator[Item]:
    """What was said to be looked at again."""
    for watch in watches:
        whose = snapshot.name_of(watch.subject)
        words = f"look again at {whose}: {watch.words}" if whose else f"look again: {watch.words}"
        yield Item(watch.due_at, words, until=watch.due_until, watch=watch)
