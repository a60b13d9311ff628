"""What a round needs to know, as frozen values. Reading makes it, the plan is drawn from it; no row leaks out."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from store.book.drafts import FedFigure, MilkedFigure, Subject
from store.book.turn import Turn
from store.book.words import Kind, Species, Stage, State, Units


@dataclass(frozen=True, slots=True)
class FarmFacts:
    """The farm's own settings in force."""

    id: UUID
    name: str
    zone: str
    units: Units
    evening_from_h: int


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody who does rounds."""

    id: UUID
    name: str
    here: bool


@dataclass(frozen=True, slots=True)
class Pen:
    """A pen in use."""

    id: UUID
    name: str


@dataclass(frozen=True, slots=True)
class Animal:
    """An animal that is kept, where she stands, and the calves that share her milk."""

    id: UUID
    name: str
    tag: str
    species: Species
    stage: Stage
    born_on: date | None
    calved_on: date | None
    pen_id: UUID | None
    calf_ids: tuple[UUID, ...] = ()


@dataclass(frozen=True, slots=True)
class Told:
    """The measure a feed is told in: one scoop, three scoops. holds_kg None: nobody weighed it for this feed."""

    id: UUID
    name: str
    plural: str
    holds_kg: float | None


@dataclass(frozen=True, slots=True)
class Feed:
    """A feed. Every weight of a soaked one is dry weight."""

    id: UUID
    name: str
    soaked: bool


@dataclass(frozen=True, slots=True)
class Portion:
    """One feed of a feeding plan, for one head. [kg as it lies, soaked feeds dry]"""

    feed: Feed
    due_kg: float
    told: Told | None


@dataclass(frozen=True, slots=True)
class Pail:
    """A milk pail and its weight when empty. [kg]"""

    id: UUID
    name: str
    empty_kg: float


@dataclass(frozen=True, slots=True)
class Milking:
    """A cow that is milked in this slot; her last pails of the same slot, newest first. [kg]"""

    animal_id: UUID
    pail: Pail | None
    pails_before_kg: tuple[float, ...] = ()
    last_milked_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Job:
    """A standing task of this slot."""

    id: UUID
    name: str
    pen_id: UUID | None
    closing: bool


@dataclass(frozen=True, slots=True)
class Given:
    """What a subject was fed the last time in this slot: the day, and kg by feed."""

    day: date
    given_kg: Mapping[UUID, float]


@dataclass(frozen=True, slots=True)
class Written:
    """An entry of this round with its figures."""

    id: UUID
    step_id: UUID
    kind: Kind
    subject: Subject
    state: State
    reason: str
    happened_at: datetime
    written_at: datetime
    person_id: UUID
    replaces_id: UUID | None
    fed: tuple[FedFigure, ...] = ()
    milked: MilkedFigure | None = None


@dataclass(frozen=True, slots=True)
class Snapshot:
    """All that the plan of one round is drawn from. Tuples stand in walking or showing order."""

    farm: FarmFacts
    turn: Turn
    people: tuple[Person, ...]
    pens: tuple[Pen, ...]
    animals: tuple[Animal, ...]
    feeds: Mapping[UUID, Feed]
    portions: Mapping[UUID, tuple[Portion, ...]]  # by animal or pen
    milkings: Mapping[UUID, Milking]  # by animal
    jobs: tuple[Job, ...]
    given_before: Mapping[UUID, Given]  # by animal or pen
    entries: tuple[Written, ...]  # by (written_at, id): the history too

    def counts(self) -> dict[UUID, Written]:
        """By step_id the entry that counts: the newest by (written_at, id)."""
        return {entry.step_id: entry for entry in self.entries}

    def heads(self, pen_id: UUID) -> tuple[Animal, ...]:
        """The animals that stand in a pen."""
        return tuple(animal for animal in self.animals if animal.pen_id == pen_id)
