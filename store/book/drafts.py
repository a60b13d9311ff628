"""What a key press is about to write, as plain frozen values. `store.round.confirm` makes them."""

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from store.book.turn import Turn
from store.book.words import Fate, Kind, State


@dataclass(frozen=True, slots=True)
class Subject:
    """Whose step it is: exactly one of the three."""

    animal_id: UUID | None = None
    pen_id: UUID | None = None
    task_id: UUID | None = None

    @property
    def id(self) -> UUID:
        """The id of whichever it is. Raises ValueError if there is none."""
        for found in (self.animal_id, self.pen_id, self.task_id):
            if found is not None:
                return found
        raise ValueError("a step belongs to an animal, a pen or a task")


@dataclass(frozen=True, slots=True)
class FedFigure:
    """One feed: due and given. [kg, soaked feeds dry] given_kg None: not given."""

    feed_id: UUID
    measure_id: UUID | None
    due_kg: float | None
    given_kg: float | None
    typed: str = ""


@dataclass(frozen=True, slots=True)
class MilkedFigure:
    """One milking. milk_kg None: not milked. [kg]"""

    milk_kg: float | None
    gross_kg: float | None = None
    pail_id: UUID | None = None
    empty_kg: float | None = None
    fate: Fate | None = None
    typed: str = ""


Figure = FedFigure | MilkedFigure


@dataclass(frozen=True, slots=True)
class Draft:
    """One entry before it is written. `shown` is the entry that the screen showed for the step, if any."""

    step_id: UUID
    kind: Kind
    subject: Subject
    turn: Turn
    state: State
    happened_at: datetime
    person_id: UUID
    shown: UUID | None
    reason: str = ""
    figures: tuple[Figure, ...] = ()
