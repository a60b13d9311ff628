"""A weighing of a feed read against the book."""

from datetime import datetime

from store.book.desk import Desk
from store.book.reading.facts import read_facts
from store.book.reading.needs import read_needs
from store.book.reading.stock import names_at, read_rows, read_weighings, since_day, told_at
from store.book.stocks import FeedStock
from store.book.turn import local
from store.feedroom.against import Comparison, compare
from store.feedroom.case import Case, Measured
from store.feedroom.causes import causes
from store.feedroom.open_rows import open_rows


def book_against_scale(desk: Desk, stock: FeedStock, bin_kg: float, now: datetime) -> Comparison | None:
    """What was weighed of a feed, against the book, with what would explain the difference. Changes nothing. [kg]

    stock: as read before the weighing is written. bin_kg: without what soaks. None: the book knows nothing of it yet.
    """
    if stock.kg is None or stock.since is None:
        return None
    case = _case(desk, stock, bin_kg + stock.soaking_kg, now)
    return compare(case.book_kg, case.weighed_kg, causes(case))


def _case(desk: Desk, stock: FeedStock, weighed_kg: float, now: datetime) -> Case:
    farm = read_facts(desk, now)
    first, today = since_day(stock.since or now, farm.zone), local(now, farm.zone).date()
    rows = read_rows(desk, stock.feed.id, first, today)
    still_open = open_rows(stock, read_needs(desk, now, stock.since), rows, names_at(desk, now))
    told = {measure_id: each.name for (measure_id, _), each in told_at(desk, now).items()}
    ids = dict.fromkeys(row.measure_id for row in rows if row.measure_id)
    measures = (Measured(id_, told[id_], read_weighings(desk, id_, stock.feed.id, now)) for id_ in ids)
    weighed = tuple(measure for measure in measures if measure.weighings)
    return Case(stock, weighed_kg, farm, rows, still_open, weighed)
