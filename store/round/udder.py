"""Udder steps: a dry or close-up cow, and a cow in milk that is not milked now, are looked at and felt only.

So is a cow whose calf was left with her last night; her milk step comes behind it. A quarter that was marked is asked
about before, whether she is milked or felt.
"""

from collections.abc import Iterator
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.book.figures import FeltFigure
from store.book.snapshot import Snapshot, Written, counting
from store.book.words import Kind, Species, Stage, State
from store.round.planning import Planning
from store.round.quarters import asked_marks
from store.round.steps import QuarterStep, UdderStep
from store.round.tonight import left_in

FELT = (Stage.DRY, Stage.CLOSE_UP, Stage.IN_MILK)


def animal_udder(planning: Planning, animal: Animal, place: str) -> Iterator[UdderStep]:
    """The step of a cow that is not milked in this slot, or not expected to be."""
    if is_felt(planning, animal):
        head = planning.head(Kind.UDDER, Subject(animal_id=animal.id), animal.name, place)
        yield UdderStep(*head, animal=animal)


def why_felt(snapshot: Snapshot, animal: Animal) -> str:
    """Why a cow's udder is felt in a round in which it is: `close to calving`, `her calf stayed with her (slow)`."""
    if animal.stage is not Stage.IN_MILK:
        return animal.stage.value
    left = left_in(snapshot, animal) if animal.id in snapshot.milkings else ""
    return f"her calf stayed with her ({left})" if left else "not her turn to be milked"


def last_felt(snapshot: Snapshot, animal_id: UUID) -> Written | None:
    """How an udder was felt last, in the last round or since; None: it was not."""
    entries = counting(snapshot.last.all_entries).values()
    felt = (each for each in entries if each.subject.animal_id == animal_id and each.state is State.DONE)
    return max((each for each in felt if each.the(FeltFigure)), key=lambda each: each.happened_at, default=None)


def animal_quarters(planning: Planning, animal: Animal, place: str) -> Iterator[QuarterStep]:
    """A step for each of her quarters that is not clear yet, in every round in which her udder is handled."""
    handled = animal.id in planning.snapshot.milkings or is_felt(planning, animal)
    for mark in asked_marks(planning.snapshot, animal.id) if handled else ():
        occasion = f"quarter {mark.quarter.value}"
        head = planning.head(Kind.LOOK, Subject(animal_id=animal.id), animal.name, place, occasion)
        yield QuarterStep(*head, animal=animal, mark=mark)


def is_felt(planning: Planning, animal: Animal) -> bool:
    """Whether her udder is felt in this round."""
    milked = animal.id in planning.snapshot.milkings and not left_in(planning.snapshot, animal)
    return animal.stage in FELT and animal.species is Species.CATTLE and not milked
