"""What is still missing of a treatment's record: it is written all the same, and asked for until it is there."""

from collections.abc import Iterator
from datetime import timedelta
from uuid import UUID

from msgspec import Struct

from store.book.facts.care import Treatment, Withdrawal
from store.book.snapshot import Snapshot
from store.round.withdrawal import is_dry_cow
from store.round.withholding import doses_given

ASKED_FOR = timedelta(days=90)
"""So long after the last dose a gap is still asked for. Common practice."""


class Gap(Struct, frozen=True):
    """A treatment, and what of it nobody has typed."""

    animal_id: UUID
    product: str
    missing: tuple[str, ...]


def gaps(snapshot: Snapshot) -> tuple[Gap, ...]:
    """The treatments of the last weeks of animals that are here, each with what is missing."""
    kept = {animal.id for animal in snapshot.animals}
    found = (
        Gap(each.animal_id, each.product, tuple(missing(each)))
        for each in snapshot.treatments
        if each.animal_id in kept and _is_asked_for(snapshot, each)
    )
    return tuple(gap for gap in found if gap.missing)


def missing(treatment: Treatment) -> Iterator[str]:
    """What is not typed of it, in words."""
    words = (("amount", treatment.amount), ("batch", treatment.batch), ("where or how", treatment.route),
             ("for what", treatment.why))  # fmt: skip
    yield from (word for word, typed in words if not typed)
    withdrawal = treatment.withdrawal or Withdrawal()
    if is_dry_cow(withdrawal):
        yield from ["least days dry"] if withdrawal.dry_days is None else []
        calved = withdrawal.calved_h is None and withdrawal.calved_milkings is None
        yield from ["how long milk is withheld from calving on"] if calved else []
    elif withdrawal.milk_h is None and withdrawal.milkings is None:
        yield "how long milk is withheld"
    if withdrawal.meat_days is None:
        yield "how long meat is withheld"


def _is_asked_for(snapshot: Snapshot, treatment: Treatment) -> bool:
    """Not one that is long over, nor one that was taken back before any dose."""
    given = doses_given(snapshot, treatment)
    last = max((*(each.latest for each in given), treatment.first_at))
    begins = snapshot.turn.begins(snapshot.farm.zone)
    return bool(given or treatment.in_use) and last + ASKED_FOR >= begins
