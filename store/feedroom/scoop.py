"""A measure weighed anew: whether it is due, how it changed, and what is proposed of the plan. Nothing is applied."""

import re
from collections.abc import Iterator, Sequence
from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.desk import Desk
from store.book.drafts import Subject
from store.book.facts.feed import Feed, Told
from store.book.needs import Needs
from store.book.reading.stock import read_weighings
from store.book.stocks import Delivered, FeedStock, Weighed
from store.book.words import Units
from store.husbandry.lots import lot_began
from store.husbandry.measures import change_percent, in_quarters, one_of
from store.round.amount import Unreadable, feed_amount, whole_number
from store.round.measured import SURE, scoop_weight

SEVERAL_MOST = 50
_SEVERAL = re.compile(r"^(?P<measures>\d{1,3})\s+(?P<word>[^\d\s][^\d]*?)[\s=:]+(?P<total>[\d.,½¼¾].*)$")


class Drift(Struct, frozen=True):
    """One weighing of a measure, and by how much it differs from the one before. [kg, %] None: the first."""

    at: datetime
    holds_kg: float
    change_percent: float | None


class Retold(Struct, frozen=True):
    """A line of the plan in a measure that holds something else now, for one head. [kg]

    was, exactly: the due kilograms in the measure as it was, and as it is. proposed: the nearest quarter of it; None
    where that is nothing, or further from what is due than the farm changes a feed in one step.
    """

    subject: Subject
    slot: str
    due_kg: float
    was: float
    exactly: float
    proposed: float | None
    proposed_kg: float | None


class Held(Struct, frozen=True):
    """What one level measure of a feed held before, and holds now. [kg]"""

    before_kg: float
    now_kg: float

    @property
    def change_percent(self) -> float:
        """By how much it changed. [%]"""
        return change_percent(self.before_kg, self.now_kg)


def needs_weighing(desk: Desk, stock: FeedStock, needs: Needs, now: datetime) -> tuple[UUID, ...]:
    """The measures to be weighed at the first use of a new bag: the feed's plans are told in them.

    That is so where the newest delivery of another lot (or the first of all; a lot that was not written may be
    another) is newer than the measure's newest weighing.
    """
    came_at = new_lot_at(stock.deliveries)
    if came_at is None:
        return ()
    by_measure = {id_: read_weighings(desk, id_, stock.feed.id, now) for id_ in needs.measures(stock.feed.id)}
    due = (id_ for id_, found in by_measure.items() if not found or found[0].at < came_at)
    return tuple(sorted(due, key=lambda id_: id_.bytes))


def new_lot_at(deliveries: Sequence[Delivered]) -> datetime | None:
    """When the newest delivery of another lot than the one before it came. deliveries: newest first. None: nothing."""
    return deliveries[lot_began([each.lot for each in deliveries])].at if deliveries else None


def level_weight(typed: str, feed: Feed, told: Told, units: Units) -> float:
    """What one level measure weighs; several weighed together are typed as `3 scoops 12.15 lb`. [kg]

    Raises Unreadable, and Doubtful for less than half or more than twice of before, unless ! is behind.
    """
    several = _SEVERAL.match(typed.strip())
    if several is None or several["word"].lower() not in (told.name.lower(), told.plural.lower()):
        return scoop_weight(typed, feed, told, units)
    measures = whole_number(several["measures"], SEVERAL_MOST, told.plural)
    if measures == 0:
        raise Unreadable(f"None of the {told.plural} was weighed. Type it as 3 {told.plural} 2.1 kg.")
    sure = SURE if typed.rstrip().endswith(SURE) else ""
    total_kg = feed_amount(several["total"].rstrip(f"{SURE} "), feed, None, units).kg
    return scoop_weight(f"{one_of(total_kg, measures):.6f} kg {sure}", feed, told, units)


def drift(weighings: Sequence[Weighed]) -> tuple[Drift, ...]:
    """How a measure changed over its weighings, oldest first. weighings: newest first."""
    oldest_first = list(reversed(weighings))
    before = [None, *(each.holds_kg for each in oldest_first)]
    return tuple(
        Drift(each.at, each.holds_kg, None if was is None else change_percent(was, each.holds_kg))
        for was, each in zip(before, oldest_first, strict=False)
    )


def retold(needs: Needs, feed_id: UUID, measure_id: UUID, held: Held, step_kg: float | None = None) -> Iterator[Retold]:
    """Every line of the plans in force that is told in a measure, in the measure as weighed now. Changes nothing.

    step_kg: the farm's most for one change; None: not set.
    """
    for need in needs.needs:
        row = need.at(needs.now)
        if need.feed_id == feed_id and row and row.measure_id == measure_id and row.due_kg:
            proposed = _proposed(row.due_kg, held.now_kg, step_kg)
            yield Retold(
                need.subject,
                need.slot,
                row.due_kg,
                row.due_kg / held.before_kg,
                row.due_kg / held.now_kg,
                proposed,
                None if proposed is None else proposed * held.now_kg,
            )


def _proposed(due_kg: float, holds_kg: float, step_kg: float | None) -> float | None:
    measures = in_quarters(due_kg, holds_kg)
    off_kg = abs(measures * holds_kg - due_kg)
    return measures if measures and (step_kg is None or off_kg <= step_kg) else None
