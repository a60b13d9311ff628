"""The feed room at a glance: of each feed what is there, how long it lasts, what is to be weighed first."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.desk import Desk
from store.book.reading.needs import read_needs
from store.book.reading.stock import read_settings, read_stock
from store.book.stocks import FeedStock
from store.feedroom.lasting import DaysLeft, days_left_of
from store.feedroom.scoop import needs_weighing


class RoomLine(Struct, frozen=True):
    """One feed. left None: nobody knows what is there. to_weigh: measures due at the first use of a new bag."""

    stock: FeedStock
    left: DaysLeft | None
    to_weigh: tuple[UUID, ...]


def read_room(desk: Desk, now: datetime) -> tuple[RoomLine, ...]:
    """Every feed in use, by name. Raises DamagedBook."""
    needs, lead_days = read_needs(desk, now), read_settings(desk, now).lead_days
    return tuple(
        RoomLine(stock, days_left_of(stock, needs, lead_days), needs_weighing(desk, stock, needs, now))
        for stock in read_stock(desk, now)
    )
