"""What was seen of a feed lately: a scoop that holds more than before, and who leaves it again and again."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from store.book.desk import Desk
from store.book.reading.stock import names_at, read_rows, read_weighings, told_at
from store.book.stocks import FeedStock
from store.book.turn import local
from store.feedroom.intake import refusals
from store.feedroom.scoop import drift
from store.round.saying import exact
from tui.walker import Walker
from tui.words import day

REFUSED_DAYS = 14
"""So many days back it is looked who left something. Common practice."""


def lately(walker: Walker, stock: FeedStock, desk: Desk, now: datetime) -> Iterator[str]:
    """Lines, each only where there is something to say."""
    yield from _scoops(walker, stock, desk, now)
    today = local(now, walker.farm.zone).date()
    rows = read_rows(desk, stock.feed.id, today - timedelta(days=REFUSED_DAYS), today)
    names = names_at(desk, now)
    for refusal in refusals({stock.feed.id: rows}):
        left = ", ".join(exact(kg, walker.farm.units) for kg in refusal.left_kg)
        yield f"{names.get(refusal.subject.id, 'somebody')} left some of it the last three times: {left}, newest first"


def _scoops(walker: Walker, stock: FeedStock, desk: Desk, now: datetime) -> Iterator[str]:
    """Each measure of it that was weighed more than once."""
    for (measure_id, feed_id), told in told_at(desk, now).items():
        if feed_id != stock.feed.id or told.holds_kg is None:
            continue
        found = drift(read_weighings(desk, measure_id, feed_id, now))
        if len(found) > 1 and found[-1].change_percent is not None:
            began = day(local(found[-1].at, walker.farm.zone))
            before, holds = (exact(each.holds_kg, walker.farm.units) for each in found[-2:])
            yield f"One {told.name}: {holds} since {began}, before {before} ({found[-1].change_percent:+.1f} %)"
