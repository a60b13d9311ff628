"""Milk steps: one for each cow that is milked in this slot."""

from collections.abc import Iterator

from store.book.drafts import Subject
from store.book.snapshot import Animal
from store.book.words import Kind
from store.husbandry.milk import usual_range
from store.round.planning import Planning
from store.round.steps import MilkStep


def animal_milk(planning: Planning, animal: Animal, place: str) -> Iterator[MilkStep]:
    """The step of a cow that is milked now."""
    milking = planning.snapshot.milkings.get(animal.id)
    if milking is None:
        return
    subject = Subject(animal_id=animal.id)
    step_id = planning.step_id(Kind.MILK, subject)
    yield MilkStep(
        step_id, Kind.MILK, subject, animal.name, place, planning.counts.get(step_id),
        animal=animal,
        calves=tuple(calf for calf in planning.snapshot.animals if calf.id in animal.calf_ids),
        milking=milking,
        usual_kg=usual_range(milking.pails_before_kg),
    )  # fmt: skip
