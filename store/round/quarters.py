"""Marked quarters of an udder: asked about until each was found clear in two rounds running.

Counted from what was found, by round and by when it happened; in which order it was typed does not matter.
"""

from collections.abc import Iterable, Iterator
from itertools import groupby, takewhile
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.book.facts.milk import QuarterFound
from store.book.figures import QuarterFigure
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import MARKS, SLOTS, Quarter, Sign, State

RUNNING = 3
"""Found so in so many rounds running, it is said. Common practice."""
AGAINST = (frozenset({Sign.SLACK, Sign.FULL}), frozenset({Sign.SLACK, Sign.TIGHT}), frozenset({Sign.FULL, Sign.TIGHT}))
"""What one quarter cannot be at once; clear again goes with none of the marks."""


class Mark(Struct, frozen=True):
    """A quarter that is not yet clear again.

    signs: what was found last that is asked about, in the round `at`; since: the round in which it began.
    rounds: in how many rounds running it was found so. clear_in: the one round since in which it was clear.
    """

    quarter: Quarter
    signs: tuple[Sign, ...]
    at: Turn
    since: Turn
    rounds: int = 1
    clear_in: Turn | None = None


def asked_marks(snapshot: Snapshot, cow_id: UUID) -> tuple[Mark, ...]:
    """The quarters of a cow that this round asks about: what stands open from earlier rounds."""
    return marks_of(snapshot.quarters.get(cow_id, ()))


def open_marks(snapshot: Snapshot, cow_id: UUID) -> tuple[Mark, ...]:
    """The quarters of a cow that are not clear yet, with what this round has found of them so far."""
    return marks_of(found_at(snapshot, cow_id))


def found_at(snapshot: Snapshot, cow_id: UUID) -> tuple[QuarterFound, ...]:
    """Everything found at her quarters in the last weeks and in this round, oldest first."""
    now = (
        QuarterFound(figure.quarter, figure.sign, entry.happened_at, snapshot.turn)
        for entry in snapshot.counts().values()
        if entry.subject.animal_id == cow_id and entry.state is State.DONE
        for figure in entry.of(QuarterFigure)
    )
    return in_order((*snapshot.quarters.get(cow_id, ()), *now))


def in_order(found: Iterable[QuarterFound]) -> tuple[QuarterFound, ...]:
    """By round, then by when it was; of one moment in the order of the signs."""
    signs = tuple(Sign)
    return tuple(
        sorted(found, key=lambda each: (_place(each.turn), each.at, each.quarter.value, signs.index(each.sign)))
    )


def marks_of(found: Iterable[QuarterFound]) -> tuple[Mark, ...]:
    """What is still open of some findings, a quarter each. How full one was is no finding here."""
    told = [each for each in in_order(found) if each.sign in MARKS or each.sign is Sign.CLEAR]
    followed = (_followed(each for each in told if each.quarter is quarter) for quarter in Quarter)
    return tuple(mark for mark in followed if mark)


def _followed(found: Iterable[QuarterFound]) -> Mark | None:
    """One quarter through its rounds; one in which nobody looked is not among them."""
    mark: Mark | None = None
    for turn, of_round in groupby(found, key=lambda each: each.turn):
        looks = [tuple(look) for _, look in groupby(of_round, key=lambda each: each.at)]
        marked = [look for look in looks if _signs(look)]
        mark = _marked(mark, turn, marked[-1]) if marked else mark
        mark = mark if _signs(looks[-1]) else _cleared(mark, turn)
    return mark


def _signs(look: Iterable[QuarterFound]) -> tuple[Sign, ...]:
    return tuple(each.sign for each in look if each.sign in MARKS)


def _marked(before: Mark | None, turn: Turn, look: tuple[QuarterFound, ...]) -> Mark:
    """Found so again; after a round in which it was clear it begins anew."""
    mark = Mark(look[0].quarter, _signs(look), turn, turn)
    if before is None or before.clear_in:
        return mark
    return replace(mark, since=before.since, rounds=before.rounds + 1)


def _cleared(mark: Mark | None, turn: Turn) -> Mark | None:
    """Clear in this round: the second one running ends it."""
    return None if mark is None or mark.clear_in else replace(mark, clear_in=turn)


def toggled(signs: frozenset[Sign], sign: Sign) -> frozenset[Sign]:
    """Signs with one more, or with it taken away. What cannot be at once gives way to what was picked last."""
    if sign in signs:
        return signs - {sign}
    gives_way = {each for each in signs if _against(each, sign)}
    return (signs - gives_way) | {sign}


def _against(one: Sign, other: Sign) -> bool:
    both = frozenset({one, other})
    return both in AGAINST or (Sign.CLEAR in both and bool(both & MARKS))


def running(snapshot: Snapshot, cow_id: UUID) -> Iterator[tuple[Quarter, str, int]]:
    """Quarters that were so in three or more rounds running: marked, or as slack or as full each time."""
    yield from ((m.quarter, "marked", m.rounds) for m in open_marks(snapshot, cow_id) if m.rounds >= RUNNING)
    by_round = {turn: tuple(of) for turn, of in groupby(found_at(snapshot, cow_id), key=lambda each: each.turn)}
    milked = (pail.turn for pail in snapshot.pails.get(cow_id, ()) if pail.turn and pail.milk_kg is not None)
    newest_first = sorted({*by_round, *milked}, key=_place, reverse=True)
    for quarter in Quarter:
        for sign in (Sign.SLACK, Sign.FULL):
            was_so = [any((f.quarter, f.sign) == (quarter, sign) for f in by_round.get(t, ())) for t in newest_first]
            rounds = sum(1 for _ in takewhile(bool, was_so))
            if rounds >= RUNNING:
                yield quarter, sign.value, rounds


def _place(turn: Turn) -> tuple[str, int]:
    return turn.day.isoformat(), SLOTS.index(turn.slot)
