"""Since when an udder fills: her last milking, or a calf that was shut away from her after it."""

from collections.abc import Sequence
from datetime import UTC, datetime
from uuid import UUID

from store.book.facts.calves import Share
from store.book.facts.milk import PastPail
from store.book.snapshot import Snapshot
from store.book.words import Apart
from store.round.where import may_be_let_in, may_be_with_her, was_put_back, where

CALF_HAD_IT = "the calf had it"
"""Why a cow was not milked: the calf was with her."""
NEVER = datetime.min.replace(tzinfo=UTC)


def sharing(snapshot: Snapshot, cow_id: UUID) -> tuple[Share, ...]:
    """Every calf that sucks a cow, and those that did until lately."""
    return tuple(each for each in (*snapshot.shares, *snapshot.shared_before) if cow_id in each.cow_ids)


def emptied_at(
    cow_id: UUID, shares: Sequence[Share], pails: Sequence[PastPail], before: datetime | None = None
) -> datetime | None:
    """Since when her udder filled, before a moment (None: up to now).

    shares: her calves, those too that share no more. pails: her milkings before that moment, newest first.
    A round in which she was not milked empties nothing. None where it is not known: no milking is recorded, the last
    one is still on paper, or a calf was not shut away, may have got out, was put back only just now, or was shut away
    or let in between two times and nobody saw when.
    """
    told = [pail for pail in pails if pail.milk_kg is not None or pail.on_paper]
    if told and told[0].on_paper:
        return None
    milked_at = told[0].at if told else NEVER
    had = max((pail.at for pail in pails if pail.typed == CALF_HAD_IT), default=NEVER)
    starts = [milked_at]
    for share in shares:
        began = share.began(cow_id)
        if began is None or before is None or began < before:
            sucked = _sucked_until(share, cow_id, before, milked_at, had)
            if sucked is None:
                return None
            starts.append(sucked)
    return None if max(starts) == NEVER else max(starts)


def _sucked_until(
    share: Share, cow_id: UUID, before: datetime | None, milked_at: datetime, had: datetime
) -> datetime | None:
    """Until when a calf may have sucked her; None: perhaps still. had: when the calf was last said to have had it."""
    ended = share.until if share.until and (before is None or share.until <= before) else None
    shut, began = where(share, cow_id, ended or before), share.began(cow_id)
    if shut is None or shut.state is not Apart.SHUT_AWAY or (before and _may_suck(share, cow_id, before)):
        return ended
    if shut.at < had <= (ended or had):
        return ended
    if began and shut.at < began:
        return NEVER
    unseen = shut.earliest < shut.at or was_put_back(share, cow_id, shut)
    return None if unseen and milked_at < shut.at else shut.at


def _may_suck(share: Share, cow_id: UUID, at: datetime) -> bool:
    return may_be_with_her(share, cow_id, at) or may_be_let_in(share, cow_id, at)
