"""Laws of cold and heat, and what they refuse."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.weather import DRINKS_US_GAL, WET_F, drinks_us_gal, extra_energy_percent, feels_like_f

AIR_F = st.floats(-76, 104)
WIND_MPH = st.floats(0, 125)
COAT_F = st.sampled_from((18.0, 32.0, 45.0, 59.0))


@given(AIR_F, WIND_MPH, WIND_MPH)
def test_more_wind_never_feels_warmer(air_f: float, one_mph: float, more_mph: float) -> None:
    assert feels_like_f(air_f, one_mph + more_mph) <= feels_like_f(air_f, one_mph)


@given(AIR_F, st.floats(0, 50), COAT_F, st.booleans())
def test_colder_never_needs_less(feels_f: float, colder: float, coat_f: float, wet: bool) -> None:
    assert extra_energy_percent(feels_f - colder, coat_f, wet=wet) >= extra_energy_percent(feels_f, coat_f, wet=wet)


@given(AIR_F, COAT_F)
def test_a_wet_coat_never_needs_less_than_a_dry_one(feels_f: float, coat_f: float) -> None:
    assert extra_energy_percent(feels_f, coat_f, wet=True) >= extra_energy_percent(feels_f, coat_f)


@given(st.floats(WET_F, 104), COAT_F, st.booleans())
def test_nothing_more_above_the_critical_temperature(feels_f: float, coat_f: float, wet: bool) -> None:
    assert extra_energy_percent(feels_f, coat_f, wet=wet) == 0


@given(st.sampled_from(sorted(DRINKS_US_GAL)), st.floats(70, 89), st.floats(0, 1))
def test_warmer_air_is_never_less_water(who: str, air_f: float, warmer: float) -> None:
    assert drinks_us_gal(who, air_f + warmer) >= drinks_us_gal(who, air_f)


@pytest.mark.parametrize("air_f", [69.9, 90.1, float("nan")])
def test_where_no_amount_of_water_is_printed_none_is_told(air_f: float) -> None:
    with pytest.raises(ValueError, match="air_f is"):
        drinks_us_gal("dry", air_f)


def test_wind_below_zero_is_refused() -> None:
    with pytest.raises(ValueError, match="wind_mph is -1"):
        feels_like_f(20, -1)
