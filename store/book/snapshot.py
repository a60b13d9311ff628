"""What a round needs to know, as frozen values. Reading makes it, the plan is drawn from it; no row leaks out."""

from collections.abc import Iterable, Mapping
from datetime import date, datetime
from typing import TypeVar
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Subject
from store.book.facts.calves import Birth, Share
from store.book.facts.care import Look, Treatment
from store.book.facts.farm import Animal, FarmFacts, Pen, Person
from store.book.facts.feed import Batch, Feed, Portion, SoakLimit, Substitute, Told
from store.book.facts.jobs import Job
from store.book.facts.milk import Milking, PastPail, QuarterFound, Withholding
from store.book.facts.span import Span, span
from store.book.figures import FeltFigure, Figure, LookedFigure, PartedFigure, QuarterFigure
from store.book.turn import Turn
from store.book.words import Apart, Fill, Kind, Looks, State

F = TypeVar("F", bound=Figure)


class Given(Struct, frozen=True):
    """What a subject was fed the last time in this slot: the day, and kg by feed."""

    day: date
    given_kg: Mapping[UUID, float]


class Written(Struct, frozen=True):
    """An entry of this round with its figures."""

    id: UUID
    step_id: UUID
    kind: Kind
    subject: Subject
    state: State
    reason: str
    happened_at: datetime
    happened_from: datetime | None
    written_at: datetime
    person_id: UUID
    replaces_id: UUID | None
    figures: tuple[Figure, ...] = ()

    @property
    def when(self) -> Span:
        """When it happened."""
        return span(self.happened_at, self.happened_from)

    def of(self, kind: type[F]) -> tuple[F, ...]:
        """Its figures of one kind, in the order of the screen."""
        return tuple(figure for figure in self.figures if isinstance(figure, kind))

    def the(self, kind: type[F]) -> F | None:
        """Its first figure of one kind."""
        return next(iter(self.of(kind)), None)


def counting(entries: Iterable[Written]) -> dict[UUID, Written]:
    """By step_id the entry that counts: the newest by (written_at, id), in which order they come."""
    return {entry.step_id: entry for entry in entries}


class LastRound(Struct, frozen=True):
    """The last feeding round before this one in which anything was written: what it left for this one.

    between: the midday and night rounds since then in which anything was written, oldest first.
    """

    turn: Turn
    entries: tuple[Written, ...] = ()
    between: tuple["LastRound", ...] = ()

    def left(self, *states: State) -> tuple[Written, ...]:
        """What counts and is in one of some states: moved on, skipped, open."""
        return tuple(entry for entry in counting(self.entries).values() if entry.state in states)

    @property
    def with_between(self) -> tuple["LastRound", ...]:
        """Itself, then those since."""
        return (self, *self.between)

    @property
    def all_entries(self) -> tuple[Written, ...]:
        """Its own, then what was written in those since."""
        return tuple(entry for each in self.with_between for entry in each.entries)


class Snapshot(Struct, frozen=True):
    """All that the plan of one round is drawn from. Tuples stand in walking or showing order."""

    farm: FarmFacts
    turn: Turn
    people: tuple[Person, ...]
    pens: tuple[Pen, ...]
    animals: tuple[Animal, ...]
    feeds: Mapping[UUID, Feed]
    portions: Mapping[UUID, tuple[Portion, ...]]  # by animal or pen
    milkings: Mapping[UUID, Milking]  # by animal: at her turn
    jobs: tuple[Job, ...]  # of every slot
    names: Mapping[UUID, str]  # of every animal, pen, task and feed, also of those that are gone
    pen_of: Mapping[UUID, UUID]  # by task and pen: where it is
    shares: tuple[Share, ...]  # in force
    shared_before: tuple[Share, ...]  # that ended in the last weeks
    pails: Mapping[UUID, tuple[PastPail, ...]]  # by cow, also by any milked lately: earlier rounds, newest first
    quarters: Mapping[UUID, tuple[QuarterFound, ...]]  # by cow: of earlier rounds of the last weeks, newest first
    births: Mapping[UUID, Birth]  # by cow: the last one
    substitutes: Mapping[UUID, Substitute]  # by soaked feed
    withheld: Mapping[UUID, tuple[Withholding, ...]]  # by animal
    soak_limits: Mapping[UUID, SoakLimit]  # by feed
    batches: Mapping[UUID, Batch]  # by feed: what is soaking now
    portions_next: Mapping[UUID, tuple[Portion, ...]]  # of the round after this one, by animal or pen
    told: Mapping[tuple[UUID, UUID], Told]  # by measure and feed: how it is told now
    new_bags: Mapping[UUID, datetime]  # by feed: when its newest lot came
    looks: tuple[Look, ...]  # of every slot
    treatments: tuple[Treatment, ...]  # of the last years, those that are over too
    last: LastRound
    given_before: Mapping[UUID, Given]  # by animal or pen
    entries: tuple[Written, ...]  # by (written_at, id): the history too

    def counts(self) -> dict[UUID, Written]:
        """By step_id the entry of this round that counts."""
        return counting(self.entries)

    def name_of(self, subject: Subject) -> str:
        """The name of an animal, pen, feed or job; empty for the whole yard."""
        return self.names.get(subject.id, "")

    def pen_id_of(self, subject: Subject) -> UUID | None:
        """The pen of an animal, pen or task, if it has one that is in use."""
        stands = {animal.id: animal.pen_id for animal in self.animals} | dict(self.pen_of)
        pen_id = stands.get(subject.id)
        return pen_id if any(pen.id == pen_id for pen in self.pens) else None

    def told_as(self, measure_id: UUID | None, feed_id: UUID) -> Told | None:
        """How a measure tells a feed now; None: by weight."""
        return self.told.get((measure_id, feed_id)) if measure_id else None

    def heads(self, pen_id: UUID) -> tuple[Animal, ...]:
        """The animals that stand in a pen."""
        return tuple(animal for animal in self.animals if animal.pen_id == pen_id)


def found_of(entries: tuple[Written, ...]) -> tuple[Written, ...]:
    """What somebody has to know of some entries: a quarter, a calf that got out or stayed, what looks not right."""
    return tuple(entry for entry in counting(entries).values() if entry.state is State.DONE and _is_found(entry))


def _is_found(entry: Written) -> bool:
    looked, felt, parted = entry.the(LookedFigure), entry.the(FeltFigure), entry.the(PartedFigure)
    return (
        bool(entry.of(QuarterFigure))
        or (looked is not None and looked.looks is not Looks.RIGHT)
        or (felt is not None and felt.fill is Fill.TIGHT)
        or (parted is not None and parted.state in (Apart.GOT_OUT, Apart.TOGETHER))
    )


def notes_of(entries: tuple[Written, ...]) -> tuple[Written, ...]:
    """The notes among some entries that still count."""
    found = counting(entries).values()
    return tuple(entry for entry in found if entry.kind is Kind.NOTE and entry.state is State.DONE)
