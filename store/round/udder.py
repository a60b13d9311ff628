"""Udder steps: a dry or close-up cow, and a cow in milk that is not milked now, are looked at and felt only.

So is a cow whose calf was left with her last night; her milk step comes behind it.
"""

from collections.abc import Iterator

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.book.words import Kind, Species, Stage
from store.round.planning import Planning
from store.round.steps import UdderStep
from store.round.tonight import left_in

FELT = (Stage.DRY, Stage.CLOSE_UP, Stage.IN_MILK)


def animal_udder(planning: Planning, animal: Animal, place: str) -> Iterator[UdderStep]:
    """The step of a cow that is not milked in this slot, or not expected to be."""
    milked = animal.id in planning.snapshot.milkings and not left_in(planning.snapshot, animal)
    if animal.stage in FELT and animal.species is Species.CATTLE and not milked:
        head = planning.head(Kind.UDDER, Subject(animal_id=animal.id), animal.name, place)
        yield UdderStep(*head, animal=animal)
