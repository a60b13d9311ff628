"""Feeds, the scoops and pails that measure them, and what each animal is to get."""

from typing import Annotated
from uuid import UUID

from pydantic import StringConstraints
from sqlalchemy import CheckConstraint, Index
from sqlmodel import Field

from store.book.columns import Id, one_of
from store.book.records.base import Dated, Name, Row, Slot, at_most, bounded, named
from store.book.words import Air, Species, Water

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


class Measure(Row, table=True):
    """A scoop, cup, jug or bale that a feed is told in."""


class MeasureAs(Dated, table=True):
    """What a measure is called, one and many, from a day on."""

    __tablename__ = "measure_as"
    __table_args__ = (Index(None, "measure_id", "begins_at"), named(), named("plural"))

    measure_id: UUID = Field(sa_type=Id, foreign_key="measure.id")
    name: Name
    plural: Name


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
