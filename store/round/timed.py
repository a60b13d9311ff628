"""A pail with the hours that it filled, and whether it can be compared with others of hers."""

from collections.abc import Iterator, Sequence
from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.facts.calves import Share
from store.book.facts.milk import PastPail
from store.book.words import Apart
from store.husbandry.milk.ends import an_hour_kg
from store.husbandry.milk.udder import ESTIMATE_MOST_H, filled_h
from store.round.emptied import emptied_at
from store.round.where import may_be_with_her, was_put_back, where

PART, HELD_BACK = "not milked out", "held back"
GOT_OUT, NOT_KNOWN, TOO_LONG = "calf had got out", "hours not known", "over 24 h"
LEFT_IN = "some was in her before"
NOT_MILKED, ON_PAPER = "not milked", "on paper"


class TimedPail(Struct, frozen=True):
    """One milking. emptied_at: since when she filled, None where that is not known. why_not: empty, it compares."""

    pail: PastPail
    emptied_at: datetime | None
    why_not: str

    @property
    def elapsed_h(self) -> float | None:
        """Hours since she was emptied; None where that is not known. [h]"""
        if self.emptied_at is None or self.emptied_at >= self.pail.at:
            return None
        return (self.pail.at - self.emptied_at).total_seconds() / 3600

    @property
    def kg_h(self) -> float | None:
        """By the hours that passed, on whatever clock. [kg/h]"""
        kg, elapsed_h = self.pail.milk_kg, self.elapsed_h
        return None if kg is None or elapsed_h is None else an_hour_kg(kg, elapsed_h)

    @property
    def full_rate_kg_h(self) -> float | None:
        """By the hours at full rate: what is compared. None where it cannot be. [kg/h]"""
        kg, elapsed_h = self.pail.milk_kg, self.elapsed_h
        return None if self.why_not or kg is None or elapsed_h is None else an_hour_kg(kg, filled_h(elapsed_h))


def timed_pails(cow_id: UUID, shares: Sequence[Share], pails: Sequence[PastPail]) -> Iterator[TimedPail]:
    """Each of a cow's milkings with the hours that it filled, newest first. shares: her calves."""
    for at, pail in enumerate(pails):
        before = pails[at + 1 :]
        start = emptied_at(cow_id, shares, before, pail.at)
        yield timed(pail, start, before, got_out=found_out(cow_id, shares, pail.at))


def rates_kg_h(timed: Iterator[TimedPail]) -> Iterator[float]:
    """Those that can be compared, by their hours at full rate, newest first. [kg/h]"""
    found = (each.full_rate_kg_h for each in timed)
    return (rate for rate in found if rate is not None)


def timed(pail: PastPail, start: datetime | None, before: Sequence[PastPail], *, got_out: bool) -> TimedPail:
    """One of a cow's pails. start: since when she filled. before: her pails before it, newest first."""
    return TimedPail(pail, start, _why_not(TimedPail(pail, start, ""), before, got_out=got_out))


def found_out(cow_id: UUID, shares: Sequence[Share], at: datetime) -> bool:
    """Whether a calf had got out to her by a moment, as far as is known now."""
    return any(may_be_with_her(share, cow_id, at) or was_out(share, cow_id, at) for share in shares)


def was_out(share: Share, cow_id: UUID, before: datetime | None = None) -> bool:
    """Whether a calf got out to a cow last, before a moment (None: up to now), also where it was put back then."""
    last = where(share, cow_id, before)
    return last is not None and (last.state is Apart.GOT_OUT or was_put_back(share, cow_id, last))


def _why_not(found: TimedPail, before: Sequence[PastPail], *, got_out: bool) -> str:
    """Why a pail says nothing of how much she gives; empty: it does."""
    pail, elapsed_h = found.pail, found.elapsed_h
    if pail.milk_kg is None:
        return ON_PAPER if pail.on_paper else NOT_MILKED
    if not pail.whole:
        return PART
    if pail.held_back:
        return HELD_BACK
    if elapsed_h is None:
        return GOT_OUT if got_out else NOT_KNOWN
    if elapsed_h > ESTIMATE_MOST_H:
        return TOO_LONG
    return LEFT_IN if _left_in(before, found.emptied_at) else ""


def _left_in(before: Sequence[PastPail], start: datetime | None) -> bool:
    """Whether the milking that she fills since left milk in her; a calf that was with her in between took it."""
    last = next((pail for pail in before if pail.milk_kg is not None), None)
    return last is not None and last.at == start and (last.held_back or not last.whole)
