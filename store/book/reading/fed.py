"""What is read of feed for one round: what each gets and was given, what soaks, when a lot came."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from typing import Any
from uuid import UUID

from msgspec.structs import replace

from store.book.clock import moment
from store.book.desk import FoundRow
from store.book.facts.feed import Batch, Feed, PlanRow, Portion, Told
from store.book.reading import feed_facts, feed_sql, stock_sql
from store.book.reading.facts import uid
from store.book.reading.reading import Reading
from store.book.snapshot import Given
from store.book.words import Kind
from store.husbandry.lots import lot_began

LOTS_MOST = 12
"""So many deliveries back it is looked for the beginning of a lot."""


def read_portions(
    reading: Reading, feeds: Mapping[UUID, Feed], slot: str, **more: Any
) -> tuple[dict[UUID, tuple[Portion, ...]], dict[UUID, tuple[Portion, ...]]]:
    """What each animal, and each pen, gets in a slot."""
    measures = read_told(reading, **more)
    plans = (reading.rows(statement, slot=slot, **more) for statement in (feed_sql.ANIMAL_PLANS, feed_sql.PEN_PLANS))
    animals, pens = (feed_facts.portions(each, feeds, measures) for each in plans)
    return animals, pens


def with_rows(
    reading: Reading, plans: Mapping[UUID, tuple[Portion, ...]], statement: str
) -> dict[UUID, tuple[Portion, ...]]:
    """The portions of this round with the rows of their plans, of which a change under way is seen."""

    def rows(id_: UUID, portion: Portion) -> tuple[PlanRow, ...]:
        found = reading.rows(statement, subject=id_.bytes, feed=portion.feed.id.bytes)
        return feed_facts.plan_rows(found)

    return {id_: tuple(replace(each, rows=rows(id_, each)) for each in plan) for id_, plan in plans.items()}


def read_told(reading: Reading, **more: Any) -> dict[tuple[UUID, UUID], Told]:
    """Every measure for every feed."""
    return feed_facts.told(reading.rows(feed_sql.MEASURES, **more))


def read_given_before(
    reading: Reading, animals: Mapping[UUID, tuple[Portion, ...]], pens: Mapping[UUID, tuple[Portion, ...]]
) -> dict[UUID, Given]:
    """What each was given the last time in this slot."""
    found: dict[UUID, Sequence[FoundRow]] = {}
    for plans, statement in ((animals, feed_sql.ANIMAL_GIVEN_BEFORE), (pens, feed_sql.PEN_GIVEN_BEFORE)):
        for id_, portions in plans.items():
            kind = Kind.HAY if any(portion.feed.baled for portion in portions) else Kind.FEED
            found[id_] = reading.rows(statement, subject=id_.bytes, kind=kind.value)
    return {
        id_: Given(date.fromisoformat(rows[0][0]), {uid(feed): given_kg for _, feed, given_kg in rows})
        for id_, rows in found.items()
        if rows
    }


def read_new_bags(reading: Reading, feed_ids: set[UUID]) -> dict[UUID, datetime]:
    """When the newest lot of each feed came, where any came by the book."""
    found = {id_: reading.rows(stock_sql.LAST_DELIVERED, feed=id_.bytes, most=LOTS_MOST) for id_ in feed_ids}
    return {id_: moment(rows[lot_began([row[-1] for row in rows])][2]) for id_, rows in found.items() if rows}


def read_batches(reading: Reading, feeds: Mapping[UUID, Feed]) -> dict[UUID, Batch]:
    """What stands in the soak buckets: the newest batch of each soaked feed, unless it was fed or thrown out."""
    found = {feed.id: reading.rows(feed_sql.BATCHES, subject=feed.id.bytes) for feed in feeds.values() if feed.soaked}
    return {
        id_: Batch(moment(rows[0][0]), rows[0][1], rows[0][2])
        for id_, rows in found.items()
        if rows and not rows[0][3] and rows[0][1] is not None
    }
