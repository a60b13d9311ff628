"""Look steps: what falls due to be looked at on an animal, every so many days."""

from collections.abc import Iterator

from store.book.drafts import Subject
from store.book.facts.care import Look
from store.book.facts.farm import Animal
from store.book.words import Kind
from store.round.planning import Planning
from store.round.steps import LookStep


def animal_looks(planning: Planning, animal: Animal, place: str) -> Iterator[LookStep]:
    """The looks at an animal that fall due in this round."""
    for look in planning.snapshot.looks:
        if look.animal_id == animal.id and _is_due(planning, look):
            head = planning.head(Kind.LOOK, Subject(animal_id=animal.id), animal.name, place, look.id.hex)
            yield LookStep(*head, animal=animal, look=look)


def _is_due(planning: Planning, look: Look) -> bool:
    """In its slot, once so many days have gone by since it was last done; one that was never done is due at once.

    A daily one is due every day, also where the one of yesterday was moved on and done today.
    """
    turn = planning.snapshot.turn
    if look.slot != turn.slot:
        return False
    return look.last is None or look.every_days == 1 or (turn.day - look.last.day).days >= look.every_days
