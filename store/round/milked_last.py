"""Who is milked last: a cow with a marked quarter, or whose milk is withheld. So nothing is carried to the next cow.

Healthy cows first and suspect ones last: common practice, from memory.
"""

from collections.abc import Sequence
from datetime import datetime
from uuid import UUID

from store.book.snapshot import Snapshot
from store.book.words import Apart
from store.round.steps import ApartStep, DoseStep, MilkStep, QuarterStep, Step


def is_last(step: MilkStep, begins: datetime) -> bool:
    """Whether she is milked after the others. begins: of the round; what was withheld then counts."""
    return bool(step.marked) or any(each.holds_at(begins) for each in step.withheld)


def last_of_all(snapshot: Snapshot, steps: Sequence[Step]) -> tuple[Step, ...]:
    """The round with these cows' milkings behind the last milking of the others, in whatever pen that is."""
    begins = snapshot.farm.usually_begins(snapshot.turn)
    milked = {step.animal.id: is_last(step, begins) for step in steps if isinstance(step, MilkStep)}
    cows = [_milked_cow(step) for step in steps]
    others = [at for at, cow_id in enumerate(cows) if cow_id in milked and not milked[cow_id]]
    end = others[-1] + 1 if others else 0
    waits = [cow_id is not None and milked.get(cow_id, False) for cow_id in cows[:end]]
    first = tuple(step for step, wait in zip(steps, waits, strict=False) if not wait)
    then = tuple(step for step, wait in zip(steps, waits, strict=False) if wait)
    return (*first, *then, *steps[end:])


def _milked_cow(step: Step) -> UUID | None:
    """Whose milking a step belongs to: her quarters before it, a dose behind it, her calf let in to her."""
    if isinstance(step, MilkStep | QuarterStep | DoseStep):
        return step.animal.id
    return step.cow.id if isinstance(step, ApartStep) and step.want is Apart.LET_IN else None
