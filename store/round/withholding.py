"""Whose milk is withheld, and until when: by treatments, by a calving, and by what was typed by hand.

A pure function of the snapshot, so that it does not matter in which order anything was typed.
"""

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, timedelta
from itertools import islice
from uuid import UUID

from store.book.facts.care import Treatment
from store.book.facts.milk import PastPail, Withholding
from store.book.facts.span import Span, span
from store.book.figures import DosedFigure, MilkedFigure
from store.book.snapshot import Snapshot, Written
from store.book.turn import Turn, from_wall, local
from store.book.words import Kind, State
from store.round.unwritten import unwritten
from store.round.withdrawal import Course, after_milkings, is_nil, milk_withheld

SAID_FOR = timedelta(days=7)
"""So long what was withheld and is over still says something of milk in the house. Common practice."""
A_DAY = timedelta(days=1)
ROUNDS_AHEAD = 120


def withheld_of(snapshot: Snapshot, animal_id: UUID, milked: Sequence[Span] | None = None) -> tuple[Withholding, ...]:
    """All that withholds her milk. milked: when she was milked; not said, in the rounds before this one.

    The milking of this round is not counted: it would end a withholding by milkings while it is itself withheld.
    """
    if milked is None:
        milked = milkings_of(snapshot, animal_id)
    return (*snapshot.withheld.get(animal_id, ()), *_computed(snapshot, animal_id, milked))


def _computed(snapshot: Snapshot, animal_id: UUID, milked: Sequence[Span]) -> Iterator[Withholding]:
    course = Course(milked, calving_of(snapshot, animal_id))
    for treatment in snapshot.treatments:
        if treatment.animal_id == animal_id and not is_nil(treatment.withdrawal):
            given = doses_given(snapshot, treatment)
            found = milk_withheld(treatment, given, course, snapshot.farm.zone)
            yield from filter(None, (found, unwritten(snapshot, treatment, given)))
    if course.calving:
        yield from _colostrum(snapshot, course.calving, milked)


def doses_given(snapshot: Snapshot, treatment: Treatment) -> tuple[Span, ...]:
    """When its doses were given, in earlier rounds and in this one, oldest first."""
    entries = snapshot.counts().values()
    now = (
        entry.when
        for entry in entries
        if entry.kind is Kind.DOSE and entry.state is State.DONE
        for figure in entry.of(DosedFigure)
        if figure.treatment_id == treatment.id and figure.given
    )
    return tuple(sorted((*treatment.given, *now), key=lambda each: each.latest))


def pails_of(snapshot: Snapshot, animal_id: UUID) -> tuple[PastPail, ...]:
    """Her pails of earlier rounds, newest first."""
    milking = snapshot.milkings.get(animal_id)
    return snapshot.pails.get(animal_id, milking.pails_before if milking else ())


def milkings_of(snapshot: Snapshot, animal_id: UUID) -> tuple[Span, ...]:
    """When she was really milked in earlier rounds, newest first."""
    return tuple(pail.when for pail in pails_of(snapshot, animal_id) if pail.milk_kg is not None)


def calving_of(snapshot: Snapshot, animal_id: UUID) -> Span | None:
    """Her last calving: as it was seen, or some time in the day that is in the book."""
    birth = snapshot.births.get(animal_id)
    calved_on = next((each.calved_on for each in snapshot.animals if each.id == animal_id), None)
    zone = snapshot.farm.zone
    if birth and (calved_on is None or local(birth.at, zone).date() >= calved_on):
        return span(birth.at, birth.since)
    if calved_on is None:
        return None
    begins, ends = (
        from_wall(datetime.combine(day, datetime.min.time()), zone) for day in (calved_on, calved_on + A_DAY)
    )
    return Span(begins, ends)


def _colostrum(snapshot: Snapshot, calving: Span, milked: Sequence[Span]) -> Iterator[Withholding]:
    """The first milkings that were surely after a calving; over after as many days too, however seldom she was milked.

    Colostrum is over after 3 or 4 days (extension leaflets); how many milkings is the farm's own rule.
    """
    milkings = snapshot.farm.milk_limits.colostrum_milkings
    over_at = calving.latest + timedelta(days=milkings)
    begins = snapshot.turn.begins(snapshot.farm.zone)
    if not milkings or begins > over_at + SAID_FOR:
        return
    clock = after_milkings(calving.latest, milkings, milked)
    number = min(sum(each.earliest > calving.latest for each in milked) + 1, milkings)
    until = min(filter(None, (clock.ends_at, over_at if begins >= over_at else None)), default=None)
    yield Withholding(calving.earliest, until, f"colostrum, milking {number} of {milkings}", to_calves=True)


def first_to_keep(snapshot: Snapshot, animal_id: UUID, milkings_at: Iterable[datetime]) -> datetime | None:
    """The first of some planned milkings that may be kept; None where none of them may, or it is not known yet.

    milkings_at: soonest first; only as many are asked for as it takes.
    """
    if any(each.until is None for each in snapshot.withheld.get(animal_id, ())):
        return None
    milked = list(milkings_of(snapshot, animal_id))
    for at in milkings_at:
        if not any(each.holds_at(at) for each in withheld_of(snapshot, animal_id, milked)):
            return at
        milked.append(span(at))
    return None


def milkings_from_now(
    snapshot: Snapshot, animal_id: UUID, at: datetime | None = None
) -> Iterator[tuple[datetime, Turn]]:
    """When she is milked in this round, if she is, and then usually will be.

    at: when in this one; not said, as it is written, or when the round usually begins. That she was left out is no
    milking.
    """
    written = next((each for each in snapshot.counts().values() if _is_milking(each, animal_id)), None)
    figure = written.the(MilkedFigure) if written else None
    if written and figure and figure.milk_kg is not None:
        yield at or written.when.earliest, snapshot.turn
    elif written is None and animal_id in snapshot.milkings:
        yield at or snapshot.farm.usually_begins(snapshot.turn), snapshot.turn
    for turn in coming_milkings(snapshot, animal_id):
        yield snapshot.farm.usually_begins(turn), turn


def _is_milking(entry: Written, animal_id: UUID) -> bool:
    return entry.kind is Kind.MILK and entry.subject.animal_id == animal_id and entry.state is not State.OPEN


def first_turn_to_keep(snapshot: Snapshot, animal_id: UUID, at: datetime | None = None) -> Turn | None:
    """The round of the first milking, from this one on, that may be kept. None: it is not known yet."""
    asked: list[Turn] = []

    def times() -> Iterator[datetime]:
        for moment, turn in milkings_from_now(snapshot, animal_id, at):
            asked.append(turn)
            yield moment

    return asked[-1] if first_to_keep(snapshot, animal_id, times()) else None


def coming_milkings(snapshot: Snapshot, animal_id: UUID) -> Iterator[Turn]:
    """The rounds after this one in which she is likely milked: of the slots in which she is planned, by her rhythm;
    of one that is not milked now, of those in which she was milked lately.
    """
    milking = snapshot.milkings.get(animal_id)
    every = milking.every if milking else 1
    lately = {pail.turn.slot for pail in pails_of(snapshot, animal_id) if pail.turn and pail.milk_kg is not None}
    slots = (milking.slots or lately | {snapshot.turn.slot}) if milking else lately
    return islice((turn for turn in _rounds_after(snapshot.turn) if turn.slot in slots), every - 1, None, every)


def _rounds_after(turn: Turn) -> Iterator[Turn]:
    for _ in range(ROUNDS_AHEAD):
        turn = turn.after()
        yield turn
