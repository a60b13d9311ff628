"""Ages, and the time from one calving to the next."""

from datetime import date

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Source, equation, example

MONTH_DAYS = 365.2425 / 12
"""The mean month of the Gregorian calendar. [days]"""

_WEANED = Source("agproud.com/articles/57922: weaned at 7 months, bred at 14.5 months, 230 days later, in half months")
_CARRIED = Source(
    "agproud.com/articles/57922: bred at 14.5 months, calving at 24 months, 283 days later, in half months"
)


def days_between(first: date, last: date) -> int:
    """How old it is, or from one calving to the next. [days] Raises ValueError where the last is before the first."""
    days = (last - first).days
    if days < 0:
        raise ValueError(f"last is {last}; it must not be before {first}")
    return days


@equation(
    "age in months", "days / 30.44", "months", Source("the mean month of the Gregorian calendar, 365.2425 / 12 days"),
    example(7.5, 0.25, _WEANED, days=230), example(9.5, 0.25, _CARRIED, days=283),
)  # fmt: skip
def months(days: float) -> float:
    """Days as months. Raises ValueError below zero."""
    at_least_zero(days=days)
    return days / MONTH_DAYS
