"""What comes by the clock between two rounds, from one list: the closing and the bench both draw it from here.

A pure function: the same snapshot and the same moment give the same list, in the order of time.
"""

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime

from msgspec import Struct

from store.book.facts.farm import FarmFacts
from store.book.reading.watches import Watch
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.round.item import Item
from store.round.steps import LookStep, Step
from store.round.waiting import calves, doses, soaks
from store.round.withholding import first_turn_to_keep, milkings_from_now, pails_of, withheld_of


class Besides(Struct, frozen=True):
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
        *_milk(snapshot),
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


def _milk(snapshot: Snapshot) -> Iterator[Item]:
    """The first milking to come whose milk may be kept, of a cow whose milk is withheld; none where it is not known."""
    for animal in snapshot.animals:
        is_milked = animal.id in snapshot.milkings or pails_of(snapshot, animal.id)
        if is_milked and withheld_of(snapshot, animal.id):
            _, soonest = next(milkings_from_now(snapshot, animal.id), (None, None))
            first = first_turn_to_keep(snapshot, animal.id)
            if first and first != soonest:
                begins = snapshot.farm.usually_begins(first)
                yield Item(begins, f"{animal.name}'s milk: the first that may be kept", asks=False)


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
