"""Laws of cold, heat and water, and what they refuse."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from store.husbandry.weather.cold import WET_F, dry_coat_percent, feels_like_f, wet_coat_percent, with_cold
from store.husbandry.weather.heat import FELT_FROM, HARD_FROM, heat_index, reached_at_c
from store.husbandry.weather.water import DRINKS_L, drinks_l, in_milk_l, on_hay_l

AIR_F = st.floats(-76, 104)
WIND_MPH = st.floats(0, 125)
COAT_F = st.sampled_from((18.0, 32.0, 45.0, 59.0))
KG = st.floats(0, 40)


@given(AIR_F, WIND_MPH, WIND_MPH)
def test_more_wind_never_feels_warmer(air_f: float, one_mph: float, more_mph: float) -> None:
    assert feels_like_f(air_f, one_mph + more_mph) <= feels_like_f(air_f, one_mph)


@given(AIR_F, st.floats(0, 50), COAT_F)
def test_colder_never_needs_less(feels_f: float, colder: float, coat_f: float) -> None:
    assert dry_coat_percent(feels_f - colder, coat_f) >= dry_coat_percent(feels_f, coat_f)
    assert wet_coat_percent(feels_f - colder) >= wet_coat_percent(feels_f)


@given(AIR_F, COAT_F)
def test_a_wet_coat_never_needs_less_than_a_dry_one(feels_f: float, coat_f: float) -> None:
    assert wet_coat_percent(feels_f) >= dry_coat_percent(feels_f, coat_f)


@given(st.floats(WET_F, 104), COAT_F, st.floats(0, 100))
def test_nothing_more_above_the_critical_temperature(feels_f: float, coat_f: float, need: float) -> None:
    assert with_cold(need, dry_coat_percent(feels_f, coat_f)) == need
    assert with_cold(need, wet_coat_percent(feels_f)) == need


@given(st.sampled_from(sorted(DRINKS_L)), st.floats(70, 89), st.floats(0, 1))
def test_warmer_air_is_never_less_water(who: str, air_f: float, warmer: float) -> None:
    assert drinks_l(air_f + warmer, *DRINKS_L[who]) >= drinks_l(air_f, *DRINKS_L[who])


@given(KG, KG, st.floats(-20, 30), st.floats(0, 5))
def test_more_feed_milk_or_warmth_is_never_less_water(dry_kg: float, milk_kg: float, low_c: float, more: float) -> None:
    assert in_milk_l(dry_kg + more, milk_kg + more, 30, low_c + more) >= in_milk_l(dry_kg, milk_kg, 30, low_c)
    assert on_hay_l(dry_kg + more, milk_kg + more) >= on_hay_l(dry_kg, milk_kg)


def test_water_worked_by_hand() -> None:
    """15.99 + 28.44 + 18 + 1.5 + 12 = 75.9; 12.3 + 30.1 + 14.6 = 57.0."""
    assert in_milk_l(18, 20, 30, 10) == pytest.approx(75.93)
    assert on_hay_l(14, 20) == pytest.approx(57.0)


@given(st.floats(20, 45), st.floats(0, 100), st.floats(0, 5))
def test_warmer_or_damper_air_never_weighs_less(air_c: float, humidity: float, more: float) -> None:
    assert heat_index(air_c + more, humidity) >= heat_index(air_c, humidity)
    assert heat_index(air_c, min(humidity + more, 100)) >= heat_index(air_c, humidity)


@given(st.sampled_from((FELT_FROM, HARD_FROM)), st.floats(0, 100))
def test_an_index_is_reached_at_one_degree_and_not_at_the_one_before(index: float, humidity: float) -> None:
    air_c = reached_at_c(index, humidity)
    assert heat_index(air_c, humidity) >= index > heat_index(air_c - 1, humidity)


@pytest.mark.parametrize("air_f", [69.9, 90.1, float("nan")])
def test_where_no_amount_of_water_is_printed_none_is_told(air_f: float) -> None:
    with pytest.raises(ValueError, match="air_f is"):
        drinks_l(air_f, *DRINKS_L["dry"])


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="wind_mph is -1"):
        feels_like_f(20, -1)
    with pytest.raises(ValueError, match="humidity_percent is 101"):
        heat_index(30, 101)
