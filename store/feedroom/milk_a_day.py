"""What each cow gave a day, in the mean of the last days."""

from collections.abc import Mapping
from datetime import date, timedelta
from uuid import UUID

from store.book.desk import Desk
from store.book.reading import stock_sql
from store.book.reading.facts import uid

MEAN_DAYS = 7


def milk_a_day(desk: Desk, last: date) -> Mapping[UUID, float]:
    """What each cow gave a day, in the mean of seven days, of those of which a pail is in the book. [kg]

    last: the last whole day; of today a pail may still be to come.
    """
    days = {"since_day": (last - timedelta(days=MEAN_DAYS - 1)).isoformat(), "until_day": last.isoformat()}
    found: dict[UUID, list[float]] = {}
    for _, animal, kg in desk.rows(stock_sql.MILKED, days):
        found.setdefault(uid(animal), []).append(kg)
    return {animal: sum(each) / len(each) for animal, each in found.items()}
