"""What is read of care: looks, treatments, calvings."""

from collections.abc import Sequence
from datetime import date
from typing import Any

from msgspec.structs import replace

from store.book.clock import moment
from store.book.desk import FoundRow
from store.book.facts.calves import Birth
from store.book.facts.care import LastLook, Look, NotGiven, Treatment, Withdrawal
from store.book.facts.span import span
from store.book.figures import LookedFigure
from store.book.reading.facts import maybe_day, maybe_uid, uid
from store.book.turn import Turn
from store.book.words import Asks, Looks, SaidBy, State


def look(found: FoundRow, last: LastLook | None) -> Look:
    """What falls due at an animal, and what it found the last time."""
    id_, animal, name, asks, slot, every_days, until_on = found
    return Look(uid(id_), uid(animal), name, Asks(asks), slot, every_days, maybe_day(until_on), last)


def last_look(found: Sequence[FoundRow]) -> LastLook | None:
    """The finding of one row, if there is one."""
    if not found:
        return None
    day, look_id, looks, *measured = found[0]
    figure = LookedFigure(uid(look_id), None if looks is None else Looks(looks), *measured)
    return LastLook(date.fromisoformat(day), figure)


def treatment(found: FoundRow, given: Sequence[FoundRow], not_given: Sequence[FoundRow]) -> Treatment:
    """A treatment, when its doses were given, and the rounds in which one was asked for and not given."""
    id_, animal, product, amount, route, why, batch, doses, every_h, first_at, in_use, *withdrawal = found
    spans = tuple(span(moment(at), None if since is None else moment(since)) for at, since in given)
    not_then = tuple(
        NotGiven(Turn(date.fromisoformat(day), slot), State(state), n) for day, slot, state, n in not_given
    )
    words = (product, amount, route, why, batch)
    times = (doses, every_h, moment(first_at), spans)
    return Treatment(uid(id_), uid(animal), *words, *times, bool(in_use), _withdrawal(*withdrawal), not_then)


def _withdrawal(id_: Any, *found: Any) -> Withdrawal | None:
    if id_ is None:
        return None
    *figures, said_by = found
    return replace(Withdrawal(*figures), said_by=None if said_by is None else SaidBy(said_by))


def birth(found: Sequence[FoundRow]) -> Birth:
    """A calving of one row for each calf."""
    since, at, *_ = found[0]
    calves = tuple((maybe_uid(calf), bool(alive)) for _, _, calf, alive, *_ in found)
    return Birth(None if since is None else moment(since), moment(at), calves)
