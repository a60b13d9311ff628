"""Cold and heat against the figures that extension services print for beef cattle outside."""

import pytest

from store.husbandry.weather import (
    AUTUMN_F,
    HEAVY_F,
    WET_F,
    WINTER_F,
    drinks_us_gal,
    extra_energy_percent,
    feels_like_f,
)

CHART_F = 4.0
"""25 F with 20 mph of wind, on the printed chart: ag.ndsu.edu/livestockextension, "Lower critical temperature for beef
cattle". The rough rule is from m.farms.com, "When do cows feel the cold"."""


def test_the_critical_temperature_of_each_coat_is_the_printed_one() -> None:
    """thestockexchangenews.com, "Are your cows prepared for the winter cold": 59, 45, 32 and 18 F."""
    assert (WET_F, AUTUMN_F, WINTER_F, HEAVY_F) == (59, 45, 32, 18)


def test_the_rough_wind_chill_is_one_degree_from_the_printed_chart() -> None:
    assert feels_like_f(25, 20) == 5 == CHART_F + 1


def test_a_heavy_coat_at_four_degrees_is_the_printed_fourteen_percent() -> None:
    """ag.ndsu.edu: 12.7 lb TDN x 1.14 = 14.48; the 1.78 lb more, of hay with 56 % TDN, are 3.2 lb of dry matter."""
    percent = extra_energy_percent(CHART_F, HEAVY_F)
    assert percent == 14
    assert round(12.7 * (1 + percent / 100), 2) == 14.48
    assert round(12.7 * percent / 100, 2) == 1.78
    assert round(12.7 * percent / 100 / 0.56, 1) == 3.2


def test_a_dry_winter_coat_at_seventeen_degrees_is_the_printed_fifteen_percent() -> None:
    """thestockexchangenews.com. Its row for a wet coat counts 1 % a degree (about 40 %): the others disagree."""
    assert extra_energy_percent(17, WINTER_F) == 15


def test_a_dry_winter_coat_at_twenty_two_degrees_is_the_printed_ten_percent() -> None:
    """Kansas State, Cottonwood Connections, January 2025, p. 9: 12.0 lb TDN become 13.2 lb."""
    assert round(12.0 * (1 + extra_energy_percent(22, WINTER_F) / 100), 1) == 13.2


def test_a_wet_coat_at_twenty_two_degrees_is_the_printed_seventy_four_percent() -> None:
    """The same page: (59 - 22) x 2 = 74 %."""
    assert extra_energy_percent(22, WINTER_F, wet=True) == 74


def test_hay_for_a_wind_chill_of_four_degrees_is_the_printed_one() -> None:
    """Oklahoma State, "Cold weather boosts energy requirements": +28 %, 16 lb of hay become 20.5; wet +110 %."""
    percent = extra_energy_percent(4, WINTER_F)
    assert percent == 28
    assert round(16 * (1 + percent / 100), 1) == 20.5
    assert extra_energy_percent(4, WINTER_F, wet=True) == 110


@pytest.mark.parametrize(
    ("who", "printed"),
    [
        ("calf", (6.5, 7.4, 10.6)),
        ("growing", (9.3, 10.6, 14)),
        ("dry", (10.8, 12.4, 17.6)),
        ("milking", (16.3, 17.9, 21.6)),
    ],
)
def test_what_a_head_drinks_is_the_printed_amount(who: str, printed: tuple[float, float, float]) -> None:
    """beefmagazine.com, "Watch summer water" (NRC 1996): at 70, 80 and 90 F, in US gallons."""
    assert tuple(drinks_us_gal(who, air_f) for air_f in (70, 80, 90)) == pytest.approx(printed)
