"""A feed weighed against the book: all that the book knows of it since the last weighing."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.facts.farm import FarmFacts
from store.book.stocks import FeedStock, Row, Weighed
from store.book.turn import local
from store.feedroom.open_rows import OpenRow
from store.feedroom.saying import day_words
from store.husbandry.stock import agree_within_kg


class Measured(Struct, frozen=True):
    """A measure that a feed was told in since it was weighed. weighings: newest first."""

    id: UUID
    name: str
    weighings: tuple[Weighed, ...]


class Case(Struct, frozen=True):
    """What is known where book and scale differ. weighed_kg: with what soaks. rows: since the last weighing. [kg]"""

    stock: FeedStock
    weighed_kg: float
    farm: FarmFacts
    rows: tuple[Row, ...] = ()
    open_rows: tuple[OpenRow, ...] = ()
    measures: tuple[Measured, ...] = ()

    @property
    def book_kg(self) -> float:
        """What must be there by the book."""
        return self.stock.kg or 0.0

    @property
    def agrees(self) -> bool:
        """Whether there is nothing to explain."""
        return abs(self.weighed_kg - self.book_kg) <= agree_within_kg(self.weighed_kg)

    def day(self, at: datetime) -> str:
        """The farm's own day of a moment, in words."""
        return day_words(local(at, self.farm.zone).date())
