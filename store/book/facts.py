"""What changes slowly, as frozen values: farm, people, pens, animals, feeds, measures, rules. No row leaks out."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from uuid import UUID

from store.book.figures import LookedFigure
from store.book.turn import Turn
from store.book.words import (
    EVERY_NIGHT,
    Air,
    Apart,
    Asks,
    Dialect,
    Fate,
    Quarter,
    SaidBy,
    Sign,
    Species,
    Stage,
    Units,
    Water,
)


@dataclass(frozen=True, slots=True)
class MilkLimits:
    """The farm's own limits for milk and calving, each with a starting value until it is set.

    cold_within_min: milk is cold so soon after milking; half an hour is the good standard of extension leaflets. [min]
    colostrum_milkings: milkings after a calving before any milk may go to the house; rules say 3 to 8 days by country
    (from memory), local rules decide.
    sucked_within_h: a calf should have sucked so soon: first feed within 4 h (dairy.extension.wisc.edu, colostrum). [h]
    cleansing_within_h: it should have passed so soon; keepers say 12 or 24 h. Common practice. [h]
    drop_percent: a pail so far under her usual asks why; 20 % is common practice. [%]
    jar_days: milk for the house is listed so long. Common practice. [d]
    """

    cold_within_min: float = 30.0
    colostrum_milkings: int = 8
    sucked_within_h: float = 4.0
    cleansing_within_h: float = 12.0
    drop_percent: float = 20.0
    jar_days: int = 4


@dataclass(frozen=True, slots=True)
class FarmFacts:
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


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody who does rounds."""

    id: UUID
    name: str
    adult: bool
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
    adult_only: bool = False
    two_people: bool = False


@dataclass(frozen=True, slots=True)
class Parting:
    """A calf was shut away, let in, or had got out: when (between since and at), and which. None: it is on paper.

    cow_id: which cow it was let in to, or found with. why: as somebody typed or picked it.
    """

    state: Apart | None
    at: datetime
    since: datetime | None
    cow_id: UUID | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class ApartRule:
    """When a calf is shut away: so many hours until the next milking, from a day of its life on, in which nights.

    nights: `1` or `0` for each night from Monday's on. [h, d]
    """

    apart_h: float = 12.0
    from_day: int = 0
    nights: str = EVERY_NIGHT


@dataclass(frozen=True, slots=True)
class Share:
    """A calf and the cow it shares: the farm's longest time apart [h], and what was written of it, newest first.

    since, until: from when to when they share; until None: they still do. second_cow_id: it sucks her too.
    rule: when it is shut away; None: the farm has not said it.
    """

    cow_id: UUID
    calf_id: UUID
    longest_h: float
    partings: tuple[Parting, ...] = ()
    since: datetime | None = None
    until: datetime | None = None
    second_cow_id: UUID | None = None
    rule: ApartRule | None = None

    @property
    def cow_ids(self) -> tuple[UUID, ...]:
        """Every cow that it sucks."""
        return (self.cow_id,) if self.second_cow_id is None else (self.cow_id, self.second_cow_id)


@dataclass(frozen=True, slots=True)
class Withholding:
    """Her milk is withheld from a moment on; until None: until further notice."""

    since: datetime
    until: datetime | None
    why: str

    def holds_at(self, at: datetime) -> bool:
        """Whether a milking at this moment is withheld, to the minute."""
        return self.since <= at and (self.until is None or at < self.until)


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


@dataclass(frozen=True, slots=True)
class Pail:
    """A milk pail and its weight when empty. [kg]"""

    id: UUID
    name: str
    empty_kg: float


@dataclass(frozen=True, slots=True)
class PastPail:
    """A milking of an earlier round. [kg] milk_kg None: not milked, or still on paper. whole: she was milked out."""

    at: datetime
    milk_kg: float | None
    held_back: bool
    on_paper: bool = False
    whole: bool = True
    turn: Turn | None = None
    fate: Fate | None = None
    typed: str = ""
    step_id: UUID | None = None


@dataclass(frozen=True, slots=True)
class Milking:
    """A cow that is milked in this slot; her pails of earlier rounds, newest first.

    every: 1, each planned milking; 2, every other one.
    """

    animal_id: UUID
    pail: Pail | None
    pails_before: tuple[PastPail, ...] = ()
    every: int = 1


@dataclass(frozen=True, slots=True)
class QuarterFound:
    """What was found at a quarter in an earlier round."""

    quarter: Quarter
    sign: Sign
    at: datetime
    turn: Turn


@dataclass(frozen=True, slots=True)
class Birth:
    """A calving, between two moments (since None: at one). calves: those that are kept, and whether alive."""

    since: datetime | None
    at: datetime
    calves: tuple[tuple[UUID | None, bool], ...] = ()

    @property
    def earliest(self) -> datetime:
        """The earliest moment at which it can have been."""
        return self.since or self.at


@dataclass(frozen=True, slots=True)
class LastLook:
    """What a look found the last time it was done."""

    day: date
    found: LookedFigure


@dataclass(frozen=True, slots=True)
class Look:
    """Something that is looked at on an animal, in a slot, every so many days. until_on: the last day."""

    id: UUID
    animal_id: UUID
    name: str
    asks: Asks
    slot: str
    every_days: int
    until_on: date | None
    last: LastLook | None = None


@dataclass(frozen=True, slots=True)
class Withdrawal:
    """How long milk and meat are withheld after the last dose, as typed. None: not known yet. [h, milkings, d]

    dry_days, calved_h, calved_milkings: of a dry-cow product, the least days to calving and how long from calving on.
    """

    milk_h: float | None = None
    milkings: int | None = None
    meat_days: float | None = None
    dry_days: float | None = None
    calved_h: float | None = None
    calved_milkings: int | None = None
    said_by: SaidBy | None = None


@dataclass(frozen=True, slots=True)
class Treatment:
    """A treatment of the last year, as label or vet has it. given_at: its doses before this round, newest first. [h]

    in_use: False once it was ended. withdrawal None: nobody has typed any of it.
    """

    id: UUID
    animal_id: UUID
    product: str
    amount: str
    route: str
    why: str
    batch: str
    doses: int
    every_h: float
    first_at: datetime
    given_at: tuple[datetime, ...] = ()
    in_use: bool = True
    withdrawal: Withdrawal | None = None


@dataclass(frozen=True, slots=True)
class Due:
    """When a job comes, since a day. season: its first and last day as `MM-DD`; it may go over the end of a year.

    once: until it is done, from its first day on. until_on: the last day. stage: only while such an animal is there.
    """

    since: date | None = None
    every_days: int = 1
    once: bool = False
    until_on: date | None = None
    season: tuple[str, str] | None = None
    stage: Stage | None = None

    @property
    def looks_back(self) -> bool:
        """Whether it matters when the job was done last."""
        return self.once or self.every_days > 1

    def comes_on(self, day: date) -> bool:
        """Whether a day is within its season, and not past its last day."""
        return (self.until_on is None or day <= self.until_on) and (self.season is None or self._in_season(day))

    def _in_season(self, day: date) -> bool:
        first, last = self.season or ("", "")
        here = f"{day:%m-%d}"
        return first <= here <= last if first <= last else here >= first or here <= last

    def day_of_season(self, day: date) -> int | None:
        """The how-manieth day of its season a day within it is; None without a season."""
        if self.season is None:
            return None
        month, of_month = map(int, self.season[0].split("-"))
        year = day.year if self.season[0] <= f"{day:%m-%d}" else day.year - 1
        return (day - date(year, month, 1) - timedelta(days=of_month - 1)).days + 1


EVERY_DAY = Due()


@dataclass(frozen=True, slots=True)
class Job:
    """A standing task of a slot. last_on: when it was done last before this round, where that matters."""

    id: UUID
    name: str
    pen_id: UUID | None
    closing: bool
    slot: str = ""
    adult_only: bool = False
    two_people: bool = False
    due: Due = EVERY_DAY
    last_on: date | None = None
