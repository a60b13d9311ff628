"""Cold and heat against what else is printed of them; the rest stands beside its equation."""

from store.husbandry.weather.cold import AUTUMN_F, HEAVY_F, WET_F, WINTER_F, dry_coat_percent, with_cold
from store.husbandry.weather.heat import FELT_FROM, HARD_FROM


def test_the_critical_temperature_of_each_coat_is_the_printed_one() -> None:
    """thestockexchangenews.com, "Are your cows prepared for the winter cold": 59, 45, 32 and 18 F."""
    assert (WET_F, AUTUMN_F, WINTER_F, HEAVY_F) == (59, 45, 32, 18)


def test_the_hay_for_a_heavy_coat_at_four_degrees_is_the_printed_one() -> None:
    """ag.ndsu.edu: 1.78 lb of TDN more, of hay with 56 % TDN, are 3.2 lb of dry matter."""
    more_lb = with_cold(12.7, dry_coat_percent(4, HEAVY_F)) - 12.7
    assert round(more_lb, 2) == 1.78
    assert round(more_lb / 0.56, 1) == 3.2


def test_where_heat_is_felt_and_where_it_is_severe_are_the_printed_ones() -> None:
    """eagle.direct, What is the THI: mild from 68, severe from 80."""
    assert (FELT_FROM, HARD_FROM) == (68, 80)
