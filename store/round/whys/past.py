"""Why her last milkings say so much: each by its hours, and the newest against those before."""

from collections.abc import Iterator

from store.husbandry.measures import change_percent
from store.husbandry.milk.ends import an_hour_kg
from store.husbandry.milk.usual import MOST_PAILS
from store.husbandry.why import MEAN, Value, given, of_all
from store.round.looking_back import NEWEST, LookBack
from store.round.timed import TimedPail
from store.round.whys.asked import Asked
from store.round.whys.milk import elapsed_value, rate_value


def back_numbers(asked: Asked, found: LookBack) -> Iterator[Value]:
    """The newest against those before, then each milking an hour."""
    if found.trend_percent is not None:
        yield _trend(asked, found)
    yield from (_hourly(asked, each) for each in found.pails if each.kg_h is not None)


def _trend(asked: Asked, found: LookBack) -> Value:
    """The newest that compare against those before them. [%]"""
    compared = [each for each in found.pails if not each.why_not]
    rates = [rate_value(asked, each) for each in compared if each.full_rate_kg_h is not None]
    newest = of_all(MEAN, f"the mean of the last {NEWEST}", "kg/h", rates[:NEWEST])
    before = of_all(MEAN, "the mean of those before", "kg/h", rates[NEWEST : NEWEST + MOST_PAILS])
    return change_percent.of(f"last {NEWEST} against those before", before=before, now=newest)


def _hourly(asked: Asked, each: TimedPail) -> Value:
    """A milking by the hours that passed. [kg/h]"""
    milk = given(each.pail.milk_kg or 0.0, "milk", "kg", f"written {asked.when(each.pail.at)}")
    elapsed = elapsed_value(each.emptied_at or each.pail.at, each.pail.at)
    return an_hour_kg.of(f"an hour, {asked.when(each.pail.at)}", milk_kg=milk, hours=elapsed)
