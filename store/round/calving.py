"""A calving is one entry, from which clocks run: by when a calf has sucked, when the cleansing should have passed.

What nobody saw lies between two moments. A calf may be as old as the earlier one, so it should have sucked so many
hours after that; the cleansing is looked for between both, each so many hours later. A correction of the calving moves
what nobody has looked at yet.
"""

from collections.abc import Iterator, Mapping
from datetime import timedelta
from uuid import UUID, uuid5

from msgspec.structs import replace

from store.book.drafts import Draft, Subject
from store.book.facts.calves import Birth
from store.book.facts.farm import FarmFacts
from store.book.figures import BornFigure
from store.book.reading.watches import Watch
from store.book.words import Kind, State
from store.round.confirm import Hand
from store.round.dialect import said
from store.round.watch import watched

JUST_CALVED = timedelta(days=4)
"""So long a cow counts as just calved: colostrum is over after 3 or 4 days (extension leaflets)."""
UP_WITHIN = timedelta(hours=1)
"""So soon she is looked at for the first time. Common practice."""
SUCKED, CLEANSED, UP = "has sucked", "cleansing passed", "up, ears warm, all four quarters"


def born(hand: Hand, cow_id: UUID, birth: Birth, step_id: UUID, shown: UUID | None = None) -> Draft:
    """The calving as it is known now. shown: the entry of it that this corrects."""
    return Draft(
        step_id=step_id,
        kind=Kind.BIRTH,
        subject=Subject(animal_id=cow_id),
        turn=None,
        state=State.DONE,
        happened_at=birth.at,
        happened_from=birth.since,
        person_id=hand.person_id,
        shown=shown,
        figures=tuple(BornFigure(calf_id, alive) for calf_id, alive in birth.calves),
    )


def looks_after(hand: Hand, cow_id: UUID, birth: Birth, step_id: UUID, farm: FarmFacts) -> tuple[Draft, ...]:
    """What is looked at after a calving, each as a watch with a step of its own; nothing of one that is long over."""
    if hand.now - birth.at > JUST_CALVED:
        return ()
    limits = farm.milk_limits
    cow, within = Subject(animal_id=cow_id), timedelta(hours=limits.cleansing_within_h)
    sucked_by = birth.earliest + timedelta(hours=limits.sucked_within_h)
    until = birth.at + within if birth.since else None
    found = {
        UP: watched(hand, cow, UP, birth.at + UP_WITHIN),
        CLEANSED: watched(hand, cow, said(CLEANSED, farm.dialect), birth.earliest + within, until),
    }
    for id_, alive in birth.calves:
        if id_ and alive:
            found[f"{SUCKED}|{id_.hex}"] = watched(hand, Subject(animal_id=id_), SUCKED, sucked_by)
    return tuple(replace(each, step_id=uuid5(step_id, name), happened_from=None) for name, each in found.items())


def moved_looks(before: tuple[Draft, ...], after: tuple[Draft, ...], waiting: Mapping[UUID, Watch]) -> Iterator[Draft]:
    """The same after a correction: what nobody has looked at yet waits by the new time, or no more.

    before, after: what follows from the calving as it was written, and as it is now. waiting: what is still to be
    looked at, by step.
    """
    known = {each.step_id for each in before}
    for each in after:
        watch = waiting.get(each.step_id) if each.step_id else None
        if each.step_id not in known:
            yield each
        elif watch and watch.looks is None:
            yield replace(each, shown=watch.entry_id)
    for each in before:
        watch = waiting.get(each.step_id) if each.step_id else None
        if watch and each.step_id not in {other.step_id for other in after}:
            yield replace(each, shown=watch.entry_id, state=State.OPEN, figures=())
