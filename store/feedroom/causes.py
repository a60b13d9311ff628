"""What may explain a difference between book and scale: rows, deliveries, bags, measures, loss. Pure."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from itertools import combinations

from store.book.stocks import Delivered, FeedStock, Row
from store.book.turn import Turn
from store.book.words import State
from store.feedroom.against import Cause, Why
from store.feedroom.case import Case, Measured
from store.feedroom.open_rows import OpenRow
from store.feedroom.saying import day_words
from store.husbandry.stock import ratio_needed
from store.round.saying import exact, weight

BAG_LEAST, BAG_MOST = 0.9, 1.1
"""A bag that held less or more than this of what was written was not that bag. Common practice."""
TWICE_WITHIN = timedelta(days=7)
ANOTHER_KG = 0.001


def causes(case: Case) -> Iterator[Cause]:
    """Everything that may have been otherwise than the book has it."""
    yield from row_causes(case.open_rows)
    yield from delivery_causes(case)
    if not case.agrees:
        yield from bag_causes(case)
        yield from measure_causes(case)
        yield from _loss(case)


def row_causes(rows: tuple[OpenRow, ...]) -> Iterator[Cause]:
    """None of the open rows was fed; or just one of them; or those of one round; or all."""
    if not rows:
        return
    none = f"{rows[0].name} {_when(rows[0].turn)}" if len(rows) == 1 else f"all {len(rows)} open rows"
    yield Cause(Why.ROW, f"{none} not fed", 0.0)
    for row in rows:
        yield Cause(Why.ROW, f"{row.name} {_when(row.turn)} fed, and not written", -row.kg)
    for turn in dict.fromkeys(row.turn for row in rows):
        together = [row.kg for row in rows if row.turn == turn]
        if 1 < len(together) < len(rows):
            yield Cause(Why.ROW, f"all {len(together)} open rows {_when(turn)} fed, and not written", -sum(together))
    if len(rows) > 1:
        yield Cause(Why.ROW, f"{none} fed, and not written", -sum(row.kg for row in rows))


def delivery_causes(case: Case) -> Iterator[Cause]:
    """One like the last was not written down; or two that are alike are one, written twice."""
    if case.stock.deliveries:
        yield Cause(Why.DELIVERY, "a delivery like the last one not written down", case.stock.deliveries[0].kg)
    for one, other in combinations(case.stock.delivered, 2):
        if abs(one.kg - other.kg) < ANOTHER_KG and other.at - one.at < TWICE_WITHIN:
            yield Cause(Why.DELIVERY, f"the delivery of {case.day(other.at)} written twice", -other.kg)


def bag_causes(case: Case) -> Iterator[Cause]:
    """The bags of a delivery since the last weighing held more or less than was written."""
    missing_kg = case.weighed_kg - case.book_kg
    for each in case.stock.delivered:
        if each.bags and each.bag_kg and BAG_LEAST <= 1 + missing_kg / each.kg <= BAG_MOST:
            units = case.farm.units
            held, told = exact(each.bag_kg + missing_kg / each.bags, units), exact(each.bag_kg, units)
            words = f"each of the {each.bags} bags {_of_lot(case, each)} held {held}, not {told}"
            yield Cause(Why.BAGS, words, missing_kg, fitted=True)


def measure_causes(case: Case) -> Iterator[Cause]:
    """A measure held more or less than the book has it: since the last weighing of the stock, its own, or a new lot."""
    units = case.farm.units
    for measure in case.measures:
        for since in _sinces(case.stock, measure):
            told_kg = sum(row.given_kg or 0.0 for row in case.rows if _told(row, measure, since))
            ratio = ratio_needed(case.book_kg, case.weighed_kg, told_kg)
            if ratio:
                holds_kg = measure.weighings[0].holds_kg
                words = f"a {measure.name} held {exact(holds_kg * ratio, units)}, not {exact(holds_kg, units)}, since"
                yield Cause(Why.MEASURE, f"{words} {case.day(since)}", case.weighed_kg - case.book_kg, fitted=True)


def _sinces(stock: FeedStock, measure: Measured) -> list[datetime]:
    moments = {stock.since, measure.weighings[0].at, *(each.at for each in stock.delivered)}
    return sorted(at for at in moments if at and stock.since and at >= stock.since)


def _told(row: Row, measure: Measured, since: datetime) -> bool:
    return row.measure_id == measure.id and row.state is State.DONE and row.at > since


def _loss(case: Case) -> Iterator[Cause]:
    if case.weighed_kg < case.book_kg:
        lost = weight(case.book_kg - case.weighed_kg, case.farm.units)
        words = f"{lost} lost: spilt, spoilt, or eaten by others"
        yield Cause(Why.LOSS, words, case.weighed_kg - case.book_kg, fitted=True)


def _when(turn: Turn) -> str:
    return f"on the {turn.slot} of {day_words(turn.day)}"


def _of_lot(case: Case, each: Delivered) -> str:
    return f"of lot {each.lot}" if each.lot else f"of {case.day(each.at)}"
