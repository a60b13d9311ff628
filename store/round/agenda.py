"""What comes by the clock between two rounds, from one list: the closing and the bench both draw it from here.

A pure function: the same snapshot and the same moment give the same list, in the order of time.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from store.book.facts.farm import FarmFacts
from store.book.reading.watches import Watch
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.round.item import Item
from store.round.steps import LookStep, Step
from store.round.waiting import calves, doses, soaks


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
        *_milk(snapshot),
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


def _milk(snapshot: Snapshot) -> Iterator[Item]:
    """When a cow's milk may be kept again, where that moment is known."""
    for animal in snapshot.animals:
        ends = [each.until for each in snapshot.withheld.get(animal.id, ())]
        known = [at for at in ends if at]
        if known and len(known) == len(ends):
            yield Item(max(known), f"{animal.name}'s milk: first that may be kept", asks=False)


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
        yield Item(watch.due_at, f"look again at {whose}: {watch.words}" if whose else watch.words, watch=watch)
