"""What comes by the clock between two rounds, from one list: the closing and the bench both draw it from here.

A pure function: the same snapshot and the same moment give the same list, in the order of time.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

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


def agenda(snapshot: Snapshot, steps: Sequence[Step], now: datetime, besides: Besides = NOTHING) -> tuple[Item, ...]:
    """All that comes, soonest first; what is late stands first therefore. What only comes and has gone by is left out.

    steps: the plan of the snapshot.
    """
    found = (
        *_rounds(snapshot),
        *soaks(snapshot, steps),
        *calves(snapshot, steps),
        *doses(snapshot, steps),
        *_milk(snapshot, steps),
        *_between(snapshot.farm, now, besides),
        *_watches(snapshot, besides.watches),
    )
    left = (item for item in found if item.asks or item.at > now)
    return tuple(sorted(left, key=lambda item: (item.at, item.words)))


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
        withheld = withheld_of(snapshot, animal.id) if pails_of(snapshot, animal.id) else ()
        milked = own.get(animal.id)
        times = [milked.happened_at] if milked and _has_pail(milked) else []
        times += (
            [snapshot.farm.usually_begins(turn) for turn in coming_milkings(snapshot, animal.id)] if withheld else []
        )
        first = first_to_keep(snapshot, animal.id, times)
        if first and first != times[0]:
            yield Item(first, f"{animal.name}'s milk: the first that may be kept", asks=False)


def _has_pail(entry: Written) -> bool:
    """Whether she was milked; that the calf had it is no milking."""
    figure = entry.the(MilkedFigure)
    return entry.state is State.DONE and figure is not None and figure.milk_kg is not None


def _between(farm: FarmFacts, now: datetime, besides: Besides) -> Iterator[Item]:
    """Looks and jobs of a midday or night round that can be walked still."""
    for turn, steps in besides.between:
        for step in steps if now < turn.ends(farm.zone, farm.evening_from_h) else ():
            words = f"look at {step.name}: {step.look.name}" if isinstance(step, LookStep) else step.name
            yield Item(turn.begins(farm.zone), words, f"{turn.slot} round", step=step, turn=turn)


def _watches(snapshot: Snapshot, watches: Iterable[Watch]) -> Iterator[Item]:
    """What was said to be looked at again."""
    for watch in watches:
        whose = snapshot.name_of(watch.subject)
        words = f"look again at {whose}: {watch.words}" if whose else f"look again: {watch.words}"
        yield Item(watch.due_at, words, until=watch.due_until, watch=watch)
