"""Milk steps: one for each cow that is milked in this slot, and since when her udder fills."""

from collections.abc import Iterator
from itertools import islice
from typing import TypeGuard

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.book.snapshot import Written
from store.book.words import Kind, State
from store.husbandry.milk.usual import MOST_PAILS
from store.round.apart import shared_calves
from store.round.emptied import emptied_at, sharing
from store.round.planning import Planning
from store.round.quarters import open_marks
from store.round.steps import MilkStep
from store.round.timed import rates_kg_h, timed_pails
from store.round.tonight import left_in
from store.round.withholding import withheld_of


def animal_milk(planning: Planning, animal: Animal, place: str) -> Iterator[MilkStep]:
    """The step of a cow that is milked now."""
    snapshot = planning.snapshot
    milking = snapshot.milkings.get(animal.id)
    if milking is None:
        return
    shares = sharing(snapshot, animal.id)
    pails = milking.pails_before
    head = planning.head(Kind.MILK, Subject(animal_id=animal.id), animal.name, place)
    written = head[-1]
    yield MilkStep(
        *head,
        animal=animal,
        calves=shared_calves(planning, animal),
        milking=milking,
        emptied_at=emptied_at(animal.id, shares, pails, written.happened_at if _is_done(written) else None),
        rates_kg_h=tuple(islice(rates_kg_h(timed_pails(animal.id, shares, pails)), MOST_PAILS)),
        withheld=withheld_of(snapshot, animal.id),
        marked=open_marks(snapshot, animal.id),
        left_in=left_in(snapshot, animal),
    )


def _is_done(written: Written | None) -> TypeGuard[Written]:
    """Whether she was milked in this round already: what came after it says nothing of that pail."""
    return written is not None and written.state is State.DONE
