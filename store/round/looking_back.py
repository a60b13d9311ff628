"""A cow's milkings, newest first, this round's among them: what the screen looks back at."""

from collections.abc import Iterator, Sequence
from itertools import islice
from statistics import fmean
from uuid import UUID

from msgspec import Struct

from store.book.facts.milk import PastPail
from store.book.figures import DrawnFigure, MilkedFigure
from store.book.snapshot import Snapshot, Written
from store.book.words import Kind, State
from store.husbandry.milk.udder import ESTIMATE_MOST_H, HOURS_A_DAY, filled_h
from store.husbandry.milk.usual import FEWEST_PAILS, MOST_PAILS, usual_rate
from store.round.emptied import sharing
from store.round.timed import TimedPail, rates_kg_h, timed_pails

NEWEST = 3
"""So many of her newest pails are set against those before them. Common practice: three to five."""


class LookBack(Struct, frozen=True):
    """What is known of her milkings, newest first."""

    pails: tuple[TimedPail, ...]

    def usual_kg_h(self, of: TimedPail) -> tuple[float, float, float] | None:
        """Least, middle, most of what was usual before a pail, by hours at full rate; None: too few compared. [kg/h]

        The pail itself is not in it: a drop would widen the usual that it is set against.
        """
        before = (each for each in self.pails if each.pail.at < of.pail.at and not each.why_not)
        return usual_rate(tuple(rates_kg_h(islice(before, MOST_PAILS))))

    @property
    def day_kg(self) -> float | None:
        """What she gives in 24 h, the mean of the last that compare; None: none does. [kg]"""
        rates = [each.kg_h for each in self.compared if each.kg_h is not None]
        return HOURS_A_DAY * fmean(rates) if rates else None

    @property
    def compared(self) -> tuple[TimedPail, ...]:
        """The last that compare: what her usual is drawn from."""
        return tuple(islice((each for each in self.pails if not each.why_not), MOST_PAILS))

    @property
    def trend_percent(self) -> float | None:
        """By how much her newest pails that compare lie over those before, below zero under; None: too few. [%]"""
        rates = tuple(rates_kg_h(iter(self.pails)))
        newest, before = rates[:NEWEST], rates[NEWEST : NEWEST + MOST_PAILS]
        if len(newest) < NEWEST or len(before) < FEWEST_PAILS or not any(before):
            return None
        return 100 * (fmean(newest) / fmean(before) - 1)

    def percent(self, of: TimedPail) -> float | None:
        """A pail against her usual middle for its hours, also one that does not compare; None: not known. [%]"""
        kg, elapsed_h, usual = of.pail.milk_kg, of.elapsed_h, self.usual_kg_h(of)
        if kg is None or elapsed_h is None or elapsed_h > ESTIMATE_MOST_H or usual is None or not usual[1]:
            return None
        return 100 * kg / (usual[1] * filled_h(elapsed_h))

    def held_back(self, of: int) -> int:
        """How many of her last so many pails she held back."""
        weighed = [each.pail for each in self.pails if each.pail.milk_kg is not None]
        return sum(pail.held_back for pail in weighed[:of])


def looking_back(snapshot: Snapshot, cow_id: UUID) -> LookBack:
    """Every milking of a cow that the snapshot holds."""
    pails: Sequence[PastPail] = (*_of_this_round(snapshot, cow_id), *snapshot.pails.get(cow_id, ()))
    newest_first = sorted(pails, key=lambda pail: pail.at, reverse=True)
    return LookBack(tuple(timed_pails(cow_id, sharing(snapshot, cow_id), newest_first)))


def _of_this_round(snapshot: Snapshot, cow_id: UUID) -> Iterator[PastPail]:
    for entry in snapshot.counts().values():
        if entry.kind is Kind.MILK and entry.subject.animal_id == cow_id and entry.state is State.DONE:
            yield _pail(snapshot, entry)


def _pail(snapshot: Snapshot, entry: Written) -> PastPail:
    """A milking of this round, as the next one will read it."""
    milked = entry.the(MilkedFigure) or MilkedFigure(None)
    drawn = entry.the(DrawnFigure) or DrawnFigure()
    return PastPail(
        entry.happened_at, milked.milk_kg, milked.held_back, whole=drawn.whole, turn=snapshot.turn, fate=milked.fate,
        typed=milked.typed, step_id=entry.step_id,
    )  # fmt: skip
