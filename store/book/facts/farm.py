"""The farm itself, its people, pens and animals, as frozen values."""

from datetime import date, datetime
from uuid import UUID

from msgspec import Struct

from store.book.turn import Turn, from_wall
from store.book.words import Air, Dialect, Species, Stage, Units


class MilkLimits(Struct, frozen=True):
    """The farm's own limits for milk and calving, each with a starting value until it is set.

    cold_within_min: milk is cold so soon after milking; half an hour is the good standard of extension leaflets. [min]
    colostrum_milkings: milkings after a calving before any milk may go to the house; rules say 3 to 8 days by country
    (from memory), local rules decide.
    sucked_within_h: a calf should have sucked so soon: first feed within 4 h (dairy.extension.wisc.edu, colostrum). [h]
    cleansing_within_h: it should have passed so soon; keepers say 12 or 24 h. Common practice. [h]
    drop_percent: a pail so far under her usual, and under its range, asks why; 20 % is common practice. [%]
    jar_days: milk for the house is listed so long. Common practice. [d]
    """

    cold_within_min: float = 30.0
    colostrum_milkings: int = 8
    sucked_within_h: float = 4.0
    cleansing_within_h: float = 12.0
    drop_percent: float = 20.0
    jar_days: int = 4


class FarmFacts(Struct, frozen=True):
    """The farm's own settings in force. times: when its feeding rounds usually begin, by slot, as `06:30`."""

    id: UUID
    name: str
    zone: str
    units: Units
    evening_from_h: int
    meal_limit_kg: float | None
    air: Air
    vet: str
    dialect: Dialect = Dialect.BRITISH
    times: tuple[tuple[str, str], ...] = ()
    milk_limits: MilkLimits = MilkLimits()

    def round_begins(self, turn: Turn) -> datetime | None:
        """When a feeding round usually begins; None where the farm has not said it."""
        time = dict(self.times).get(turn.slot)
        return from_wall(datetime.fromisoformat(f"{turn.day}T{time}"), self.zone) if time else None

    def usually_begins(self, turn: Turn) -> datetime:
        """The same; where the farm has not said it, as is common practice."""
        return self.round_begins(turn) or turn.begins(self.zone)


class Person(Struct, frozen=True):
    """Somebody who does rounds."""

    id: UUID
    name: str
    adult: bool
    here: bool


class Pen(Struct, frozen=True):
    """A pen in use."""

    id: UUID
    name: str


class Animal(Struct, frozen=True):
    """An animal that is kept, where she stands, and the calves that share her milk."""

    id: UUID
    name: str
    tag: str
    species: Species
    stage: Stage
    born_on: date | None
    calved_on: date | None
    pen_id: UUID | None
    adult_only: bool = False
    two_people: bool = False

    def is_of_now(self, day: date) -> bool:
        """Whether a day is of her lactation of now; any is, where nobody knows when she calved."""
        return self.calved_on is None or day >= self.calved_on
