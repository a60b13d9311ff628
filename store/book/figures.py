"""The figures of an entry: what was measured or found, as plain frozen values. One class for each table of lines.

The fields of a figure are the columns of its table, so that reading and writing need no code for a new kind.
Weights are kilograms as it lies, soaked feeds dry.
"""

from datetime import datetime
from typing import ClassVar
from uuid import UUID

from msgspec import Struct

from store.book.words import Apart, Fate, Fill, Looks, Quarter, Sign, Soak


class FedFigure(Struct, frozen=True):
    """One feed: due, given, and what was left of it. given_kg None: not given. [kg]"""

    TABLE: ClassVar[str] = "fed"

    feed_id: UUID
    measure_id: UUID | None
    due_kg: float | None
    given_kg: float | None
    typed: str = ""
    left_kg: float | None = None


class StrungFigure(Struct, frozen=True):
    """Strings or nets taken off what was fed, and into the bin."""

    TABLE: ClassVar[str] = "strung"

    strings: int


class MilkedFigure(Struct, frozen=True):
    """One milking. milk_kg None: not milked. [kg] held_back: she did not let all of it down."""

    TABLE: ClassVar[str] = "milked"

    milk_kg: float | None
    gross_kg: float | None = None
    pail_id: UUID | None = None
    empty_kg: float | None = None
    fate: Fate | None = None
    typed: str = ""
    held_back: bool = False


class DrawnFigure(Struct, frozen=True):
    """How a cow was milked, where that was not as usual. whole: she was milked out."""

    TABLE: ClassVar[str] = "drawn"

    whole: bool = True
    by_hand: bool = False


class PouredFigure(Struct, frozen=True):
    """A pail was poured together with the pail of another milk step of its round."""

    TABLE: ClassVar[str] = "poured"

    into_step_id: UUID


class CooledFigure(Struct, frozen=True):
    """The milk of a round is in ice. fate: what became of it, where it was late; None: what each pail says."""

    TABLE: ClassVar[str] = "cooled"

    fate: Fate | None = None


class CountedFigure(Struct, frozen=True):
    """Heads expected in a pen, and seen. heads_seen None: not counted."""

    TABLE: ClassVar[str] = "counted"

    heads_due: int
    heads_seen: int | None

    @property
    def missing(self) -> int:
        """Heads that were looked for and not found; 0 where nobody counted."""
        return 0 if self.heads_seen is None else max(self.heads_due - self.heads_seen, 0)


class SoakedFigure(Struct, frozen=True):
    """A batch of soaked feed: put to soak, found fit, or thrown out. Water in kg. dry_kg None: not put to soak."""

    TABLE: ClassVar[str] = "soaked"

    act: Soak
    due_kg: float | None
    dry_kg: float | None
    water_kg: float | None = None
    typed: str = ""


class PartedFigure(Struct, frozen=True):
    """A calf and the cow it shares: shut away, let in, or found to have got out."""

    TABLE: ClassVar[str] = "parted"

    cow_id: UUID
    state: Apart


class FeltFigure(Struct, frozen=True):
    """An udder as it was felt."""

    TABLE: ClassVar[str] = "felt"

    fill: Fill


class QuarterFigure(Struct, frozen=True):
    """What was found at one quarter of an udder."""

    TABLE: ClassVar[str] = "quarter"

    quarter: Quarter
    sign: Sign


class LookedFigure(Struct, frozen=True):
    """What a look that was due found. All None: not looked. [condition points, cm, degrees C]"""

    TABLE: ClassVar[str] = "looked"

    look_id: UUID
    looks: Looks | None = None
    condition_points: float | None = None
    girth_cm: float | None = None
    temperature_c: float | None = None
    typed: str = ""


class DosedFigure(Struct, frozen=True):
    """The how-manieth dose of a treatment: given, or due and not given."""

    TABLE: ClassVar[str] = "dosed"

    treatment_id: UUID
    number: int
    given: bool


class NotedFigure(Struct, frozen=True):
    """Words of the keeper. tell: the next person must see them before beginning."""

    TABLE: ClassVar[str] = "noted"

    words: str
    tell: bool = False


class DeliveredFigure(Struct, frozen=True):
    """What came into the feed room; the price of all of it, in the farm's own money. None: not known. [kg]"""

    TABLE: ClassVar[str] = "delivered"

    kg: float
    bags: int | None = None
    price: float | None = None
    lot: str = ""
    typed: str = ""


class StockedFigure(Struct, frozen=True):
    """What was really there of a feed. [kg]"""

    TABLE: ClassVar[str] = "stocked"

    kg: float
    typed: str = ""


class LostFigure(Struct, frozen=True):
    """Feed that no animal ate. [kg]"""

    TABLE: ClassVar[str] = "lost"

    kg: float
    why: str = ""
    typed: str = ""


class ForecastFigure(Struct, frozen=True):
    """The weather to come: the lowest of the night, the wind. [degrees C, km/h]"""

    TABLE: ClassVar[str] = "forecast"

    low_c: float
    wind_kmh: float | None = None
    wet: bool = False


class BornFigure(Struct, frozen=True):
    """What a cow has borne. calf_id None: nothing that is kept."""

    TABLE: ClassVar[str] = "born"

    calf_id: UUID | None
    alive: bool = True


class WatchedFigure(Struct, frozen=True):
    """Something to be looked at again: when, or between when and when; due_at None: no more. looks: how it was."""

    TABLE: ClassVar[str] = "watched"

    words: str
    due_at: datetime | None
    due_until: datetime | None = None
    looks: Looks | None = None


class UsedUpFigure(Struct, frozen=True):
    """The milk of a milk step is used up."""

    TABLE: ClassVar[str] = "used_up"

    of_step_id: UUID


Figure = (
    FedFigure
    | StrungFigure
    | MilkedFigure
    | DrawnFigure
    | PouredFigure
    | CooledFigure
    | CountedFigure
    | SoakedFigure
    | PartedFigure
    | FeltFigure
    | QuarterFigure
    | LookedFigure
    | DosedFigure
    | NotedFigure
    | DeliveredFigure
    | StockedFigure
    | LostFigure
    | ForecastFigure
    | BornFigure
    | WatchedFigure
    | UsedUpFigure
)

FIGURES: tuple[type[Figure], ...] = (
    FedFigure,
    StrungFigure,
    MilkedFigure,
    DrawnFigure,
    PouredFigure,
    CooledFigure,
    CountedFigure,
    SoakedFigure,
    PartedFigure,
    FeltFigure,
    QuarterFigure,
    LookedFigure,
    DosedFigure,
    NotedFigure,
)
"""What the entries of a round hold."""
OUTSIDE: tuple[type[Figure], ...] = (
    DeliveredFigure,
    StockedFigure,
    LostFigure,
    ForecastFigure,
    BornFigure,
    WatchedFigure,
    UsedUpFigure,
)
"""What entries outside of any round hold."""
