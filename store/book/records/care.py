"""What falls due at an animal besides feed and milk: a look, and a treatment that somebody else has decided."""

from datetime import date
from typing import Annotated
from uuid import UUID

from pydantic import AwareDatetime, StringConstraints
from sqlalchemy import Index
from sqlmodel import Field

from store.book.columns import Day, Id, Moment, one_of
from store.book.records.base import Dated, Name, Row, Slot, at_most, bounded, named
from store.book.words import (
    DOSES_MOST,
    DRY_MOST_DAYS,
    EVERY_MOST_DAYS,
    MEAT_MOST_DAYS,
    MILKINGS_MOST,
    WITHHELD_MOST_H,
    Asks,
    SaidBy,
)

EVERY_MOST_H = 8784


class Look(Row, table=True):
    """Something about an animal that is looked at again and again."""


class LookAs(Dated, table=True):
    """What is looked at, at whom, in which slot and how often, from a moment on."""

    __tablename__ = "look_as"
    __table_args__ = (
        Index(None, "look_id", "begins_at"), named(), named("slot", 20), bounded("every_days", 1, EVERY_MOST_DAYS),
    )  # fmt: skip

    look_id: UUID = Field(sa_type=Id, foreign_key="look.id")
    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    name: Name  # "left hind foot"
    asks: Asks = Field(sa_type=one_of(Asks, "asks"))
    slot: Slot
    every_days: int = Field(default=1, ge=1, le=EVERY_MOST_DAYS)
    until_on: date | None = Field(default=None, sa_type=Day)  # the last day; None: until it is ended
    in_use: bool = True


class Treatment(Row, table=True):
    """One treatment of one animal."""


class TreatmentAs(Dated, table=True):
    """What is given, as the label or the vet says; how often, how many times, and from when on."""

    __tablename__ = "treatment_as"
    __table_args__ = (
        Index(None, "treatment_id", "begins_at"), named("product"), at_most("amount", 80), at_most("route", 40),
        at_most("why", 120), at_most("batch", 40), bounded("doses", 1, DOSES_MOST), bounded("every_h", 1, EVERY_MOST_H),
    )  # fmt: skip

    treatment_id: UUID = Field(sa_type=Id, foreign_key="treatment.id")
    animal_id: UUID = Field(sa_type=Id, foreign_key="animal.id")
    product: Name
    amount: Annotated[str, StringConstraints(max_length=80, strip_whitespace=True)] = ""
    route: Annotated[str, StringConstraints(max_length=40, strip_whitespace=True)] = ""
    why: Annotated[str, StringConstraints(max_length=120, strip_whitespace=True)] = ""
    batch: Annotated[str, StringConstraints(max_length=40, strip_whitespace=True)] = ""
    doses: int = Field(ge=1, le=DOSES_MOST)
    every_h: float = Field(ge=1, le=EVERY_MOST_H)
    first_at: AwareDatetime = Field(sa_type=Moment)
    in_use: bool = True


class Withdrawal(Dated, table=True):
    """How long milk and meat are withheld after the last dose, as label or vet say it. None: not known yet.

    After a dry-cow product: the least days from it to calving, and how long from calving on.
    """

    __table_args__ = (
        Index(None, "treatment_id", "begins_at"), bounded("milk_h", 0, 8784), bounded("milkings", 0, MILKINGS_MOST),
        bounded("meat_days", 0, 999), bounded("dry_days", 0, 400), bounded("calved_h", 0, 8784),
        bounded("calved_milkings", 0, MILKINGS_MOST),
    )  # fmt: skip

    treatment_id: UUID = Field(sa_type=Id, foreign_key="treatment.id")
    milk_h: float | None = Field(default=None, ge=0, le=WITHHELD_MOST_H)
    milkings: int | None = Field(default=None, ge=0, le=MILKINGS_MOST)
    meat_days: float | None = Field(default=None, ge=0, le=MEAT_MOST_DAYS)
    dry_days: float | None = Field(default=None, ge=0, le=DRY_MOST_DAYS)
    calved_h: float | None = Field(default=None, ge=0, le=WITHHELD_MOST_H)
    calved_milkings: int | None = Field(default=None, ge=0, le=MILKINGS_MOST)
    said_by: SaidBy | None = Field(default=None, sa_type=one_of(SaidBy, "said_by"))
