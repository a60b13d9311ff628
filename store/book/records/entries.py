"""What the keeper's keys wrote: one key press is one entry, its figures are lines.

Of the entries with one step_id the newest by (written_at, id) counts; the others are its history. That one rule is
correction, undo, merge and a round typed twice.
"""

from datetime import date
from typing import Annotated
from uuid import UUID

from pydantic import AwareDatetime, StringConstraints
from sqlalchemy import CheckConstraint, Index
from sqlmodel import Field

from store.book.columns import Day, Id, Moment, one_of
from store.book.records.base import Name, Row, bounded, named
from store.book.words import MILK_MOST_KG, PAIL_MOST_KG, STEP_MOST_KG, Fate, Kind, State

Typed = Annotated[str, StringConstraints(max_length=80)]


class Entry(Row, table=True):
    """One confirmed key press: who did what, when, for which step. A correction is a whole new entry."""

    __table_args__ = (
        Index("ix_entry_step", "step_id", "written_at", "id"),
        Index("ix_entry_turn", "day", "slot"),
        Index("ix_entry_animal", "animal_id", "kind", "happened_at"),
        Index("ix_entry_pen", "pen_id", "kind", "happened_at"),
        CheckConstraint(
            "(CASE WHEN animal_id IS NULL THEN 0 ELSE 1 END)"
            " + (CASE WHEN pen_id IS NULL THEN 0 ELSE 1 END)"
            " + (CASE WHEN task_id IS NULL THEN 0 ELSE 1 END) = 1",
            name="one_subject",
        ),
        CheckConstraint("(day IS NULL) = (slot IS NULL)", name="day_and_slot"),
        named("bench"),
    )

    step_id: UUID = Field(sa_type=Id)
    kind: Kind = Field(sa_type=one_of(Kind, "kind"))
    animal_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="animal.id")
    pen_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="pen.id")
    task_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="task.id")
    day: date | None = Field(default=None, sa_type=Day)
    slot: Name | None = None
    state: State = Field(sa_type=one_of(State, "state"))
    reason: Typed = ""
    happened_at: AwareDatetime = Field(sa_type=Moment)
    happened_from: AwareDatetime | None = Field(default=None, sa_type=Moment)  # "between then and happened_at"
    written_at: AwareDatetime = Field(sa_type=Moment)
    person_id: UUID = Field(sa_type=Id, foreign_key="person.id")
    bench: Name
    replaces_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="entry.id")


class Line(Row):
    """A figure of an entry."""

    entry_id: UUID = Field(sa_type=Id, foreign_key="entry.id", index=True)
    position: int = Field(default=0, ge=0, le=99)  # in the order of the screen


class Fed(Line, table=True):
    """One feed of a feed step: what was due beside what was given. Weights as it lies, soaked feeds dry."""

    __table_args__ = (
        bounded("due_kg", 0, STEP_MOST_KG), bounded("given_kg", 0, STEP_MOST_KG), bounded("position", 0, 99),
    )  # fmt: skip

    feed_id: UUID = Field(sa_type=Id, foreign_key="feed.id")
    measure_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="measure.id")
    due_kg: float | None = Field(default=None, ge=0, le=STEP_MOST_KG)  # None: nobody had planned it
    given_kg: float | None = Field(default=None, ge=0, le=STEP_MOST_KG)  # None: not given
    typed: Typed = ""  # as typed; empty: given as shown


class Milked(Line, table=True):
    """One milking of one cow."""

    __table_args__ = (
        bounded("position", 0, 99),
        bounded("milk_kg", 0, MILK_MOST_KG),
        bounded("gross_kg", 0, PAIL_MOST_KG),
        bounded("empty_kg", 0, 20),
        CheckConstraint("(milk_kg IS NULL) = (fate IS NULL)", name="milk_has_a_fate"),
    )

    milk_kg: float | None = Field(default=None, ge=0, le=MILK_MOST_KG)  # None: not milked, never zero
    gross_kg: float | None = Field(default=None, ge=0, le=PAIL_MOST_KG)  # pail and milk; None: not on a scale
    pail_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="pail.id")
    empty_kg: float | None = Field(default=None, ge=0, le=20)
    fate: Fate | None = Field(default=None, sa_type=one_of(Fate, "fate"))
    typed: Typed = ""
