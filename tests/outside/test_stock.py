"""How long a stock lasts, against winters of hay that are printed with their sums."""

import pytest

from store.husbandry.stock import a_day_of, lasting
from store.husbandry.why import Printed, Source, example

AGPROUD = Source("agproud.com/articles/58069, estimating hay needs: 5148 lb for 120 days, 42.9 lb a day")
OKLAHOMA = Source(
    "bigsandymountaineer.com, 2024/11/06, estimating hay needs: 640 bales of 1250 lb, 200 days, 4000 lb a day"
)
KENTUCKY = Source("meadecountyky.com, calculating hay supply: 108,000 lb for 120 days, 900 lb a day")
WINTERS: tuple[tuple[float, Printed, Printed], ...] = (
    (5148, example(42.9, 0.05, AGPROUD), example(120, 0, AGPROUD)),
    (640 * 1250, example(4000, 0.5, OKLAHOMA), example(200, 0, OKLAHOMA)),
    (108_000, example(900, 0.5, KENTUCKY), example(120, 0, KENTUCKY)),
)
"""What is held [lb], what a day takes of it [lb], for how many days."""
CHECKED = {"stock": tuple(each for _, *both in WINTERS for each in both)}


@pytest.mark.parametrize(
    ("held_lb", "a_day", "days"), [pytest.param(*each, id=each[1].source.words) for each in WINTERS]
)
def test_a_winter_of_hay_is_as_long_as_it_is_printed(held_lb: float, a_day: Printed, days: Printed) -> None:
    """Both ways: what a day takes, and how many such days it lasts."""
    assert a_day_of(held_lb, days.gives) == pytest.approx(a_day.gives, abs=a_day.within)
    found = lasting(held_lb, [a_day.gives] * 365)
    assert found.rounds == days.gives
