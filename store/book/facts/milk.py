"""Who is milked, into which pail, what she gave before and what is withheld, as frozen values."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.facts.span import Span, span
from store.book.turn import Turn
from store.book.words import Fate, Quarter, Sign


class Withholding(Struct, frozen=True):
    """Her milk is withheld from a moment on; until None: until further notice.

    to_calves: calves and other animals may have it, as colostrum; else it is thrown away.
    """

    since: datetime
    until: datetime | None
    why: str
    to_calves: bool = False

    def holds_at(self, at: datetime) -> bool:
        """Whether a milking at this moment is withheld, to the minute."""
        return self.may_hold(span(at))

    def may_hold(self, when: Span) -> bool:
        """Whether a milking at any moment of a span would be withheld."""
        return self.since <= when.latest and (self.until is None or when.earliest < self.until)


class Pail(Struct, frozen=True):
    """A milk pail and its weight when empty. [kg]"""

    id: UUID
    name: str
    empty_kg: float


class PastPail(Struct, frozen=True):
    """A milking of an earlier round. [kg] milk_kg None: not milked, or still on paper. whole: she was milked out."""

    at: datetime
    milk_kg: float | None
    held_back: bool
    on_paper: bool = False
    whole: bool = True
    turn: Turn | None = None
    fate: Fate | None = None
    typed: str = ""
    step_id: UUID | None = None
    since: datetime | None = None

    @property
    def when(self) -> Span:
        """When she was milked; at is the latest of it."""
        return span(self.at, self.since)


class Milking(Struct, frozen=True):
    """A cow that is milked in this slot; her pails of earlier rounds, newest first.

    every: 1, each planned milking; 2, every other one. slots: of the feeding rounds in which she is planned.
    """

    animal_id: UUID
    pail: Pail | None
    pails_before: tuple[PastPail, ...] = ()
    every: int = 1
    slots: frozenset[str] = frozenset()


class QuarterFound(Struct, frozen=True):
    """What was found at a quarter in an earlier round."""

    quarter: Quarter
    sign: Sign
    at: datetime
    turn: Turn
