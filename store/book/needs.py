"""What the feed plans take of each feed in a round past or to come, as frozen values. [kg, soaked feeds dry]"""

from bisect import bisect
from collections.abc import Callable
from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Subject
from store.book.turn import Turn, local


class NeedRow(Struct, frozen=True):
    """What a head is to get from a moment on, and the measure it is told in. [kg] due_kg None: no more of it."""

    begins_at: datetime
    due_kg: float | None
    measure_id: UUID | None = None


class Need(Struct, frozen=True):
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


class Needs(Struct, frozen=True):
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

    def by_round(self, feed_id: UUID) -> Callable[[Turn], float]:
        """The same for many rounds on end: worked out once a slot for all days between two on which a plan row begins.

        Only days with such a row, with a settled round, and that of the round in hand are worked out by themselves.
        """
        rows = (row for need in self.needs if need.feed_id == feed_id for row in need.rows)
        begin = sorted({local(row.begins_at, self.zone).date() for row in rows})
        alone = {*begin, self.turn.day, *(turn.day for turn, _ in self.settled)}
        known: dict[tuple[str, int], float] = {}

        def kg(turn: Turn) -> float:
            if turn.day in alone:
                return self.kg(feed_id, turn)
            alike = (turn.slot, bisect(begin, turn.day))
            if alike not in known:
                known[alike] = self.kg(feed_id, turn)
            return known[alike]

        return kg

    def first(self, feed_id: UUID) -> Turn:
        """The next round that this feed is not fed in yet: the one in hand, or the one after it."""
        return self.turn if self.kg(feed_id, self.turn) > 0 else self.turn.after()

    def measures(self, feed_id: UUID) -> frozenset[UUID]:
        """The measures that the plans in force now are told in."""
        rows = (need.at(self.now) for need in self.needs if need.feed_id == feed_id)
        return frozenset(row.measure_id for row in rows if row and row.due_kg and row.measure_id)
