"""What a key press is about to write, as plain frozen values. `store.round.confirm` makes them."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any
from uuid import UUID

from msgspec import Struct

from store.book.figures import Figure
from store.book.turn import Turn
from store.book.words import Kind, State

NOBODY = UUID(int=0)


class Subject(Struct, frozen=True):
    """Whose step it is: one of the four; none for the round itself, or for a note on the whole yard."""

    animal_id: UUID | None = None
    pen_id: UUID | None = None
    task_id: UUID | None = None
    feed_id: UUID | None = None

    @property
    def id(self) -> UUID:
        """The id of whichever it is; the nil id if there is none."""
        found = (self.animal_id, self.pen_id, self.task_id, self.feed_id)
        return next((each for each in found if each is not None), NOBODY)


class RowDraft(Struct, frozen=True):
    """A row of what changes slowly, before it is written: its table, and its columns by name.

    A dated row that names no `begins_at` begins when it is written; a row that names no `id` gets a new one.
    """

    table: str
    values: Mapping[str, Any]


def weighing(measure_id: UUID, feed_id: UUID, holds_kg: float) -> RowDraft:
    """What one level measure of a feed holds. [kg]"""
    return RowDraft("weighing", {"measure_id": measure_id, "feed_id": feed_id, "holds_kg": holds_kg})


class Draft(Struct, frozen=True):
    """One entry before it is written. `shown` is the entry that the screen showed for the step, if any.

    Raises ValueError where it would have happened after it was over: happened_from behind happened_at.
    """

    step_id: UUID | None  # None: nobody planned it; the entry's own id names it
    kind: Kind
    subject: Subject
    turn: Turn | None  # None: outside of any round
    state: State
    happened_at: datetime
    person_id: UUID
    shown: UUID | None
    happened_from: datetime | None = None
    reason: str = ""
    figures: tuple[Figure, ...] = ()
    as_of: datetime | None = None  # written as of then, so that whatever another bench wrote since counts

    def __post_init__(self) -> None:
        """Every draft, also one that was changed from another."""
        if self.happened_from and self.happened_from > self.happened_at:
            raise ValueError(f"happened_from is {self.happened_from}; it must not be behind {self.happened_at}")
