"""Dose steps: what label or vet have ordered for an animal, when it falls due. The program orders nothing itself."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from store.book.drafts import Subject
from store.book.facts.care import Treatment
from store.book.facts.farm import Animal
from store.book.snapshot import Written
from store.book.words import Kind, State
from store.round.planning import Planning
from store.round.steps import DoseStep

LONG_OVER = timedelta(days=30)


def animal_doses(planning: Planning, animal: Animal, place: str) -> Iterator[DoseStep]:
    """The next dose of each treatment of an animal, if it falls due before this round is over."""
    snapshot = planning.snapshot
    ends = snapshot.turn.ends(snapshot.farm.zone, snapshot.farm.evening_from_h)
    for treatment in snapshot.treatments:
        number, due_at = len(treatment.given) + 1, due(treatment)
        head = planning.head(Kind.DOSE, Subject(animal_id=animal.id), animal.name, place, treatment.id.hex)
        asked = treatment.animal_id == animal.id and number <= treatment.doses and due_at < ends
        if asked and (runs(treatment, ends) or _was_left(head[-1])):
            yield DoseStep(*head, animal=animal, treatment=treatment, number=number, due_at=due_at)


def _was_left(written: Written | None) -> bool:
    """Whether this round has left it open or on paper: it stays to be typed or skipped, also of an ended treatment."""
    return written is not None and written.state in (State.OPEN, State.ON_PAPER)


def runs(treatment: Treatment, at: datetime) -> bool:
    """Whether it was not ended, nor should have ended long ago: twice its length and a month."""
    length = timedelta(hours=2 * treatment.doses * treatment.every_h) + LONG_OVER
    return treatment.in_use and treatment.first_at + length >= at


def due(treatment: Treatment) -> datetime:
    """When the next dose is due: so many hours after the last one that was given, else when the first was ordered."""
    if not treatment.given_at:
        return treatment.first_at
    return treatment.given_at[0] + timedelta(hours=treatment.every_h)
