"""Since when an udder fills: her last milking, or a calf that was shut away from her after it."""

from collections.abc import Sequence
from datetime import UTC, datetime
from uuid import UUID

from store.book.facts.calves import Share
from store.book.facts.milk import PastPail
from store.book.snapshot import Snapshot
from store.book.words import Apart
from store.round.where import may_be_with_her, was_put_back, where

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
    one is still on paper, or a calf was not shut away, may have got out, or was put back only just now.
    """
    told = [pail for pail in pails if pail.milk_kg is not None or pail.on_paper]
    if told and told[0].on_paper:
        return None
    milked_at = told[0].at if told else NEVER
    had = max((pail.at for pail in pails if pail.typed == CALF_HAD_IT), default=NEVER)
    starts = [milked_at]
    for share in shares:
        if share.since is None or before is None or share.since < before:
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
    shut = where(share, cow_id, ended or before)
    if shut is None or shut.state is not Apart.SHUT_AWAY or (before and may_be_with_her(share, before)):
        return ended
    if shut.at < had <= (ended or had) or (was_put_back(share, shut) and milked_at < shut.at):
        return ended
    return shut.at if share.since is None or shut.at >= share.since else NEVER
