"""Calves that are shut away for longer than the farm lets them be."""

from datetime import datetime, timedelta

from msgspec import Struct

from store.book.facts.farm import Animal
from store.book.snapshot import Snapshot
from store.book.words import Apart
from store.round.where import where


class OverdueCalf(Struct, frozen=True):
    """A calf past its longest time apart. since: shut away since then. longest_h: the limit. [h]"""

    calf: Animal
    cow: Animal
    since: datetime
    longest_h: float


def overdue_calves(snapshot: Snapshot, now: datetime) -> tuple[OverdueCalf, ...]:
    """Every calf that is past its limit at a moment, the longest apart first."""
    animals = {animal.id: animal for animal in snapshot.animals}
    found = []
    for share in snapshot.shares:
        last = where(share, share.cow_id)
        apart = last if last and last.state is Apart.SHUT_AWAY and last.cow_id is None else None
        if (
            apart
            and now - apart.earliest > timedelta(hours=share.longest_h)
            and {share.calf_id, share.cow_id} <= set(animals)
        ):
            found.append(OverdueCalf(animals[share.calf_id], animals[share.cow_id], apart.earliest, share.longest_h))
    return tuple(sorted(found, key=lambda each: each.since))
