"""What a lactation gave, from some of its days: the test-interval method."""

from collections.abc import Sequence
from itertools import pairwise

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Source, Sure, Value, equation, example, given, total

METHOD = Source(
    "ICAR Guidelines, Section 2, Procedure 2, test interval method (Sargent 1968): the formula, as quoted at "
    "th4.ilovetranslation.com"
)
TEN_ROWS = Source("the same: its example of ten weighings, 26 March to 3 January, rounded to kilograms", Sure.MEMORY)


@equation(
    "milk between two weighings", "days x the mean of the two", "kg", METHOD,
    example(395, 0.5, TEN_ROWS, days=14, before_kg=28.2, after_kg=28.2),
    example(742, 0.5, TEN_ROWS, days=28, before_kg=28.2, after_kg=24.8),
    example(771, 0.5, TEN_ROWS, days=30, before_kg=24.8, after_kg=26.6),
    example(797, 0.5, TEN_ROWS, days=32, before_kg=26.6, after_kg=23.2),
    example(564, 0.5, TEN_ROWS, days=26, before_kg=23.2, after_kg=20.2),
    example(532, 0.5, TEN_ROWS, days=28, before_kg=20.2, after_kg=17.8),
    example(403, 0.5, TEN_ROWS, days=26, before_kg=17.8, after_kg=13.2),
    example(365, 0.5, TEN_ROWS, days=32, before_kg=13.2, after_kg=9.6),
    example(200, 0.5, TEN_ROWS, days=26, before_kg=9.6, after_kg=5.8),
    example(143, 0.5, TEN_ROWS, days=28, before_kg=5.8, after_kg=4.4),
    example(62, 0.5, TEN_ROWS, days=14, before_kg=4.4, after_kg=4.4),
    days=(0.0, 75.0),
)  # fmt: skip
def between_kg(days: float, before_kg: float, after_kg: float) -> float:
    """The milk of the days from one weighed day to the next. [kg] Raises ValueError below zero."""
    at_least_zero(days=days, before_kg=before_kg, after_kg=after_kg)
    return days * (before_kg + after_kg) / 2


def lactation_kg(weighed: Sequence[tuple[int, Value]], until_day: int) -> Value:
    """The milk of a lactation from its beginning to a day, by some weighed days. [kg]

    weighed: day in milk and the milk of that day, at least one, the earliest first. until_day: not before the last.
    Before the first and after the last she gave as much as then. Parts are added unrounded.
    Raises ValueError for no weighing, and for days that do not follow each other.
    """
    if not weighed:
        raise ValueError("weighed is empty; at least one day must be weighed")
    days = [0, *(day for day, _ in weighed), until_day]
    kgs = [weighed[0][1], *(kg for _, kg in weighed), weighed[-1][1]]
    parts = (
        between_kg.of(f"day {first} to {last}", days=_days(first, last), before_kg=kgs[at], after_kg=kgs[at + 1])
        for at, (first, last) in enumerate(pairwise(days))
        if last != first
    )
    return total("milk of the lactation so far", "kg", parts)


def _days(first: int, last: int) -> Value:
    if last < first:
        raise ValueError(f"day {last} follows day {first}; days in milk only go up")
    return given(last - first, "days between", "d", "counted")
