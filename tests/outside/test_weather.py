"""Cold and heat against what else is printed of them; the rest stands beside its equation."""

from store.husbandry.weather.cold import AUTUMN_F, HEAVY_F, WET_F, WINTER_F, dry_coat_percent, with_cold
from store.husbandry.weather.heat import Heat, heat_of


def test_the_critical_temperature_of_each_coat_is_the_printed_one() -> None:
    """thestockexchangenews.com, "Are your cows prepared for the winter cold": 59, 45, 32 and 18 F."""
    assert (WET_F, AUTUMN_F, WINTER_F, HEAVY_F) == (59, 45, 32, 18)


def test_the_hay_for_a_heavy_coat_at_four_degrees_is_the_printed_one() -> None:
    """ag.ndsu.edu: 1.78 lb of TDN more, of hay with 56 % TDN, are 3.2 lb of dry matter."""
    more_lb = with_cold(12.7, dry_coat_percent(4, HEAVY_F)) - 12.7
    assert round(more_lb, 2) == 1.78
    assert round(more_lb / 0.56, 1) == 3.2


def test_the_bands_of_heat_are_the_printed_ones() -> None:
    """eagle.direct, What is the THI: mild 68 to 71, moderate 72 to 79, severe 80 to 89."""
    printed = {67: Heat.NONE, 68: Heat.MILD, 71: Heat.MILD, 72: Heat.MODERATE, 79: Heat.MODERATE, 80: Heat.SEVERE}
    assert {index: heat_of(index) for index in printed} == printed
