"""What stands free in a pen, as a mineral tub: what each head took of it a day, by two weighings."""

from datetime import datetime, timedelta
from itertools import pairwise

from msgspec import Struct

from store.book.clock import MICROSECOND
from store.book.desk import Desk
from store.book.reading.facts import read_facts
from store.book.reading.stock import stock_of
from store.book.reading.stood import read_free, read_stood
from store.book.stocks import FeedStock
from store.book.stood import Changes, Stood, so_at
from store.husbandry.intake import a_head_and_day_g

DAY = timedelta(days=1)


class TubIntake(Struct, frozen=True):
    """What was taken between two weighings. gone_kg below zero: more was there than before; weigh again.

    head_days: heads times days in the pens where it stood. g: each head a day; None where none stood there.
    """

    since: datetime
    until: datetime
    gone_kg: float
    head_days: float
    g: float | None


def tub_intake(desk: Desk, stock: FeedStock) -> TubIntake | None:
    """Between the last two weighings of a feed; deliveries, losses and what was fed by hand in between are taken off.

    None: it was not weighed twice.
    """
    if stock.weighed is None or stock.before is None:
        return None
    since, until = stock.before.at, stock.weighed.at
    zone = read_facts(desk, until).zone
    there_kg = stock_of(desk, stock.feed, until - MICROSECOND, zone).kg or 0.0
    gone_kg = there_kg - stock.weighed.kg
    days = head_days(read_stood(desk, since, until), read_free(desk, stock.feed.id, until))
    return TubIntake(since, until, gone_kg, days, a_head_and_day_g(gone_kg, days) if gone_kg >= 0 else None)


def head_days(stood: Stood, free: Changes) -> float:
    """Heads times days in the pens where a feed stood free, also where animals or tub were moved in between. [days]"""
    moved = {at for changes in (stood.pens, stood.kept, free) for rows in changes.values() for at, _ in rows}
    moments = sorted({stood.since, stood.until, *(at for at in moved if stood.since < at < stood.until)})
    return sum(
        len(stood.heads([pen for pen in free if so_at(free, pen, begin)], begin)) * ((end - begin) / DAY)
        for begin, end in pairwise(moments)
    )
