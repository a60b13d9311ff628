"""What of a farm's facts can be looked over for slips, as frozen values: what is in force at one moment."""

from collections import defaultdict
from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.clock import micros
from store.book.desk import Desk
from store.book.reading import feed_sql, sql
from store.book.reading.facts import uid
from store.book.words import EVENING, MORNING

VOLUMES = """
SELECT i.id, v.holds_l FROM measure i JOIN volume v ON v.id = (
  SELECT n.id FROM volume n WHERE n.measure_id = i.id AND n.begins_at <= :at
  ORDER BY n.begins_at DESC, n.written_at DESC, n.id DESC LIMIT 1
) ORDER BY i.id
"""
DELIVERIES = f"""
SELECT e.feed_id, d.kg FROM entry e JOIN delivered d ON d.entry_id = e.id
WHERE e.kind = 'delivery' AND e.state = 'done' AND {sql.NEWEST_OF_ITS_STEP} ORDER BY e.happened_at, e.id
"""


class Weighed(Struct, frozen=True):
    """What a level measure of a feed was weighed at, beside what it holds. [kg] [L]"""

    measure: str
    feed: str
    holds_kg: float
    holds_l: float


class Yard(Struct, frozen=True):
    """Names are those in use at the moment; tagged: name and tag of each animal; plans: whose, and which feed of it is
    not in use any more; delivered: by feed, in the order in which it came. [kg]
    """

    tagged: tuple[tuple[str, str], ...]
    pens: tuple[str, ...]
    feeds: tuple[str, ...]
    plans_without_feed: tuple[tuple[str, str], ...]
    weighed: tuple[Weighed, ...]
    delivered: tuple[tuple[str, tuple[float, ...]], ...]


def read_yard(desk: Desk, now: datetime) -> Yard:
    """Read it. Costs a few look-ups for each thing there is, and all deliveries."""
    at = {"at": micros(now)}
    feeds = {uid(row[0]): (row[1], bool(row[5])) for row in desk.rows(feed_sql.FEEDS, at)}
    return Yard(
        tagged=tuple(sorted((row[1], row[2]) for row in desk.rows(sql.ANIMALS, at))),
        pens=tuple(sorted(row[1] for row in desk.rows(sql.PENS, at))),
        feeds=tuple(sorted(name for name, in_use in feeds.values() if in_use)),
        plans_without_feed=_plans(desk, now, {id_: name for id_, (name, in_use) in feeds.items() if not in_use}),
        weighed=_weighed(desk, now, {id_: name for id_, (name, _) in feeds.items()}),
        delivered=_delivered(desk, {id_: name for id_, (name, _) in feeds.items()}),
    )


def _plans(desk: Desk, now: datetime, gone: dict[UUID, str]) -> tuple[tuple[str, str], ...]:
    at = {"at": micros(now), "known": micros(now)}
    names = {uid(row[0]): row[1] for row in desk.rows(sql.NAMES, {"at": micros(now)})}
    found = {
        (names[uid(row[0])], gone[uid(row[1])])
        for statement in (feed_sql.ANIMAL_PLANS, feed_sql.PEN_PLANS)
        for slot in (MORNING, EVENING)
        for row in desk.rows(statement, at | {"slot": slot})
        if uid(row[1]) in gone and row[2]
    }
    return tuple(sorted(found))


def _weighed(desk: Desk, now: datetime, feeds: dict[UUID, str]) -> tuple[Weighed, ...]:
    at = {"at": micros(now)}
    holds_l = {uid(row[0]): float(row[1]) for row in desk.rows(VOLUMES, at)}
    found = (
        (row[1], feeds[uid(row[3])], float(row[4]), holds_l[uid(row[0])])
        for row in desk.rows(feed_sql.MEASURES, at)
        if row[4] is not None and uid(row[0]) in holds_l and uid(row[3]) in feeds
    )
    return tuple(Weighed(*each) for each in sorted(found))


def _delivered(desk: Desk, feeds: dict[UUID, str]) -> tuple[tuple[str, tuple[float, ...]], ...]:
    by_feed: defaultdict[str, list[float]] = defaultdict(list)
    for feed_id, kg in desk.rows(DELIVERIES, {}):
        by_feed[feeds.get(uid(feed_id), "a feed without a name")].append(float(kg))
    return tuple((name, tuple(kgs)) for name, kgs in sorted(by_feed.items()))
