"""What is looked at on an animal, and treatments as label or vet has them, as frozen values."""

from datetime import date, datetime
from uuid import UUID

from msgspec import Struct

from store.book.facts.span import Span
from store.book.figures import LookedFigure
from store.book.turn import Turn
from store.book.words import Asks, SaidBy, State


class LastLook(Struct, frozen=True):
    """What a look found the last time it was done."""

    day: date
    found: LookedFigure


class Look(Struct, frozen=True):
    """Something that is looked at on an animal, in a slot, every so many days. until_on: the last day."""

    id: UUID
    animal_id: UUID
    name: str
    asks: Asks
    slot: str
    every_days: int
    until_on: date | None
    last: LastLook | None = None


class Withdrawal(Struct, frozen=True):
    """How long milk and meat are withheld after the last dose, as typed. None: not known yet. [h, milkings, d]

    dry_days, calved_h, calved_milkings: of a dry-cow product, the least days to calving and how long from calving on.
    """

    milk_h: float | None = None
    milkings: int | None = None
    meat_days: float | None = None
    dry_days: float | None = None
    calved_h: float | None = None
    calved_milkings: int | None = None
    said_by: SaidBy | None = None


class NotGiven(Struct, frozen=True):
    """A dose that a round asked for and that is not written as given: skipped, or left open or on paper."""

    turn: Turn
    state: State
    number: int


class Treatment(Struct, frozen=True):
    """A treatment of the last years, as label or vet has it. given: its doses before this round, newest first. [h]

    not_given: of other rounds. in_use: False once it was ended. withdrawal None: nobody has typed any of it.
    """

    id: UUID
    animal_id: UUID
    product: str
    amount: str
    route: str
    why: str
    batch: str
    doses: int
    every_h: float
    first_at: datetime
    given: tuple[Span, ...] = ()
    in_use: bool = True
    withdrawal: Withdrawal | None = None
    not_given: tuple[NotGiven, ...] = ()

    @property
    def given_at(self) -> tuple[datetime, ...]:
        """The latest moment at which each dose can have been given: what the next one is counted from."""
        return tuple(each.latest for each in self.given)
