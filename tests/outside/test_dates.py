"""Days against printed pairs of them, against the published spread, and against other calendars."""

from datetime import date, datetime, timedelta

import pendulum
import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.dates.ages import days_between
from store.husbandry.dates.gestation import WINDOW_DAYS, before, calved_by_percent, due_on, window
from store.husbandry.dates.heats import next_heat, serve_after
from store.husbandry.why import Printed, Source, example

_OHIO = Source("hunterriverpei.com/what-is-the-gestation-period-for-a-cow, a Jersey")
_MONTHS = Source("yh-nutri.com, expected date of cows: month less three, day and six")
_CLEMSON = Source("Clemson BC-1001, gestation, age and calving interval")
_VETORA = Source("vetora.co.nz/news-and-resources/when-to-dry-off")
PAIRS = (
    (date(2025, 9, 22), date(2026, 6, 27), 278, _OHIO),  # of a Jersey, served and due
    (date(2026, 4, 27), date(2026, 6, 27), 61, _OHIO),  # dry, in words 60 days
    (date(2025, 6, 18), date(2026, 3, 24), 279, _MONTHS),
    (date(1995, 2, 10), date(1995, 11, 20), 283, _CLEMSON),
    (date(1995, 11, 15), date(1996, 7, 1), 229, _CLEMSON),  # over a leap day: age at weaning
    (date(1995, 1, 25), date(1996, 3, 5), 405, _CLEMSON),  # over a leap day: from calving to calving
    (date(2025, 5, 29), date(2025, 7, 10), 42, _VETORA),  # dried off, due
    (date(2025, 5, 17), date(2025, 5, 29), 12, _VETORA),  # and twelve days earlier for those that calve early
)
"""The first day, the last day, the days between. A page that prints no year is told with one in which it holds."""
CHECKED: dict[str, list[Printed]] = {"dates": [example(days, 0, source) for _, _, days, source in PAIRS]}
DAYS = st.dates(date(1950, 1, 1), date(2099, 1, 1))


@pytest.mark.parametrize(("first", "last", "days"), [each[:3] for each in PAIRS])
def test_printed_days_lie_as_far_apart(first: date, last: date, days: int) -> None:
    assert days_between(first, last) == days
    assert due_on(first, days) == last
    assert before(last, days) == first


def test_the_window_holds_95_of_100() -> None:
    """Of cows that calve as those that were counted."""
    due = due_on(date(2026, 1, 1), 280)
    least, most = (days_between(date(2026, 1, 1), each) - 280 for each in window(due))
    assert (least, most) == (-WINDOW_DAYS, WINDOW_DAYS)
    assert calved_by_percent(most) - calved_by_percent(least) == pytest.approx(95, abs=1)


def test_a_leap_year_is_a_day_earlier() -> None:
    assert due_on(date(2025, 1, 1), 283) == date(2025, 10, 11)
    assert due_on(date(2024, 1, 1), 283) == date(2024, 10, 10)


def test_from_january_to_october() -> None:
    """Seen bulling, served, due, dried off and fed for calving."""
    seen = datetime(2026, 1, 14, 8, 30)  # noqa: DTZ001 the farm's clock
    assert serve_after(seen) == serve_after(seen.replace(hour=11, minute=59))
    assert serve_after(seen).on == seen.date()
    assert serve_after(seen).evening
    assert serve_after(seen.replace(hour=12)).on == date(2026, 1, 15)
    assert not serve_after(seen.replace(hour=12)).evening
    assert next_heat(seen.date()) == (date(2026, 1, 31), date(2026, 2, 7))
    due = due_on(seen.date(), 283)
    assert due == date(2026, 10, 24)
    assert before(due, 60) == date(2026, 8, 25)
    assert before(due, 21) == date(2026, 10, 3)


@given(DAYS, st.integers(0, 400))
def test_days_are_those_of_another_calendar(first: date, days: int) -> None:
    """Of a general date library, and one by one over every month's end."""
    theirs = pendulum.date(first.year, first.month, first.day).add(days=days)
    ours = due_on(first, days)
    assert (ours.year, ours.month, ours.day) == (theirs.year, theirs.month, theirs.day)
    assert before(ours, days) == first
    assert days_between(first, ours) == days == pendulum.date(first.year, first.month, first.day).diff(theirs).in_days()


@given(DAYS, st.integers(0, 400), st.integers(0, 400))
def test_days_add_up(first: date, some: int, more: int) -> None:
    assert due_on(due_on(first, some), more) == due_on(first, some + more)
    assert next_heat(first)[1] - next_heat(first)[0] == timedelta(days=7)
    assert window(first)[0] < first < window(first)[1]
