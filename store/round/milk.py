"""Milk steps: one for each cow that is milked in this slot, and since when her udder fills."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts.calves import Parting, Share
from store.book.facts.farm import Animal
from store.book.facts.milk import PastPail
from store.book.figures import QuarterFigure
from store.book.snapshot import Written
from store.book.words import Apart, Kind, Quarter, Sign, State
from store.round.apart import shared_calves
from store.round.planning import Planning
from store.round.steps import MilkStep

COMPARED = 7
"""Pails that the usual range is drawn from."""


def animal_milk(planning: Planning, animal: Animal, place: str) -> Iterator[MilkStep]:
    """The step of a cow that is milked now."""
    snapshot = planning.snapshot
    milking = snapshot.milkings.get(animal.id)
    if milking is None:
        return
    shares = tuple(share for share in snapshot.shares if share.cow_id == animal.id)
    pails = milking.pails_before
    yield MilkStep(
        *planning.head(Kind.MILK, Subject(animal_id=animal.id), animal.name, place),
        animal=animal,
        calves=shared_calves(planning, animal),
        milking=milking,
        emptied_at=emptied_at(shares, pails, None),
        rates_kg_h=tuple(_rates(shares, pails))[:COMPARED],
        withheld=snapshot.withheld.get(animal.id, ()),
        marked=marked(planning.counts.values(), animal.id),
    )


def marked(entries: Iterable[Written], cow_id: UUID) -> tuple[QuarterFigure, ...]:
    """Her quarters that are not right, each as it was found last. entries: those that count, in the order written."""
    found: dict[Quarter, QuarterFigure] = {}
    for entry in sorted(entries, key=lambda entry: (entry.happened_at, entry.id)):
        if entry.subject.animal_id == cow_id and entry.state is State.DONE:
            found |= {figure.quarter: figure for figure in entry.of(QuarterFigure)}
    return tuple(figure for figure in found.values() if figure.sign is not Sign.CLEAR)


def emptied_at(shares: Sequence[Share], pails: Sequence[PastPail], before: datetime | None) -> datetime | None:
    """Since when the udder filled, before a moment (None: up to now): her last milking, or a calf shut away after it.

    A round in which she was not milked empties nothing. None where it is not known: no milking is recorded, the last
    one is still on paper, or a calf was not shut away.
    """
    pails = [pail for pail in pails if pail.milk_kg is not None or pail.on_paper]
    if pails and pails[0].on_paper:
        return None
    starts = [pail.at for pail in pails[:1]]
    for share in shares:
        last = next((each for each in share.partings if before is None or each.at < before), None)
        if before is not None and any(_was_out(each, before) for each in share.partings):
            return None
        if last is None or last.state is not Apart.SHUT_AWAY:
            return None
        starts.append(last.at)
    return max(starts, default=None)


def _was_out(parting: Parting, at: datetime) -> bool:
    """Whether the calf may have been with her at a moment: found out later, not seen apart since before."""
    out = parting.state is Apart.GOT_OUT and parting.since is not None
    return out and parting.since is not None and parting.since < at <= parting.at


def _rates(shares: Sequence[Share], pails: Sequence[PastPail]) -> Iterator[float]:
    """Kilograms an hour of each earlier pail that can be compared, newest first. [kg/h]"""
    for at, pail in enumerate(pails):
        start = emptied_at(shares, pails[at + 1 :], pail.at)
        if start is not None and pail.milk_kg is not None and not pail.held_back and pail.at > start:
            yield pail.milk_kg / ((pail.at - start).total_seconds() / 3600)
