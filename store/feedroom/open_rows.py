"""Feedings that were planned since a feed was weighed, of which the book does not say that they were done."""

from collections.abc import Iterator, Mapping
from uuid import UUID

from msgspec import Struct

from store.book.needs import Needs
from store.book.stocks import FeedStock, Row
from store.book.turn import Turn
from store.book.words import State

ROUNDS_MOST = 120
"""So many rounds back an open row is looked for: two months."""


class OpenRow(Struct, frozen=True):
    """A feeding that is open, on paper, or not in the book at all. [kg]"""

    turn: Turn
    name: str
    kg: float


def open_rows(stock: FeedStock, needs: Needs, rows: tuple[Row, ...], names: Mapping[UUID, str]) -> tuple[OpenRow, ...]:
    """The feedings since the last weighing that are open, on paper, or not in the book at all; oldest first."""
    found = {
        (turn, need.subject.id): kg
        for turn in _turns(stock, needs)
        for need, kg in needs.of(stock.feed.id, turn)
        if (turn, need.subject.id) not in needs.moved_on
    }
    found |= {
        (row.turn, row.subject.id): row.due_kg
        for row in rows
        if row.state in (State.OPEN, State.ON_PAPER) and row.due_kg and _begins(row.turn, needs, stock)
    }
    in_order = sorted(found.items(), key=lambda each: (each[0][0].begins(needs.zone), each[0][1].bytes))
    return tuple(OpenRow(turn, names.get(id_, "gone since"), kg) for (turn, id_), kg in in_order)


def _turns(stock: FeedStock, needs: Needs) -> Iterator[Turn]:
    """The rounds since the last weighing that have begun, newest first."""
    turn = needs.turn
    for _ in range(ROUNDS_MOST):
        if stock.since and turn.begins(needs.zone) <= stock.since:
            return
        if _begins(turn, needs, stock):
            yield turn
        turn = turn.before()


def _begins(turn: Turn, needs: Needs, stock: FeedStock) -> bool:
    return stock.since is not None and stock.since < turn.begins(needs.zone) <= needs.now
