"""Whose meat is withheld: by her own treatments, and of a calf that sucks a treated cow, who takes the drug too."""

from collections.abc import Iterator
from datetime import datetime
from uuid import UUID

from store.book.facts.milk import Withholding
from store.book.facts.span import span
from store.book.snapshot import Snapshot
from store.round.measured import holding
from store.round.unwritten import unwritten
from store.round.withdrawal import meat_withheld
from store.round.withholding import doses_given, withheld_of


def meat_withheld_of(snapshot: Snapshot, animal_id: UUID) -> tuple[Withholding, ...]:
    """All that withholds an animal's meat. How long it does of a sucking calf nobody can reckon: the vet decides."""
    return (*_own(snapshot, animal_id), *_by_sucking(snapshot, animal_id))


def meat_until(snapshot: Snapshot, animal_id: UUID, at: datetime) -> Withholding | None:
    """What withholds its meat at a moment, the strictest; None where nothing does."""
    return holding(meat_withheld_of(snapshot, animal_id), span(at))


def sucks_treated(snapshot: Snapshot, cow_id: UUID, at: datetime) -> Withholding | None:
    """What a calf takes that sucks her at a moment: colostrum is its own."""
    found = (*withheld_of(snapshot, cow_id), *_own(snapshot, cow_id))
    return holding([each for each in found if not each.to_calves], span(at))


def _own(snapshot: Snapshot, animal_id: UUID) -> Iterator[Withholding]:
    for each in snapshot.treatments:
        if each.animal_id == animal_id and not (each.withdrawal and each.withdrawal.meat_days == 0):
            given = doses_given(snapshot, each)
            found = meat_withheld(each, given, snapshot.farm.zone), unwritten(snapshot, each, given)
            yield from filter(None, found)


def _by_sucking(snapshot: Snapshot, calf_id: UUID) -> Iterator[Withholding]:
    round_ends = snapshot.turn.ends(snapshot.farm.zone, snapshot.farm.evening_from_h)
    for share in (*snapshot.shares, *snapshot.shared_before):
        sucked_until = share.until or round_ends
        for cow_id in share.cow_ids if share.calf_id == calf_id else ():
            treated = sucks_treated(snapshot, cow_id, sucked_until)
            if treated and treated.holds_at(round_ends):
                verb = "sucked" if share.until else "sucks"
                why = f"it {verb} {snapshot.names.get(cow_id, 'a cow')}, who is treated: your vet decides how long"
                yield Withholding(treated.since, None, why)
