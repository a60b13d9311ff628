"""A weighing of a feed read against the book."""

from datetime import datetime

from msgspec.structs import replace

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


def book_against_scale(known: Case, bin_kg: float) -> Comparison:
    """What was weighed of a feed, against the book, with what would explain the difference. [kg]

    known: as read before the weighing is written. bin_kg: without what soaks.
    """
    case = replace(known, weighed_kg=bin_kg + known.stock.soaking_kg)
    return compare(case.book_kg, case.weighed_kg, causes(case))


def read_case(desk: Desk, stock: FeedStock, now: datetime) -> Case | None:
    """What the book knows of a feed before it is weighed: as if the scale said the same. None: nothing yet."""
    if stock.kg is None or stock.since is None:
        return None
    farm = read_facts(desk, now)
    first, today = since_day(stock.since, farm.zone), local(now, farm.zone).date()
    rows = read_rows(desk, stock.feed.id, first, today)
    still_open = open_rows(stock, read_needs(desk, now, stock.since), rows, names_at(desk, now))
    told = {measure_id: each.name for (measure_id, _), each in told_at(desk, now).items()}
    ids = dict.fromkeys(row.measure_id for row in rows if row.measure_id)
    measures = (Measured(id_, told[id_], read_weighings(desk, id_, stock.feed.id, now)) for id_ in ids)
    weighed = tuple(measure for measure in measures if measure.weighings)
    return Case(stock, stock.kg, farm, rows, still_open, weighed)
