"""Milk of earlier rounds that was put to people, and of which the book knows only now that it was withheld."""

from collections.abc import Iterator
from uuid import UUID

from msgspec import Struct

from store.book.facts.milk import PastPail, Withholding
from store.book.snapshot import Snapshot
from store.round.measured import holding
from store.round.pails import FOR_PEOPLE
from store.round.withholding import SAID_FOR, withheld_of


class Unsafe(Struct, frozen=True):
    """One such pail: whose, and what withheld it. It stands here until its round says that it was thrown away."""

    cow_id: UUID
    pail: PastPail
    withheld: Withholding


def unsafe_pails(snapshot: Snapshot) -> tuple[Unsafe, ...]:
    """Those of the last week, newest first for each cow, also of one that is gone since: a dose, a calving or how long
    it withholds was typed later.
    """
    return tuple(_unsafe(snapshot))


def _unsafe(snapshot: Snapshot) -> Iterator[Unsafe]:
    since = snapshot.turn.begins(snapshot.farm.zone) - SAID_FOR
    for cow_id, pails in snapshot.pails.items():
        put = [pail for pail in pails if pail.fate in FOR_PEOPLE and pail.at >= since]
        withheld = withheld_of(snapshot, cow_id) if put else ()
        for pail in put:
            if held := holding(withheld, pail.when):
                yield Unsafe(cow_id, pail, held)
