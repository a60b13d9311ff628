"""What the keeper's keys wrote: one key press is one entry, its figures are lines (store.book.records.lines).

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
from store.book.records.base import Name, Row, Slot, at_most, named
from store.book.words import MAY_BE_OF_ALL, Kind, State

Typed = Annotated[str, StringConstraints(max_length=80, strip_whitespace=True)]


_NAMED = " + ".join(f"(CASE WHEN {each}_id IS NULL THEN 0 ELSE 1 END)" for each in ("animal", "pen", "task", "feed"))
_OF_ALL = ", ".join(f"'{kind}'" for kind in MAY_BE_OF_ALL)
ONE_SUBJECT = f"{_NAMED} = 1 OR ({_NAMED} = 0 AND kind IN ({_OF_ALL}))"


class Entry(Row, table=True):
    """One confirmed key press: who did what, when, for which step. A correction is a whole new entry."""

    __table_args__ = (
        Index("ix_entry_step", "step_id", "written_at", "id"),
        Index("ix_entry_turn", "day", "slot"),
        Index("ix_entry_animal", "animal_id", "kind", "happened_at"),
        Index("ix_entry_pen", "pen_id", "kind", "happened_at"),
        Index("ix_entry_feed", "feed_id", "kind", "happened_at"),
        CheckConstraint(ONE_SUBJECT, name="one_subject"),
        CheckConstraint("(day IS NULL) = (slot IS NULL)", name="day_and_slot"),
        CheckConstraint("length(slot) >= 1 AND length(slot) <= 20", name="slot"),
        at_most("reason", 80),
        named("bench"),
    )

    step_id: UUID = Field(sa_type=Id)
    kind: Kind = Field(sa_type=one_of(Kind, "kind"))
    animal_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="animal.id")
    pen_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="pen.id")
    task_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="task.id")
    feed_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="feed.id")
    day: date | None = Field(default=None, sa_type=Day)
    slot: Slot | None = None
    state: State = Field(sa_type=one_of(State, "state"))
    reason: Typed = ""
    happened_at: AwareDatetime = Field(sa_type=Moment)
    happened_from: AwareDatetime | None = Field(default=None, sa_type=Moment)  # "between then and happened_at"
    written_at: AwareDatetime = Field(sa_type=Moment)
    person_id: UUID = Field(sa_type=Id, foreign_key="person.id")
    bench: Name
    replaces_id: UUID | None = Field(default=None, sa_type=Id, foreign_key="entry.id")
