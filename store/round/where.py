"""Where a calf is as to each cow that it sucks, as far as the book says, in whatever order it was typed."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from uuid import UUID

from msgspec.structs import replace

from store.book.facts.calves import Parting, Share
from store.book.words import Apart

WITH_HER = (Apart.LET_IN, Apart.TOGETHER)
AT_ONE_MOMENT = (Apart.GOT_OUT, Apart.SHUT_AWAY, Apart.LET_IN, Apart.TOGETHER, None)
"""Of what is written for one moment: found, put back, let in; what is still on paper last."""
PUT_BACK = timedelta(hours=1)
"""A calf that is shut away so soon after it was found was put back; it did not stay to empty her. Common practice."""


def where(share: Share, cow_id: UUID, before: datetime | None = None) -> Parting | None:
    """Where the calf was as to one of its cows, before a moment (None: up to now); None: not known.

    Shut away with a cow_id: it is with that other cow. A state of None: what was done is still on paper.
    """
    seen = None
    for each in _in_order(share, before):
        seen = _then(seen, each, cow_id) if _says(share, cow_id, each) else None
    return seen


def may_be_with_her(share: Share, cow_id: UUID, at: datetime) -> bool:
    """Whether the calf may have been out at a moment: found out later, not seen apart since before."""
    return any(since < at <= found for since, found in _out(share, cow_id))


def may_be_let_in(share: Share, cow_id: UUID, at: datetime) -> bool:
    """Whether it may have been let in to her by a moment: between two times, of which only the later lies behind it."""
    let_in = (each for each in share.partings if each.state in WITH_HER and each.cow_id in (None, cow_id))
    return any(each.earliest < at <= each.at for each in let_in)


def was_put_back(share: Share, cow_id: UUID, shut: Parting) -> bool:
    """Whether the calf was shut away right behind being found: it sucked, but how much nobody knows."""
    return any(found <= shut.at <= found + PUT_BACK for _, found in _out(share, cow_id))


def last_seen_apart(share: Share, before: datetime | None = None) -> datetime | None:
    """When the calf was last written down as shut away, before a moment (None: up to now); None: let in since."""
    seen = None
    for each in _in_order(share, before):
        seen = each.at if each.state is Apart.SHUT_AWAY else None if each.state in WITH_HER else seen
    return seen


def _in_order(share: Share, before: datetime | None) -> list[Parting]:
    """What was written before a moment, oldest first."""
    found = (each for each in share.partings if before is None or each.at < before)
    return sorted(found, key=lambda each: (each.at, AT_ONE_MOMENT.index(each.state)))


def _says(share: Share, cow_id: UUID, each: Parting) -> bool:
    """What was written before they shared says nothing of this cow, but that the calf was shut away."""
    began = share.began(cow_id)
    return began is None or each.at >= began or each.state is Apart.SHUT_AWAY


def _then(seen: Parting | None, each: Parting, cow_id: UUID) -> Parting:
    """Where it is as to a cow after one more thing; let in to another cow, it is apart from this one."""
    apart = seen if seen and seen.state is Apart.SHUT_AWAY else None
    if each.state in WITH_HER and each.cow_id not in (None, cow_id):
        return replace(apart or Parting(Apart.SHUT_AWAY, each.at, each.since), cow_id=each.cow_id)
    if each.state is not Apart.SHUT_AWAY:
        return each
    from_another = apart if apart and apart.cow_id else None
    return replace(from_another or each, cow_id=None)


def _out(share: Share, cow_id: UUID) -> Iterator[tuple[datetime, datetime]]:
    """Between when and when the calf got out, each time; without a word of it, since what was written before."""
    before = None
    for each in _in_order(share, None):
        if each.state is Apart.GOT_OUT and _says(share, cow_id, each):
            yield each.since or (before.at if before else each.at), each.at
        before = each
