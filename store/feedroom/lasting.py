"""How long a feed lasts: whole days, the first round that is short, and the day by which to order."""

from collections.abc import Callable, Iterator
from datetime import date, timedelta
from itertools import islice

from msgspec import Struct

from store.book.needs import Needs
from store.book.stocks import FeedStock
from store.book.turn import Turn
from store.book.words import Units
from store.feedroom.saying import by_day_words, round_words
from store.husbandry.stock import ROUNDS_A_DAY, full_days, lasting
from store.round.saying import weight

LOOK_AHEAD = timedelta(days=400)
NOT_PLANNED = "no round is planned to take any of it"
MORE_THAN_A_YEAR = "more than a year"


class DaysLeft(Struct, frozen=True):
    """How long a feed lasts. short, short_kg None: longer than was looked ahead, or none of it is planned.

    days: whole days of both rounds. order_by: None where it is not short, or the lead time is not set.
    """

    days: int
    short: Turn | None
    short_kg: float | None
    planned: bool
    order_by: date | None


def days_left(there_kg: float, first: Turn, need_kg: Callable[[Turn], float], lead_days: int | None = None) -> DaysLeft:
    """Step from the next round not yet fed to the first one that is short. [kg]

    first: that next round. need_kg: what a round takes. lead_days: from ordering to having it. Looks 400 days ahead.
    """
    ahead = islice(_from(first), LOOK_AHEAD.days * ROUNDS_A_DAY)
    found = lasting(there_kg, (need_kg(turn) for turn in ahead))
    short = next(islice(_from(first), found.rounds, None)) if found.short_kg is not None else None
    order_by = short.day - timedelta(days=lead_days) if short and lead_days is not None else None
    planned = short is not None or found.used_kg > 0
    return DaysLeft(int(full_days(found.rounds)), short, found.short_kg, planned, order_by)


def days_left_of(stock: FeedStock, needs: Needs, lead_days: int | None = None) -> DaysLeft | None:
    """The same of a feed as the book has it. None: nobody knows what is there."""
    if stock.kg is None:
        return None
    return days_left(stock.kg, needs.first(stock.feed.id), needs.by_round(stock.feed.id), lead_days)


def days_left_words(left: DaysLeft, today: date, units: Units) -> str:
    """`6 full days; short by 0.50 kg on Tuesday morning next week; order by Saturday`."""
    if not left.planned:
        return NOT_PLANNED
    if left.short is None or left.short_kg is None:
        return MORE_THAN_A_YEAR
    days = f"{left.days} full {'day' if left.days == 1 else 'days'}"
    short = f"short by {weight(left.short_kg, units)} {round_words(left.short, today)}"
    order = f"; order {by_day_words(left.order_by, today)}" if left.order_by else ""
    return f"{days}; {short}{order}"


def _from(turn: Turn) -> Iterator[Turn]:
    while True:
        yield turn
        turn = turn.after()
