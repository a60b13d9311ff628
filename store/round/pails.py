"""Where each pail of a round went, and what it counts as: by what was written of it and of all it was poured into.

Of milk that was poured together the strictest use counts; each cow's own yield is kept. Withheld milk is thrown away,
and so is all that it was poured into. Else a mix counts as no better than its worst part: nobody drinks what was meant
for other animals, then for calves; and what was sold or given left the farm, so that none of it is in the house.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from math import fsum
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.facts.milk import Withholding
from store.book.facts.span import Span
from store.book.figures import CooledFigure, MilkedFigure, PouredFigure
from store.book.snapshot import Snapshot, Written
from store.book.words import Fate, Kind, State
from store.round.measured import holding
from store.round.steps import MilkStep, Step
from store.round.withholding import withheld_of

STRICTER = (Fate.HOUSE, Fate.SOLD_OR_GIVEN, Fate.CALVES, Fate.OTHER_ANIMALS, Fate.THROWN_AWAY)
"""The uses of milk, each stricter than the one before."""
FOR_PEOPLE = (Fate.HOUSE, Fate.SOLD_OR_GIVEN)
Withheld = Mapping[UUID, Sequence[Withholding]]
"""By cow what withholds her milk, as far as the book knows it now."""


class Pailful(Struct, frozen=True):
    """The milk of one cow at one milking, as it was written. [kg]

    withheld: what withheld her milk then, or may have. into: the milk steps whose pails it was poured into.
    """

    step_id: UUID
    cow_id: UUID | None
    when: Span
    milk_kg: float
    fate: Fate
    withheld: Withholding | None = None
    into: tuple[UUID, ...] = ()


class Went(Struct, frozen=True):
    """A pailful, and where it went with all that it was poured together with.

    put: where somebody put it; use: what it counts as. mixed: all of it, itself among them.
    """

    pailful: Pailful
    put: Fate
    use: Fate
    mixed: tuple[Pailful, ...]

    @property
    def withheld(self) -> Withholding | None:
        """What withholds it, or some of what it was poured together with."""
        return next((each.withheld for each in self.mixed if each.withheld), None)

    @property
    def unsafe(self) -> bool:
        """It was put to people, and only now it is known that it was withheld."""
        return self.put in FOR_PEOPLE and self.withheld is not None


def went(entries: Iterable[Written], withheld: Withheld, steps: Iterable[Step] = ()) -> tuple[Went, ...]:
    """Every pail of a round. entries: those that count, in any order; the answer has their order.

    steps: of a round that is walked, so that what was poured into a pail still to come is judged by it too.
    """
    entries = tuple(entries)
    pails = tuple(pailfuls(entries, withheld))
    return mixed((*pails, *still_to_come(pails, steps)), late_fate(entries))[: len(pails)]


def still_to_come(pails: Sequence[Pailful], steps: Iterable[Step]) -> Iterator[Pailful]:
    """What others were poured into and is not written yet, where it is withheld: nothing so far, to be thrown away."""
    written = {each.step_id for each in pails}
    for step in steps:
        when = next((each.when for each in pails if step.step_id in each.into), None)
        if not isinstance(step, MilkStep) or when is None or step.step_id in written:
            continue
        if held := holding(step.withheld, when):
            yield Pailful(step.step_id, step.animal.id, when, 0.0, _least(held), held)


def late_fate(entries: Iterable[Written]) -> Fate | None:
    """What became of the milk for people of a round, where it was cold too late. None: what each pail says."""
    cooled = next((entry.the(CooledFigure) for entry in entries if _is_done(entry, Kind.COOL)), None)
    return cooled.fate if cooled else None


def pailfuls(entries: Iterable[Written], withheld: Withheld) -> Iterator[Pailful]:
    """The milkings among the entries that count. A cow that was not milked has no pail."""
    for entry in entries:
        figure, cow_id, when = entry.the(MilkedFigure), entry.subject.animal_id, entry.when
        if not _is_done(entry, Kind.MILK) or figure is None or figure.milk_kg is None or figure.fate is None:
            continue
        into = tuple(each.into_step_id for each in entry.of(PouredFigure))
        held = holding(withheld.get(cow_id, ()), when) if cow_id else None
        yield Pailful(entry.step_id, cow_id, when, figure.milk_kg, figure.fate, held, into)


def withheld_in(snapshot: Snapshot, steps: Iterable[Step]) -> Withheld:
    """What withholds milk in a round, also of a cow that is no longer to be milked."""
    written = {entry.subject.animal_id for entry in snapshot.entries if entry.kind is Kind.MILK}
    gone = {cow_id: withheld_of(snapshot, cow_id) for cow_id in written if cow_id}
    return gone | {step.animal.id: step.withheld for step in steps if isinstance(step, MilkStep)}


def mixed(pails: Sequence[Pailful], cooled: Fate | None = None) -> tuple[Went, ...]:
    """Where pailfuls went. cooled: what became of the milk for people, where it was cold too late."""
    found = {each.step_id: _went(each, mix, cooled) for mix in groups(pails) for each in mix}
    return tuple(found[each.step_id] for each in pails)


def groups(pails: Sequence[Pailful]) -> tuple[tuple[Pailful, ...], ...]:
    """The pailfuls that were poured together, also by way of a third pail, or of one that is no longer written."""
    group: dict[UUID, frozenset[UUID]] = {}
    for each in pails:
        step_ids = (each.step_id, *each.into)
        joined = frozenset(step_ids).union(*(group.get(step_id, ()) for step_id in step_ids))
        group |= dict.fromkeys(joined, joined)
    wholes = dict.fromkeys(group[each.step_id] for each in pails)
    return tuple(tuple(each for each in pails if each.step_id in whole) for whole in wholes)


def poured(draft: Draft, into: Iterable[UUID]) -> Draft:
    """The draft of a milking whose pail was poured into those of other milk steps."""
    return replace(draft, figures=(*draft.figures, *map(PouredFigure, into)))


def by_use(pails: Iterable[Went]) -> dict[Fate, float]:
    """The milk of each use that any milk went to; each pail counts once, so they add up to all of it. [kg]"""
    pails = tuple(pails)
    kg = {use: [each.pailful.milk_kg for each in pails if each.use is use] for use in Fate}
    return {use: fsum(each) for use, each in kg.items() if each}


def _went(pailful: Pailful, mix: tuple[Pailful, ...], cooled: Fate | None) -> Went:
    put = strictest(each.fate for each in mix)
    if cooled and put in FOR_PEOPLE:
        put = strictest((put, cooled))
    return Went(pailful, put, strictest((put, *(_least(each.withheld) for each in mix if each.withheld))), mix)


def _least(withheld: Withholding) -> Fate:
    """The best use of withheld milk."""
    return Fate.CALVES if withheld.to_calves else Fate.THROWN_AWAY


def strictest(fates: Iterable[Fate]) -> Fate:
    """Of some uses the strictest. Raises ValueError for none."""
    return max(fates, key=STRICTER.index)


def _is_done(entry: Written, kind: Kind) -> bool:
    return entry.kind is kind and entry.state is State.DONE
