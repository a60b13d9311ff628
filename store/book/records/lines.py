"""The figures of an entry, a table for each kind of figure. Weights as it lies, soaked feeds dry."""

from typing import Annotated
from uuid import UUID

from pydantic import AwareDatetime, StringConstraints
from sqlalchemy import CheckConstraint, Index
from sqlmodel import Field

from store.book.columns import Id, Moment, one_of
from store.book.records.base import Row, at_most, bounded, named
from store.book.records.entries import Typed
from store.book.words import (
    BAGS_MOST,
    CONDITION_POINTS,
    DOSES_MOST,
    GIRTH_CM,
    LOW_C,
    MILK_MOST_KG,
    PAIL_MOST_KG,
    PRICE_MOST,
    STEP_MOST_KG,
    STOCK_MOST_KG,
    TEMPERATURE_C,
    WIND_MOST_KMH,
    Apart,
    Fate,
    Fill,
    Looks,
    Quarter,
    Sign,
    Soak,
)

HEADS_MOST = 999


class Line(Row):
    """A figure of an entry."""

    entry_id: UUID = Field(sa_type=Id, foreign_key="entry.id", index=True)
    position: int = Field(default=0, ge=0, le=99)  # in the order of the screen


class Fed(Line, table=True):
    """One feed of a feed or hay step: what was due beside what was given."""

    __table_args__ = (
        bounded("position", 0, 99), bounded("due_kg", 0, STEP_MOST_KG), bounded("given_kg", 0, STEP_MOST_KG),
        bounded("left_kg", 0, STEP_MOST_KG), at_most("typed", 80),
    )  # fmt: skip

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    measure_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="measure.id")
    due_kg: float | None = Field(default=None, ge=0, le=STEP_MOST_KG)  # None: nobody had planned it
    given_kg: float | None = Field(default=None, ge=0, le=STEP_MOST_KG)  # None: not given
    typed: Typed = ""  # as typed; empty: given as shown
    left_kg: float | None = Field(default=None, ge=0, le=STEP_MOST_KG)  # None: not looked


class Strung(Line, table=True):
    """Strings or nets taken off, and into the bin."""

    __table_args__ = (bounded("position", 0, 99), bounded("strings", 0, HEADS_MOST))

    strings: int = Field(ge=0, le=HEADS_MOST)


class Milked(Line, table=True):
    """One milking of one cow."""

    __table_args__ = (
        bounded("position", 0, 99),
        bounded("milk_kg", 0, MILK_MOST_KG),
        bounded("gross_kg", 0, PAIL_MOST_KG),
        bounded("empty_kg", 0, 20),
        at_most("typed", 80),
        CheckConstraint("(milk_kg IS NULL) = (fate IS NULL)", name="milk_has_a_fate"),
    )

    milk_kg: float | None = Field(default=None, ge=0, le=MILK_MOST_KG)  # None: not milked, never zero
    gross_kg: float | None = Field(default=None, ge=0, le=PAIL_MOST_KG)  # pail and milk; None: not on a scale
    pail_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="pail.id")
    empty_kg: float | None = Field(default=None, ge=0, le=20)
    fate: Fate | None = Field(default=None, sa_type=one_of(Fate, "fate"))
    typed: Typed = ""
    held_back: bool = False


class Drawn(Line, table=True):
    """How a cow was milked, where that was not as usual."""

    __table_args__ = (bounded("position", 0, 99),)

    whole: bool = True  # milked out
    by_hand: bool = False


class Poured(Line, table=True):
    """A pail poured together with that of another milk step."""

    __table_args__ = (bounded("position", 0, 99),)

    into_step_id: UUID = Field(sa_type=Id)


class Cooled(Line, table=True):
    """The milk of a round is in ice; what became of it where that was late."""

    __table_args__ = (bounded("position", 0, 99),)

    fate: Fate | None = Field(default=None, sa_type=one_of(Fate, "fate"))


class Counted(Line, table=True):
    """Heads expected in a pen, and seen."""

    __table_args__ = (
        bounded("position", 0, 99), bounded("heads_due", 0, HEADS_MOST), bounded("heads_seen", 0, HEADS_MOST),
    )  # fmt: skip

    heads_due: int = Field(ge=0, le=HEADS_MOST)
    heads_seen: int | None = Field(default=None, ge=0, le=HEADS_MOST)  # None: not counted


class Soaked(Line, table=True):
    """A batch of soaked feed."""

    __table_args__ = (
        bounded("position", 0, 99), bounded("due_kg", 0, STEP_MOST_KG), bounded("dry_kg", 0, STEP_MOST_KG),
        bounded("water_kg", 0, STEP_MOST_KG), at_most("typed", 80),
    )  # fmt: skip

    act: Soak = Field(sa_type=one_of(Soak, "act"))
    due_kg: float | None = Field(default=None, ge=0, le=STEP_MOST_KG)
    dry_kg: float | None = Field(default=None, ge=0, le=STEP_MOST_KG)  # None: not put to soak
    water_kg: float | None = Field(default=None, ge=0, le=STEP_MOST_KG)
    typed: Typed = ""


class Parted(Line, table=True):
    """A calf and the cow it shares."""

    __table_args__ = (bounded("position", 0, 99),)

    cow_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    state: Apart = Field(sa_type=one_of(Apart, "state"))


class Felt(Line, table=True):
    """An udder as it was felt."""

    __table_args__ = (bounded("position", 0, 99),)

    fill: Fill = Field(sa_type=one_of(Fill, "fill"))


class QuarterFound(Line, table=True):
    """What was found at one quarter of an udder."""

    __tablename__ = "quarter"
    __table_args__ = (bounded("position", 0, 99),)

    quarter: Quarter = Field(sa_type=one_of(Quarter, "quarter"))
    sign: Sign = Field(sa_type=one_of(Sign, "sign"))


class Looked(Line, table=True):
    """What a look that was due found; every finding empty: not looked."""

    __table_args__ = (
        bounded("position", 0, 99), bounded("condition_points", *CONDITION_POINTS), bounded("girth_cm", *GIRTH_CM),
        bounded("temperature_c", *TEMPERATURE_C), at_most("typed", 80),
    )  # fmt: skip

    look_id: UUID = Field(sa_type=Id, foreign_key="look.id")
    looks: Looks | None = Field(default=None, sa_type=one_of(Looks, "looks"))
    condition_points: float | None = Field(default=None, ge=CONDITION_POINTS[0], le=CONDITION_POINTS[1])
    girth_cm: float | None = Field(default=None, ge=GIRTH_CM[0], le=GIRTH_CM[1])
    temperature_c: float | None = Field(default=None, ge=TEMPERATURE_C[0], le=TEMPERATURE_C[1])
    typed: Typed = ""


class Dosed(Line, table=True):
    """A dose of a treatment: the how-manieth, and whether it was given."""

    __table_args__ = (bounded("position", 0, 99), bounded("number", 1, DOSES_MOST))

    treatment_id: UUID = Field(sa_type=Id, foreign_key="treatment.id")
    number: int = Field(ge=1, le=DOSES_MOST)
    given: bool


class Noted(Line, table=True):
    """Words of the keeper."""

    __table_args__ = (bounded("position", 0, 99), named("words", 500))

    words: Annotated[str, StringConstraints(min_length=1, max_length=500, strip_whitespace=True)]
    tell: bool = False  # the next person must see it before beginning


class Delivered(Line, table=True):
    """What came into the feed room. The price is for all of it, in the farm's own money."""

    __table_args__ = (
        bounded("position", 0, 99), bounded("kg", 0, STOCK_MOST_KG), bounded("bags", 0, BAGS_MOST),
        bounded("price", 0, PRICE_MOST), at_most("lot", 40), at_most("typed", 80),
    )  # fmt: skip

    kg: float = Field(ge=0, le=STOCK_MOST_KG)
    bags: int | None = Field(default=None, ge=0, le=BAGS_MOST)  # or bales; None: loose
    price: float | None = Field(default=None, ge=0, le=PRICE_MOST)  # None: not known
    lot: Annotated[str, StringConstraints(max_length=40, strip_whitespace=True)] = ""
    typed: Typed = ""


class Stocked(Line, table=True):
    """What was really there of a feed, weighed, or counted in a measure."""

    __table_args__ = (
        bounded("position", 0, 99), bounded("kg", 0, STOCK_MOST_KG), at_most("typed", 80),
    )  # fmt: skip

    kg: float = Field(ge=0, le=STOCK_MOST_KG)
    typed: Typed = ""


class Lost(Line, table=True):
    """Feed that no animal ate: spilt, spoilt, eaten by others."""

    __table_args__ = (
        bounded("position", 0, 99), bounded("kg", 0, STOCK_MOST_KG), at_most("why", 80), at_most("typed", 80),
    )  # fmt: skip

    kg: float = Field(ge=0, le=STOCK_MOST_KG)
    why: Typed = ""
    typed: Typed = ""


class Forecast(Line, table=True):
    """The weather to come, as somebody typed it in: the lowest of the night, the wind, and whether it will be wet."""

    __table_args__ = (
        bounded("position", 0, 99), bounded("low_c", *LOW_C), bounded("wind_kmh", 0, WIND_MOST_KMH),
    )  # fmt: skip

    low_c: float = Field(ge=LOW_C[0], le=LOW_C[1])
    wind_kmh: float | None = Field(default=None, ge=0, le=WIND_MOST_KMH)
    wet: bool = False


class Born(Line, table=True):
    """What a cow has borne."""

    __table_args__ = (bounded("position", 0, 99),)

    calf_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="animal.id")
    alive: bool = True


class Watched(Line, table=True):
    """Something to be looked at again, and how it was when it was looked at."""

    __table_args__ = (bounded("position", 0, 99), named("words", 120), Index(None, "due_at"))

    words: Annotated[str, StringConstraints(min_length=1, max_length=120, strip_whitespace=True)]
    due_at: AwareDatetime | None = Field(default=None, sa_type=Moment)  # None: no more
    due_until: AwareDatetime | None = Field(default=None, sa_type=Moment)  # "between due_at and then"
    looks: Looks | None = Field(default=None, sa_type=one_of(Looks, "looks"))


class UsedUp(Line, table=True):
    """Milk of a milk step that is used up."""

    __tablename__ = "used_up"
    __table_args__ = (bounded("position", 0, 99),)

    of_step_id: UUID = Field(sa_type=Id)
