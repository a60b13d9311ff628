"""Pens, animals, and which animal stands where."""

from datetime import date
from typing import Annotated
from uuid import UUID

from pydantic import AwareDatetime, StringConstraints
from sqlalchemy import CheckConstraint, Index
from sqlmodel import Field

from store.book.columns import Day, Id, Moment, one_of
from store.book.records.base import Dated, Name, Row, at_most, bounded, named
from store.book.words import (
    CONDITION_POINTS,
    EVERY_MOST_DAYS,
    EVERY_NIGHT,
    FAT_PERCENT,
    GAIN_MOST_KG_DAY,
    GIRTH_CM,
    PROTEIN_PERCENT,
    WEIGHT_KG,
    Species,
    Stage,
)

Tag = Annotated[str, StringConstraints(max_length=40, strip_whitespace=True)]


class Pen(Row, table=True):
    """A place where animals stand: stall, pen, orchard, field."""


class PenAs(Dated, table=True):
    """A pen's name and its place in the walk, from a day on."""

    __tablename__ = "pen_as"
    __table_args__ = (Index(None, "pen_id", "begins_at"), named(), bounded("position", 0, 999))

    pen_id: UUID = Field(sa_type=Id, foreign_key="pen.id")
    name: Name
    position: int = Field(ge=0, le=999)  # walking order, least first
    in_use: bool = True


class Animal(Row, table=True):
    """One animal."""


class AnimalAs(Dated, table=True):
    """What she is called and where she stands in life, from a day on."""

    __tablename__ = "animal_as"
    __table_args__ = (Index(None, "animal_id", "begins_at"), named(), at_most("tag", 40))

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    name: Name
    tag: Tag = ""  # ear tag as one reads it: "BLUE 12"
    species: Species = Field(default=Species.CATTLE, sa_type=one_of(Species, "species"))
    stage: Stage = Field(sa_type=one_of(Stage, "stage"))
    born_on: date | None = Field(default=None, sa_type=Day)
    calved_on: date | None = Field(default=None, sa_type=Day)
    adult_only: bool = False  # no child alone with her
    two_people: bool = False
    kept: bool = True  # False: sold, dead, gone home


class Breeding(Dated, table=True):
    """What an animal is of, and what she carries, from a day on."""

    __table_args__ = (Index(None, "animal_id", "begins_at"), at_most("breed", 40))

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    breed: Tag = ""
    dam_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="animal.id")
    served_on: date | None = Field(default=None, sa_type=Day)
    due_on: date | None = Field(default=None, sa_type=Day)  # in calf, and due then; None: not in calf, or not known


class Body(Dated, table=True):
    """What an animal weighed, or measured around the heart, on a day; both empty: not known any more."""

    __table_args__ = (
        Index(None, "animal_id", "begins_at"), bounded("weight_kg", *WEIGHT_KG), bounded("girth_cm", *GIRTH_CM),
    )  # fmt: skip

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    weight_kg: float | None = Field(default=None, ge=WEIGHT_KG[0], le=WEIGHT_KG[1])
    girth_cm: float | None = Field(default=None, ge=GIRTH_CM[0], le=GIRTH_CM[1])


class FeedingGoal(Dated, table=True):
    """What an animal is fed for, from a day on. What is empty has no goal.

    forage_only: no grain while she holds condition. score_every_days: how often that is looked at.
    """

    __tablename__ = "feeding_goal"
    __table_args__ = (
        Index(None, "animal_id", "begins_at"), bounded("condition", *CONDITION_POINTS),
        bounded("gain_kg_day", 0, GAIN_MOST_KG_DAY), bounded("mature_kg", *WEIGHT_KG),
        bounded("score_every_days", 1, EVERY_MOST_DAYS),
    )  # fmt: skip

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    condition: float | None = Field(default=None, ge=CONDITION_POINTS[0], le=CONDITION_POINTS[1])
    gain_kg_day: float | None = Field(default=None, ge=0, le=GAIN_MOST_KG_DAY)
    mature_kg: float | None = Field(default=None, ge=WEIGHT_KG[0], le=WEIGHT_KG[1])
    forage_only: bool = False
    score_every_days: int | None = Field(default=None, ge=1, le=EVERY_MOST_DAYS)


class MilkTest(Dated, table=True):
    """What a test found in her milk, from that day on."""

    __tablename__ = "milk_test"
    __table_args__ = (
        Index(None, "animal_id", "begins_at"), bounded("fat_percent", *FAT_PERCENT),
        bounded("protein_percent", *PROTEIN_PERCENT),
    )  # fmt: skip

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    fat_percent: float | None = Field(default=None, ge=FAT_PERCENT[0], le=FAT_PERCENT[1])
    protein_percent: float | None = Field(default=None, ge=PROTEIN_PERCENT[0], le=PROTEIN_PERCENT[1])


class Heat(Dated, table=True):
    """She was seen bulling, at the moment at which the row begins; seen False: taken back."""

    __table_args__ = (Index(None, "animal_id", "begins_at"),)

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    stood: bool = False  # stood to be mounted, the surest sign
    seen: bool = True


class Standing(Dated, table=True):
    """Where an animal stands from a moment on; no pen: nowhere here."""

    __table_args__ = (Index(None, "animal_id", "begins_at"),)

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    pen_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="pen.id")


class Sharing(Dated, table=True):
    """A cow shares her milk with a calf, from a day on; the farm's longest time apart."""

    __table_args__ = (Index(None, "calf_id", "begins_at"), bounded("longest_h", 1, 48))

    cow_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    calf_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    shares: bool = True
    longest_h: float = Field(default=13, ge=1, le=48)  # hours apart; common practice is about twelve


class ApartRule(Dated, table=True):
    """When a calf that shares a cow's milk is shut away: how long, from which day of its life, in which nights."""

    __tablename__ = "apart_rule"
    __table_args__ = (
        Index(None, "calf_id", "begins_at"), bounded("apart_h", 1, 48), bounded("from_day", 0, 400),
        CheckConstraint("length(nights) >= 7 AND length(nights) <= 7", name="nights"),
    )  # fmt: skip

    calf_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    apart_h: float = Field(default=12, ge=1, le=48)  # hours until the next milking
    from_day: int = Field(default=0, ge=0, le=400)
    nights: Annotated[str, StringConstraints(pattern=r"^[01]{7}$")] = EVERY_NIGHT  # from Monday's on


class SecondCow(Dated, table=True):
    """A calf that sucks another cow besides the one it shares, from a day on."""

    __tablename__ = "second_cow"
    __table_args__ = (Index(None, "calf_id", "begins_at"),)

    calf_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    cow_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="animal.id")  # None: no second one any more


class Withheld(Dated, table=True):
    """Her milk is withheld from a moment until another; no end: until further notice."""

    __table_args__ = (Index(None, "animal_id", "begins_at"), named("why", 120))

    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    ends_at: AwareDatetime | None = Field(default=None, sa_type=Moment)
    why: Annotated[str, StringConstraints(min_length=1, max_length=120, strip_whitespace=True)]
