"""Feeds, what they are told in, what soaks, and what a head is to get, as frozen values."""

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from store.book.words import Species, Water


@dataclass(frozen=True, slots=True)
class Told:
    """The measure a feed is told in: one scoop, three scoops. holds_kg None: nobody weighed it for this feed."""

    id: UUID
    name: str
    plural: str
    holds_kg: float | None
    weighed_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Feed:
    """A feed. Every weight of a soaked one is dry weight."""

    id: UUID
    name: str
    soaked: bool
    bucket: str = ""
    baled: bool = False
    in_use: bool = True
    not_for: frozenset[Species] = frozenset()


@dataclass(frozen=True, slots=True)
class SoakLimit:
    """The farm's own rule for a feed in today's air. [h; kg of water to a kg of dry feed]"""

    water: Water
    least_h: float
    most_h: float
    water_per_kg: float


@dataclass(frozen=True, slots=True)
class Substitute:
    """What replaces a soaked feed that is thrown out: kg of it for a kg dry, at most so much a head. [kg]"""

    by_id: UUID
    ratio: float
    most_kg: float | None


@dataclass(frozen=True, slots=True)
class Batch:
    """What is in the soak bucket: put to soak when, and how much. [kg]"""

    started_at: datetime
    dry_kg: float
    water_kg: float | None


@dataclass(frozen=True, slots=True)
class PlanRow:
    """What a head is to get from a moment on. [kg] None: no more of it."""

    begins_at: datetime
    due_kg: float | None


@dataclass(frozen=True, slots=True)
class Portion:
    """One feed of a feeding plan, for one head. [kg as it lies, soaked feeds dry]

    since: the plan is in force from then on. rows: its last rows and those to come, oldest first.
    """

    feed: Feed
    due_kg: float
    told: Told | None
    since: datetime | None = None
    position: int = 0
    rows: tuple[PlanRow, ...] = ()
