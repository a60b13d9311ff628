"""What is there of each feed, as the book has it at a moment. Not on the way to the first frame."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date, datetime, timedelta
from functools import partial
from math import inf
from typing import Any
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import FoundRow, ReadingDesk
from store.book.drafts import Subject
from store.book.facts.feed import Feed, Told
from store.book.reading import feed_facts, feed_sql, sql, stock_sql
from store.book.reading.facts import maybe_uid, read_facts, uid
from store.book.stocks import Delivered, FeedSettings, FeedStock, Lost, Row, Stocked, Weighed
from store.book.turn import Turn, local
from store.book.words import LEAP_YEAR, SettingName, Soak, State
from store.husbandry.stock import in_bucket_kg

Rows = Callable[..., Sequence[FoundRow]]
DELIVERIES_MOST, WEIGHINGS_MOST = 12, 60
"""So many of the newest are read, to say what is usual and how a measure drifts."""
THROWN_OUT = "soaked feed thrown out"
SOAKS_MOST = timedelta(days=3)
"""What was put to soak longer ago is no feed any more, whatever became of it. Common practice."""


def feeds_at(desk: ReadingDesk, now: datetime) -> dict[UUID, Feed]:
    """Every feed by its id, those out of use too."""
    values = {"at": micros(now)}
    return feed_facts.feeds(desk.rows(feed_sql.FEEDS, values), desk.rows(feed_sql.BARRED, values))


def read_stock(desk: ReadingDesk, now: datetime, *, out_of_use: bool = False) -> tuple[FeedStock, ...]:
    """The stock of each feed in use, by name; out_of_use: of every other one too. Raises DamagedBook.

    A feeding, a delivery or a loss counts that happened after the newest weighing; a round of a day earlier than the
    day before that weighing was before it, whatever hour was typed.
    """
    zone = read_facts(desk, now).zone
    wanted = (feed for feed in feeds_at(desk, now).values() if feed.in_use or out_of_use)
    in_order = sorted(wanted, key=lambda feed: (feed.name, feed.id.bytes))
    return tuple(stock_of(desk, feed, now, zone) for feed in in_order)


def stock_of(desk: ReadingDesk, feed: Feed, now: datetime, zone: str) -> FeedStock:
    """The stock of one feed as it was at a moment. zone: the farm's. Raises DamagedBook."""
    rows = partial(_rows, desk, feed.id, at=micros(now))
    weighed = tuple(Stocked(uid(id_), uid(step), moment(at), *rest) for id_, step, at, *rest in rows(
        stock_sql.STOCKED, most=2,
    ))  # fmt: skip
    since = weighed[0].at if weighed else _before_first(rows)
    lately = tuple(_delivered(row) for row in rows(stock_sql.LAST_DELIVERED, most=DELIVERIES_MOST))
    known = FeedStock(feed, next(iter(weighed), None), since, deliveries=lately, before=next(iter(weighed[1:]), None),
                      soaking_kg=_soaking_kg(rows, now - SOAKS_MOST, zone) if feed.soaked else 0.0)  # fmt: skip
    return known if since is None else _since(known, partial(rows, since=micros(since)), since_day(since, zone))


def _since(known: FeedStock, rows: Rows, first: date) -> FeedStock:
    """The same stock with what came and went since it was weighed."""
    return FeedStock(
        known.feed,
        known.weighed,
        known.since,
        delivered=tuple(_delivered(row) for row in rows(stock_sql.DELIVERED)),
        lost=_lost(rows),
        fed_kg=tuple((date.fromisoformat(day), kg) for day, kg in rows(stock_sql.FED, since_day=first.isoformat())),
        soaking_kg=known.soaking_kg,
        deliveries=known.deliveries,
        before=known.before,
    )


def since_day(since: datetime, zone: str) -> date:
    """The first day whose rounds may have been walked after a moment: an evening round goes on into the night."""
    return local(since, zone).date() - timedelta(days=1)


def read_rows(desk: ReadingDesk, feed_id: UUID, first: date, last: date) -> tuple[Row, ...]:
    """Every row of a feed in the rounds of some days, as the entries that count have it, in the order it happened."""
    days = {"since_day": first.isoformat(), "until_day": last.isoformat()}
    return tuple(_row(found) for found in _rows(desk, feed_id, stock_sql.ROWS, **days))


def read_weighings(desk: ReadingDesk, measure_id: UUID, feed_id: UUID, now: datetime) -> tuple[Weighed, ...]:
    """How a measure of a feed was weighed, newest first; of two that begin together, the one that counts first."""
    values = {"measure": measure_id.bytes, "at": micros(now), "most": WEIGHINGS_MOST}
    return tuple(Weighed(moment(at), kg) for at, kg in _rows(desk, feed_id, stock_sql.WEIGHINGS, **values))


def read_settings(desk: ReadingDesk, now: datetime) -> FeedSettings:
    """What the farm decided about its feed room; what cannot be read as such counts as not said."""
    said: dict[str, str] = dict(desk.rows(sql.SETTINGS, {"at": micros(now)}))
    today = local(now, read_facts(desk, now).zone).date()

    def of(name: SettingName, read: Callable[[str], Any]) -> Any:
        try:
            return read(said[name]) if name in said else None
        except ValueError:
            return None

    return FeedSettings(
        of(SettingName.LEAD_DAYS, int), of(SettingName.TURNOUT_ON, partial(_next_day_of_year, today=today)),
        of(SettingName.HAY_LOSS_PERCENT, float), of(SettingName.CHANGE_STEP_KG, float),
        said.get(SettingName.CURRENCY, ""),
    )  # fmt: skip


def _next_day_of_year(month_and_day: str, today: date) -> date:
    """The next such day, today included; 02-29 is the last of February. Raises ValueError for what is no day."""
    date.fromisoformat(f"{LEAP_YEAR}-{month_and_day}")
    for year in (today.year, today.year + 1):
        month, day = map(int, month_and_day.split("-"))
        found = date(year, month, 1) + timedelta(days=day - 1)
        found = found if found.month == month else found - timedelta(days=1)
        if found >= today:
            return found
    raise ValueError(month_and_day)


def _rows(desk: ReadingDesk, feed_id: UUID, statement: str, **values: Any) -> Sequence[FoundRow]:
    return desk.rows(statement, {"feed": feed_id.bytes} | values)


def _before_first(rows: Rows) -> datetime | None:
    """Just before the first delivery: what was fed before anything came into the book was never in it."""
    found = rows(stock_sql.FIRST_DELIVERED)
    return moment(found[0][0] - 1) if found else None


def _delivered(found: FoundRow) -> Delivered:
    id_, step, at, *rest = found
    return Delivered(uid(id_), uid(step), moment(at), *rest)


def _lost(rows: Rows) -> tuple[Lost, ...]:
    """What was lost, and what was put to soak and thrown out: no animal ate either."""
    lost = [Lost(uid(id_), uid(step), moment(at), *rest) for id_, step, at, *rest in rows(stock_sql.LOST)]
    thrown = rows(stock_sql.THROWN_OUT)
    lost += [Lost(uid(id_), uid(step), moment(at), kg, _thrown_out(why), True) for id_, step, at, kg, why in thrown]
    return tuple(sorted(lost, key=lambda each: (each.at, each.id.bytes)))


def _thrown_out(why: str) -> str:
    """`soaked feed thrown out: sour`."""
    return f"{THROWN_OUT}: {why}" if why else THROWN_OUT


def _soaking_kg(rows: Rows, since: datetime, zone: str) -> float:
    """What was put to soak since a moment, less what was fed and thrown out of it, in the order it happened."""
    at = {"since": micros(since)}
    fed = [(at, -kg) for at, kg in rows(stock_sql.FED_AT, **at, since_day=since_day(since, zone).isoformat())]
    acts = [(at, _into_bucket(act, kg)) for at, act, kg in rows(stock_sql.SOAKING, **at)]
    return in_bucket_kg(kg for _, kg in sorted((*acts, *fed), key=lambda each: each[0]))


def _into_bucket(act: str, kg: float | None) -> float:
    """Thrown out without a weight is all of it: nothing was written as put to soak then."""
    if act == Soak.STARTED:
        return kg or 0.0
    return -inf if kg is None else -kg


def _row(found: FoundRow) -> Row:
    day, slot, animal, pen, state, measure, due_kg, given_kg, left_kg, at = found
    turn, subject = Turn(date.fromisoformat(day), slot), Subject(maybe_uid(animal), maybe_uid(pen))
    return Row(turn, subject, State(state), maybe_uid(measure), due_kg, given_kg, left_kg, moment(at))


def told_at(desk: ReadingDesk, now: datetime) -> Mapping[tuple[UUID, UUID], Told]:
    """Every measure for every feed, by their ids."""
    return feed_facts.told(desk.rows(feed_sql.MEASURES, {"at": micros(now)}))


def names_at(desk: ReadingDesk, now: datetime) -> Mapping[UUID, str]:
    """The name of every animal, pen and feed."""
    return {uid(id_): name for id_, name, _ in desk.rows(sql.NAMES, {"at": micros(now)})}
