"""How condition and weight of an animal have gone, in words, and when the next score is due."""

from collections.abc import Iterator
from datetime import date

from store.book.words import Units
from store.ration.trend import Trend, Went
from store.round.saying import exact, weight
from tui.words import day


def trend_words(trend: Trend, today: date, units: Units) -> Iterator[str]:
    """`CONDITION  2.5 on Wed 4 Mar, 3.25 at calving on ...: down 0.75 in 54 days`, weight, and a score that is due."""
    if trend.condition:
        went = trend.condition
        change = f"{'up' if went.change > 0 else 'down'} {abs(went.change):g} in" if went.change else "the same for"
        calving = "at calving " if went.at_calving else ""
        told = f"{went.last:g} on {day(went.last_on)}, {went.first:g} {calving}on {day(went.first_on)}"
        yield f"CONDITION  {told}: {change} {_days(went)}."
    if trend.weight and trend.gain_kg_day:
        went, gain = trend.weight, trend.gain_kg_day.amount
        told = f"{weight(went.last, units)} on {day(went.last_on)}, {weight(went.first, units)} on {day(went.first_on)}"
        yield f"WEIGHT  {told}: {'gains' if gain >= 0 else 'loses'} {exact(abs(gain), units)} a day."
    if trend.score_due_on and trend.score_due_on <= today:
        since = f" since {day(trend.score_due_on)}" if trend.score_due_on < today else ""
        yield f"CONDITION  A score is due{since}: M scores her."


def _days(went: Went) -> str:
    return f"{went.days} {'day' if went.days == 1 else 'days'}"
