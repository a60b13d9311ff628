"""Feeds, the scoops and pails that measure them, and what each animal is to get."""

from datetime import date
from typing import Annotated
from uuid import UUID

from pydantic import StringConstraints
from sqlalchemy import CheckConstraint, Index
from sqlmodel import Field

from store.book.columns import Day, Id, one_of
from store.book.records.base import Dated, Name, Row, Slot, at_most, bounded, named
from store.book.words import EVERY_MOST_DAYS, Air, Origin, Species, Stage, Water

MEAL_MOST_KG = 500.0
"""More than this before one animal is a slip, whatever the feed. [kg]"""


class Feed(Row, table=True):
    """Something the yard feeds."""


class FeedAs(Dated, table=True):
    """A feed's name, and whether it is soaked, from a day on."""

    __tablename__ = "feed_as"
    __table_args__ = (Index(None, "feed_id", "begins_at"), named(), at_most("bucket", 40))

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    name: Name
    soaked: bool = False  # then every weight of it is DRY weight
    bucket: Annotated[str, StringConstraints(max_length=40, strip_whitespace=True)] = ""  # where it soaks: "RED"
    baled: bool = False  # strings or a net have to come off
    in_use: bool = True


class NotFor(Dated, table=True):
    """A feed that a kind of animal must not get, from a day on."""

    __tablename__ = "not_for"
    __table_args__ = (Index(None, "feed_id", "species", "begins_at"),)

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    species: Species = Field(sa_type=one_of(Species, "species"))
    barred: bool = True


PARTS = ("dm_percent", "cp_percent", "tdn_percent", "ndf_percent", "fat_percent", "ca_percent", "p_percent")


class Composition(Dated, table=True):
    """What a feed is made of, from a day on. All but the dry matter is told of the dry matter."""

    __table_args__ = (
        Index(None, "feed_id", "begins_at"), at_most("resembles", 60),
        *(bounded(part, 0, 200 if part == "tdn_percent" else 100) for part in PARTS), bounded("nel_mcal", 0, 10),
    )  # fmt: skip

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    origin: Origin = Field(sa_type=one_of(Origin, "origin"))
    resembles: Annotated[str, StringConstraints(max_length=60, strip_whitespace=True)] = ""  # a row of our table
    dm_percent: float | None = Field(default=None, ge=0, le=100)  # of the feed as it lies
    cp_percent: float | None = Field(default=None, ge=0, le=100)
    tdn_percent: float | None = Field(default=None, ge=0, le=200)  # a pure fat has 184
    ndf_percent: float | None = Field(default=None, ge=0, le=100)
    fat_percent: float | None = Field(default=None, ge=0, le=100)
    ca_percent: float | None = Field(default=None, ge=0, le=100)
    p_percent: float | None = Field(default=None, ge=0, le=100)
    nel_mcal: float | None = Field(default=None, ge=0, le=10)  # a kg


class FeedLimit(Dated, table=True):
    """The farm's own limits of a feed for one head, from a day on. What is empty has none of its own.

    forage: whether it counts as forage; empty: as the table, or a feed in bales, has it. Weights as it lies.
    """

    __tablename__ = "feed_limit"
    __table_args__ = (
        Index(None, "feed_id", "begins_at"), bounded("most_meal_kg", 0, MEAL_MOST_KG),
        bounded("most_day_kg", 0, MEAL_MOST_KG), bounded("share_percent", 0, 100),
        bounded("step_kg", 0.001, MEAL_MOST_KG), bounded("step_days", 1, 30),
    )  # fmt: skip

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    forage: bool | None = None
    most_meal_kg: float | None = Field(default=None, ge=0, le=MEAL_MOST_KG)
    most_day_kg: float | None = Field(default=None, ge=0, le=MEAL_MOST_KG)
    share_percent: float | None = Field(default=None, ge=0, le=100)  # of the dry matter of a day
    step_kg: float | None = Field(default=None, ge=0.001, le=MEAL_MOST_KG)  # most more in one meal at one step
    step_days: int | None = Field(default=None, ge=1, le=30)  # from one step to the next


class ClassRule(Dated, table=True):
    """The keeper's own rule for a class of animal, from a day on: so much of a feed a day. All zero: no rule."""

    __tablename__ = "class_rule"
    __table_args__ = (
        Index(None, "stage", "begins_at"), bounded("fixed_kg", 0, MEAL_MOST_KG), bounded("per_kg_milk", 0, 5),
        bounded("above_kg", 0, MEAL_MOST_KG), bounded("weight_percent", 0, 100),
    )  # fmt: skip

    stage: Stage = Field(sa_type=one_of(Stage, "stage"))
    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    fixed_kg: float = Field(default=0, ge=0, le=MEAL_MOST_KG)
    per_kg_milk: float = Field(default=0, ge=0, le=5)  # for each kilogram of milk a day above above_kg
    above_kg: float = Field(default=0, ge=0, le=MEAL_MOST_KG)
    weight_percent: float = Field(default=0, ge=0, le=100)


class FreeFeed(Dated, table=True):
    """A feed that stands free in a pen, as a mineral tub, from a day on."""

    __tablename__ = "free_feed"
    __table_args__ = (Index(None, "feed_id", "pen_id", "begins_at"),)

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    pen_id: UUID = Field(sa_type=Id, foreign_key="pen.id")
    offered: bool = True


class SoakRule(Dated, table=True):
    """The farm's own table: how long a feed soaks in which water and air, and how much water it takes."""

    __tablename__ = "soak_rule"
    __table_args__ = (
        Index(None, "feed_id", "air", "begins_at"),
        bounded("least_h", 0, 72),
        bounded("most_h", 0, 72),
        bounded("water_per_kg", 0, 20),
    )

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    air: Air = Field(sa_type=one_of(Air, "air"))
    water: Water = Field(sa_type=one_of(Water, "water"))
    least_h: float = Field(ge=0, le=72)
    most_h: float = Field(ge=0, le=72)
    water_per_kg: float = Field(ge=0, le=20)  # kg of water to a kg of dry feed


class Substitute(Dated, table=True):
    """What replaces a soaked feed that is thrown out, from a day on: kg of it for a kg dry, at most so much a head."""

    __table_args__ = (
        Index(None, "feed_id", "begins_at"),
        bounded("ratio", 0.01, 100),
        bounded("most_kg", 0, MEAL_MOST_KG),
    )

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    by_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="feed.id")  # None: by nothing any more
    ratio: float = Field(default=1, ge=0.01, le=100)
    most_kg: float | None = Field(default=None, ge=0, le=MEAL_MOST_KG)


class Measure(Row, table=True):
    """A scoop, cup, jug or bale that a feed is told in."""


class MeasureAs(Dated, table=True):
    """What a measure is called, one and many, from a day on."""

    __tablename__ = "measure_as"
    __table_args__ = (Index(None, "measure_id", "begins_at"), named(), named("plural"))

    measure_id: UUID = Field(sa_type=Id, foreign_key="measure.id")
    name: Name
    plural: Name


class Volume(Dated, table=True):
    """What a measure holds, level full, from a day on. A bale or a flake has none."""

    __table_args__ = (Index(None, "measure_id", "begins_at"), bounded("holds_l", 0.01, 2000))

    measure_id: UUID = Field(sa_type=Id, foreign_key="measure.id")
    holds_l: float = Field(ge=0.01, le=2000)


class Weighing(Dated, table=True):
    """The keeper's own weighing: what one level measure of one feed holds, from a day on."""

    __table_args__ = (Index(None, "measure_id", "feed_id", "begins_at"), bounded("holds_kg", 0.001, 500))

    measure_id: UUID = Field(sa_type=Id, foreign_key="measure.id")
    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    holds_kg: float = Field(ge=0.001, le=500)  # as it lies in the bin


class Pail(Row, table=True):
    """A milk pail."""


class PailAs(Dated, table=True):
    """A pail's name and its weight when empty, from a day on."""

    __tablename__ = "pail_as"
    __table_args__ = (Index(None, "pail_id", "begins_at"), named(), bounded("empty_kg", 0, 20))

    pail_id: UUID = Field(sa_type=Id, foreign_key="pail.id")
    name: Name
    empty_kg: float = Field(ge=0, le=20)


class FeedPlan(Dated, table=True):
    """What one animal, or each head of a pen, gets of a feed in one slot, from a moment on."""

    __tablename__ = "feed_plan"
    __table_args__ = (
        Index(None, "animal_id", "slot", "feed_id", "begins_at"),
        Index(None, "pen_id", "slot", "feed_id", "begins_at"),
        bounded("due_kg", 0, MEAL_MOST_KG),
        bounded("position", 0, 99),
        named("slot", 20),
        CheckConstraint("(animal_id IS NULL) <> (pen_id IS NULL)", name="one_subject"),
    )

    slot: Slot
    animal_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="animal.id")
    pen_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="pen.id")
    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    due_kg: float | None = Field(default=None, ge=0, le=MEAL_MOST_KG)  # a head; None: no more of it
    measure_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="measure.id")  # None: told in kg
    position: int = Field(default=0, ge=0, le=99)  # order on the screen


class MilkPlan(Dated, table=True):
    """Whether a cow is milked in a slot, and into which pail, from a moment on."""

    __tablename__ = "milk_plan"
    __table_args__ = (Index(None, "animal_id", "slot", "begins_at"), named("slot", 20))

    slot: Slot
    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    milked: bool = True
    pail_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="pail.id")


class MilkRhythm(Dated, table=True):
    """At which of her planned milkings a cow is milked, from a moment on: each, every other one, ..."""

    __tablename__ = "milk_rhythm"
    __table_args__ = (Index(None, "animal_id", "begins_at"), bounded("every", 1, 4))

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    every: int = Field(default=1, ge=1, le=4)


class Task(Row, table=True):
    """A standing job of the round."""


class TaskAs(Dated, table=True):
    """What a job is, when and where, from a moment on. Without a pen it is done at the bench."""

    __tablename__ = "task_as"
    __table_args__ = (
        Index(None, "task_id", "begins_at"), named(most=120), named("slot", 20), bounded("position", 0, 999),
    )  # fmt: skip

    task_id: UUID = Field(sa_type=Id, foreign_key="task.id")
    name: Annotated[str, StringConstraints(min_length=1, max_length=120, strip_whitespace=True)]
    slot: Slot
    pen_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="pen.id")
    closing: bool = False  # at the end of the round (of the pen), not at its start
    position: int = Field(default=0, ge=0, le=999)
    adult_only: bool = False
    two_people: bool = False
    in_use: bool = True


MonthDay = Annotated[str, StringConstraints(pattern=r"^(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$")]


class TaskDue(Dated, table=True):
    """When a job falls due in its slot, from a moment on. Without such a row it is due every day."""

    __tablename__ = "task_due"
    __table_args__ = (
        Index(None, "task_id", "begins_at"), bounded("every_days", 1, EVERY_MOST_DAYS),
        CheckConstraint("(season_first IS NULL) = (season_last IS NULL)", name="whole_season"),
        CheckConstraint("length(season_first) = 5 AND length(season_last) = 5", name="season"),
    )  # fmt: skip

    task_id: UUID = Field(sa_type=Id, foreign_key="task.id")
    every_days: int = Field(default=1, ge=1, le=EVERY_MOST_DAYS)
    once: bool = False  # until it is done
    until_on: date | None = Field(default=None, sa_type=Day)  # the last day; None: until it is ended
    season_first: MonthDay | None = None  # month and day, as 05-01; it may go over the end of a year
    season_last: MonthDay | None = None
    stage: Stage | None = Field(default=None, sa_type=one_of(Stage, "stage"))  # only while such an animal is there
