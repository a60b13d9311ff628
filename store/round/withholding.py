"""Whose milk is withheld, and until when: by treatments, by a calving, and by what was typed by hand.

A pure function of the snapshot, so that it does not matter in which order anything was typed.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from uuid import UUID

from store.book.facts.care import Treatment
from store.book.facts.milk import PastPail, Withholding
from store.book.figures import DosedFigure
from store.book.snapshot import Snapshot
from store.book.turn import Turn, from_wall, local
from store.book.words import Kind, State
from store.round.saying import moment_words
from store.round.withdrawal import Calving, Course, after_milkings, is_nil, milk_withheld

SAID_FOR = timedelta(days=7)
"""So long what was withheld and is over still says something of milk in the house. Common practice."""
A_DAY = timedelta(days=1)
ROUNDS_AHEAD = 120


def withheld_of(
    snapshot: Snapshot, animal_id: UUID, milked_at: Sequence[datetime] | None = None
) -> tuple[Withholding, ...]:
    """All that withholds her milk. milked_at: when she was milked; not said, in the rounds before this one.

    The milking of this round is not counted: it would end a withholding by milkings while it is itself withheld.
    """
    milked = milkings_of(snapshot, animal_id) if milked_at is None else milked_at
    return (*snapshot.withheld.get(animal_id, ()), *_computed(snapshot, animal_id, milked))


def _computed(snapshot: Snapshot, animal_id: UUID, milked_at: Sequence[datetime]) -> Iterator[Withholding]:
    course = Course(milked_at, calving_of(snapshot, animal_id))
    for treatment in snapshot.treatments:
        if treatment.animal_id == animal_id:
            given = doses_given(snapshot, treatment)
            found = milk_withheld(treatment, given, course, snapshot.farm.zone) or not_written(snapshot, treatment)
            yield from (found,) if found else ()
    if course.calving:
        yield from _colostrum(snapshot, course.calving, milked_at)


def doses_given(snapshot: Snapshot, treatment: Treatment) -> tuple[datetime, ...]:
    """When its doses were given, in earlier rounds and in this one, oldest first."""
    entries = snapshot.counts().values()
    now = (
        entry.happened_at
        for entry in entries
        if entry.kind is Kind.DOSE and entry.state is State.DONE
        for figure in entry.of(DosedFigure)
        if figure.treatment_id == treatment.id and figure.given
    )
    return tuple(sorted((*treatment.given_at, *now)))


def not_written(snapshot: Snapshot, treatment: Treatment) -> Withholding | None:
    """A first dose of an earlier round of which nobody wrote anything: it may have been given."""
    farm, first_at = snapshot.farm, treatment.first_at
    known = not treatment.in_use or is_nil(treatment.withdrawal) or _was_left_out(snapshot, treatment)
    if (
        known
        or doses_given(snapshot, treatment)
        or first_at >= snapshot.turn.before().ends(farm.zone, farm.evening_from_h)
    ):
        return None
    asked = f"dose 1 was due {moment_words(first_at, farm.zone)} and is not written"
    return Withholding(first_at, None, f"{treatment.product}, {asked}")


def _was_left_out(snapshot: Snapshot, treatment: Treatment) -> bool:
    """Whether the last round says that a dose was not given."""
    left = (entry for each in snapshot.last.with_between for entry in each.left(State.SKIPPED, State.MOVED_ON))
    return any(figure.treatment_id == treatment.id for entry in left for figure in entry.of(DosedFigure))


def pails_of(snapshot: Snapshot, animal_id: UUID) -> tuple[PastPail, ...]:
    """Her pails of earlier rounds, newest first."""
    milking = snapshot.milkings.get(animal_id)
    return snapshot.pails.get(animal_id, milking.pails_before if milking else ())


def milkings_of(snapshot: Snapshot, animal_id: UUID) -> tuple[datetime, ...]:
    """When she was really milked in earlier rounds, oldest first."""
    return tuple(sorted(pail.at for pail in pails_of(snapshot, animal_id) if pail.milk_kg is not None))


def calving_of(snapshot: Snapshot, animal_id: UUID) -> Calving | None:
    """Her last calving: as it was seen, or some time in the day that is in the book."""
    birth = snapshot.births.get(animal_id)
    calved_on = next((each.calved_on for each in snapshot.animals if each.id == animal_id), None)
    zone = snapshot.farm.zone
    if birth and (calved_on is None or local(birth.at, zone).date() >= calved_on):
        return Calving(birth.earliest, birth.at)
    if calved_on is None:
        return None
    begins, ends = (
        from_wall(datetime.combine(day, datetime.min.time()), zone) for day in (calved_on, calved_on + A_DAY)
    )
    return Calving(begins, ends)


def _colostrum(snapshot: Snapshot, calving: Calving, milked_at: Sequence[datetime]) -> Iterator[Withholding]:
    """The first milkings after a calving; over after as many days too, however seldom she was milked.

    Colostrum is over after 3 or 4 days (extension leaflets); how many milkings is the farm's own rule.
    """
    milkings = snapshot.farm.milk_limits.colostrum_milkings
    over_at = calving.latest + timedelta(days=milkings)
    begins = snapshot.turn.begins(snapshot.farm.zone)
    if not milkings or begins > over_at + SAID_FOR:
        return
    clock = after_milkings(calving.earliest, milkings, milked_at)
    number = min(sum(at > calving.earliest for at in milked_at) + 1, milkings)
    until = min(filter(None, (clock.ends_at, over_at if begins >= over_at else None)), default=None)
    yield Withholding(calving.earliest, until, f"colostrum, milking {number} of {milkings}", to_calves=True)


def first_to_keep(snapshot: Snapshot, animal_id: UUID, milkings_at: Sequence[datetime]) -> datetime | None:
    """The first of some planned milkings that may be kept; None where none of them may, or it is not known yet."""
    milked = list(milkings_of(snapshot, animal_id))
    for at in sorted(milkings_at):
        if not any(each.holds_at(at) for each in withheld_of(snapshot, animal_id, milked)):
            return at
        milked.append(at)
    return None


def coming_milkings(snapshot: Snapshot, animal_id: UUID) -> tuple[Turn, ...]:
    """The rounds after this one in which she is likely milked: of the slots in which she was milked lately."""
    slots = {pail.turn.slot for pail in pails_of(snapshot, animal_id) if pail.turn and pail.milk_kg is not None}
    slots |= {snapshot.turn.slot} if animal_id in snapshot.milkings else set()
    turns = [snapshot.turn]
    while len(turns) <= ROUNDS_AHEAD:
        turns.append(turns[-1].after())
    return tuple(turn for turn in turns[1:] if turn.slot in slots)
