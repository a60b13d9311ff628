"""Hours by the clock, there and back, also through a night in which the clocks change."""

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.moments import BEGAN, HOUR, hours_between, later, moment, sooner

MADRID = ZoneInfo("Europe/Madrid")
TIMES = st.integers(946_684_800, 4_102_444_800).map(lambda second: datetime.fromtimestamp(second, MADRID))


@given(TIMES, st.integers(0, 500))
def test_so_many_hours_later_is_that_moment_to_the_second(at: datetime, hours: int) -> None:
    begun = moment(at, "begun", "typed").amount
    then = BEGAN + later(begun, hours) * HOUR
    assert abs(then - BEGAN - ((at - BEGAN) + timedelta(hours=hours))) < timedelta(seconds=1)
    assert abs(sooner(later(begun, hours), hours) - begun) < 1e-6


def test_the_night_in_which_the_clocks_go_forward_has_an_hour_less() -> None:
    evening, morning = (datetime(2026, 3, day, hour, tzinfo=MADRID) for day, hour in ((28, 18), (29, 6)))
    assert round(hours_between(moment(evening, "a", "b").amount, moment(morning, "a", "b").amount), 6) == 11
    assert hours_between(5.0, 4.0) == 0.0
