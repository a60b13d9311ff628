"""What the book knows of a feed in the feed room, as frozen values. Weights are kilograms as it lies, soaked feeds dry.

What soaks counts as still there until it is fed or thrown out, so that no feed is counted twice.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts import Feed
from store.book.turn import Turn
from store.book.words import State
from store.husbandry.stock import there_kg


@dataclass(frozen=True, slots=True)
class Stocked:
    """A weighing of what was there. id, step_id: its entry, for a correction. [kg]"""

    id: UUID
    step_id: UUID
    at: datetime
    kg: float
    typed: str = ""


@dataclass(frozen=True, slots=True)
class Delivered:
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


@dataclass(frozen=True, slots=True)
class Lost:
    """Feed that no animal ate. thrown_out: a soaked batch that was not fed; it is mended in its round. [kg]"""

    id: UUID
    step_id: UUID
    at: datetime
    kg: float
    why: str
    thrown_out: bool = False


@dataclass(frozen=True, slots=True)
class FeedStock:
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


@dataclass(frozen=True, slots=True)
class Row:
    """One feed of a feed step of a round, as the entry that counts has it. [kg]"""

    turn: Turn
    subject: Subject
    state: State
    measure_id: UUID | None
    due_kg: float | None
    given_kg: float | None
    left_kg: float | None
    at: datetime


@dataclass(frozen=True, slots=True)
class Weighed:
    """A level measure of a feed was weighed. [kg]"""

    at: datetime
    holds_kg: float


@dataclass(frozen=True, slots=True)
class FeedSettings:
    """What the farm decided about its feed room; None or empty: not said."""

    lead_days: int | None = None
    turnout_on: date | None = None
    hay_loss_percent: float | None = None
    change_step_kg: float | None = None
    currency: str = ""


@dataclass(frozen=True, slots=True)
class NeedRow:
    """What a head is to get from a moment on, and the measure it is told in. [kg] due_kg None: no more of it."""

    begins_at: datetime
    due_kg: float | None
    measure_id: UUID | None = None


@dataclass(frozen=True, slots=True)
class Need:
    """One feed of the plan of an animal, or of each head of a pen, in one slot. rows: oldest first."""

    subject: Subject
    feed_id: UUID
    slot: str
    heads: int
    rows: tuple[NeedRow, ...]

    def at(self, moment: datetime) -> NeedRow | None:
        """The row in force at a moment."""
        return next((row for row in reversed(self.rows) if row.begins_at <= moment), None)

    def due_kg(self, moment: datetime) -> float:
        """What all heads together are to get by the plan in force at a moment. [kg]"""
        row = self.at(moment)
        return (row.due_kg or 0.0) * self.heads if row else 0.0


@dataclass(frozen=True, slots=True)
class Needs:
    """What is planned of every feed, at a moment and in a round. settled: fed or skipped, by round and subject."""

    zone: str
    now: datetime
    turn: Turn
    needs: tuple[Need, ...]
    settled: frozenset[tuple[Turn, UUID]] = frozenset()
    moved_on: frozenset[tuple[Turn, UUID]] = frozenset()

    def of(self, feed_id: UUID, turn: Turn) -> tuple[tuple[Need, float], ...]:
        """The lines of a feed that a round gives and that are not settled, and what each takes. [kg]

        Plans are taken as they are in force when the round usually begins; of the round in hand, now if that is later.
        """
        begins = turn.begins(self.zone)
        at = max(begins, self.now) if turn == self.turn else begins
        due = ((need, need.due_kg(at)) for need in self.needs if need.feed_id == feed_id and need.slot == turn.slot)
        return tuple((need, kg) for need, kg in due if kg > 0 and (turn, need.subject.id) not in self.settled)

    def kg(self, feed_id: UUID, turn: Turn) -> float:
        """What is still to be fed of a feed in a round. [kg]"""
        return sum(kg for _, kg in self.of(feed_id, turn))

    def first(self, feed_id: UUID) -> Turn:
        """The next round that this feed is not fed in yet: the one in hand, or the one after it."""
        return self.turn if self.kg(feed_id, self.turn) > 0 else self.turn.after()

    def measures(self, feed_id: UUID) -> frozenset[UUID]:
        """The measures that the plans in force now are told in."""
        rows = (need.at(self.now) for need in self.needs if need.feed_id == feed_id)
        return frozenset(row.measure_id for row in rows if row and row.due_kg and row.measure_id)


Changes = Mapping[UUID, tuple[tuple[datetime, Any], ...]]
"""By id what was so from a moment on, oldest first."""


@dataclass(frozen=True, slots=True)
class Stood:
    """Where animals stood and which of them were kept, from a moment until another."""

    since: datetime
    until: datetime
    pens: Changes
    kept: Changes

    def heads(self, pen_ids: Collection[UUID], at: datetime) -> tuple[UUID, ...]:
        """The animals that stood in some pens at a moment."""
        stood = (id_ for id_ in self.pens if so_at(self.pens, id_, at) in pen_ids and so_at(self.kept, id_, at))
        return tuple(sorted(stood, key=lambda id_: id_.bytes))


def so_at(changes: Changes, id_: UUID, at: datetime) -> Any:
    """What was so at a moment; None: nothing was said yet."""
    return next((value for since, value in reversed(changes.get(id_, ())) if since <= at), None)
