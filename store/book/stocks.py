"""What the book knows of a feed in the feed room, as frozen values. Weights are kilograms as it lies, soaked feeds dry.

What soaks counts as still there until it is fed or thrown out, so that no feed is counted twice.
"""

from datetime import date, datetime
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Subject
from store.book.facts.feed import Feed
from store.book.turn import Turn
from store.book.words import State
from store.husbandry.stock import there_kg


class Stocked(Struct, frozen=True):
    """A weighing of what was there. id, step_id: its entry, for a correction. [kg]"""

    id: UUID
    step_id: UUID
    at: datetime
    kg: float
    typed: str = ""


class Delivered(Struct, frozen=True):
    """What came in. price: for all of it, None: not known. bags None: loose. [kg]"""

    id: UUID
    step_id: UUID
    at: datetime
    kg: float
    bags: int | None
    price: float | None
    lot: str

    @property
    def price_per_kg(self) -> float | None:
        """None: not known, or nothing came."""
        return self.price / self.kg if self.price is not None and self.kg else None

    @property
    def bag_kg(self) -> float | None:
        """What one bag or bale is; None where it came loose."""
        return self.kg / self.bags if self.bags else None


class Lost(Struct, frozen=True):
    """Feed that no animal ate. thrown_out: a soaked batch that was not fed; it is mended in its round. [kg]"""

    id: UUID
    step_id: UUID
    at: datetime
    kg: float
    why: str
    thrown_out: bool = False


class FeedStock(Struct, frozen=True):
    """One feed in the feed room, since it was weighed last; never weighed: since its first delivery.

    delivered, lost: oldest first. fed_kg: by the farm's own day. soaking_kg: what is in its soak bucket now, dry, and
    counted as there. deliveries: the newest ones, newest first, also those before the weighing.
    before: the weighing before the last one.
    """

    feed: Feed
    weighed: Stocked | None
    since: datetime | None
    delivered: tuple[Delivered, ...] = ()
    lost: tuple[Lost, ...] = ()
    fed_kg: tuple[tuple[date, float], ...] = ()
    soaking_kg: float = 0.0
    deliveries: tuple[Delivered, ...] = ()
    before: Stocked | None = None

    @property
    def kg(self) -> float | None:
        """What must be there; below zero where more was fed than came. None: neither weighed nor delivered."""
        if self.since is None:
            return None
        weighed_kg = self.weighed.kg if self.weighed else 0.0
        delivered_kg, lost_kg = (sum(each.kg for each in found) for found in (self.delivered, self.lost))
        return there_kg(weighed_kg, delivered_kg, sum(kg for _, kg in self.fed_kg), lost_kg)

    @property
    def priced(self) -> Delivered | None:
        """The newest delivery of which the price is known: what it costs to have it again."""
        return next((each for each in self.deliveries if each.price_per_kg is not None), None)


class Row(Struct, frozen=True):
    """One feed of a feed step of a round, as the entry that counts has it. [kg]"""

    turn: Turn
    subject: Subject
    state: State
    measure_id: UUID | None
    due_kg: float | None
    given_kg: float | None
    left_kg: float | None
    at: datetime


class Weighed(Struct, frozen=True):
    """A level measure of a feed was weighed. [kg]"""

    at: datetime
    holds_kg: float


class FeedSettings(Struct, frozen=True):
    """What the farm decided about its feed room; None or empty: not said."""

    lead_days: int | None = None
    turnout_on: date | None = None
    hay_loss_percent: float | None = None
    change_step_kg: float | None = None
    currency: str = ""
