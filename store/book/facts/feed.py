"""Feeds, what they are told in, what soaks, and what a head is to get, as frozen values."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.words import Species, Water


class Told(Struct, frozen=True):
    """The measure a feed is told in: one scoop, three scoops. holds_kg None: nobody weighed it for this feed."""

    id: UUID
    name: str
    plural: str
    holds_kg: float | None
    weighed_at: datetime | None = None


class Feed(Struct, frozen=True):
    """A feed. Every weight of a soaked one is dry weight."""

    id: UUID
    name: str
    soaked: bool
    bucket: str = ""
    baled: bool = False
    in_use: bool = True
    not_for: frozenset[Species] = frozenset()


class SoakLimit(Struct, frozen=True):
    """The farm's own rule for a feed in today's air. [h; kg of water to a kg of dry feed]"""

    water: Water
    least_h: float
    most_h: float
    water_per_kg: float


class Substitute(Struct, frozen=True):
    """What replaces a soaked feed that is thrown out: kg of it for a kg dry, at most so much a head. [kg]"""

    by_id: UUID
    ratio: float
    most_kg: float | None


class Batch(Struct, frozen=True):
    """What is in the soak bucket: put to soak when, and how much. [kg]"""

    started_at: datetime
    dry_kg: float
    water_kg: float | None


class PlanRow(Struct, frozen=True):
    """What a head is to get from a moment on. [kg] None: no more of it."""

    begins_at: datetime
    due_kg: float | None


class Portion(Struct, frozen=True):
    """One feed of a feeding plan, for one head. [kg as it lies, soaked feeds dry]

    since: the plan is in force from then on. rows: its last rows and those to come, oldest first.
    """

    feed: Feed
    due_kg: float
    told: Told | None
    since: datetime | None = None
    position: int = 0
    rows: tuple[PlanRow, ...] = ()
