"""A forecast as it is typed, and what it means for a coat and a soak."""

import pytest

from store.book.words import Air, Coat, Units
from store.herd.forecast import Weather, a_low, degrees, maybe_wind
from store.husbandry.units import celsius
from store.round.amount import Unreadable


def weather(low_f: float, wind_mph: float = 0.0, coat: Coat = Coat.WINTER, *, wet: bool = False) -> Weather:
    """A night, in the units of the published rule."""
    return Weather(celsius(low_f), wind_mph * 1.609344, wet, coat)


@pytest.mark.parametrize(
    ("typed", "low_c"),
    [("-8", -8), ("minus 8", -8), ("- 8.5", -8.5), ("\u22128", -8), ("3,5", 3.5), ("0", 0), ("-8 C", -8), ("14 F", -10),
     ("-40f", -40), ("21°", 21)],
)  # fmt: skip
def test_a_low_is_read_in_degrees_c(typed: str, low_c: float) -> None:
    assert a_low(Units.METRIC)(typed) == pytest.approx(low_c)


@pytest.mark.parametrize(("typed", "low_c"), [("14", -10), ("-4", -20), ("-10 C", -10)])
def test_a_bare_low_on_a_us_farm_is_in_degrees_f(typed: str, low_c: float) -> None:
    assert a_low(Units.US)(typed) == pytest.approx(low_c)


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [("frosty", "«frosty» is no temperature"), ("", "is no temperature"), ("-8 K", "is no temperature"),
     ("-80", "is -80 C; expected -60 C to 40 C"), ("45", "is 45 C; expected")],
)  # fmt: skip
def test_what_is_no_low_is_said_and_what_to_type(typed: str, sentence: str) -> None:
    with pytest.raises(Unreadable, match=sentence):
        a_low(Units.METRIC)(typed)


@pytest.mark.parametrize(
    ("typed", "units", "wind_kmh"),
    [("", Units.METRIC, None), ("20", Units.METRIC, 20), ("20 mph", Units.METRIC, 32.18688),
     ("20", Units.US, 32.18688), ("20 km/h", Units.US, 20), ("5 m/s", Units.METRIC, 18)],
)  # fmt: skip
def test_wind_is_read_in_the_farms_own_unit(typed: str, units: Units, wind_kmh: float | None) -> None:
    found = maybe_wind(units)(typed)
    assert found is None if wind_kmh is None else found == pytest.approx(wind_kmh)


@pytest.mark.parametrize(
    ("typed", "sentence"), [("20 knots", "«knots» is no unit of wind"), ("300", "300 km/h; no more than 200")]
)
def test_what_is_no_wind_is_said(typed: str, sentence: str) -> None:
    with pytest.raises(Unreadable, match=sentence):
        maybe_wind(Units.METRIC)(typed)


def test_a_heavy_coat_that_feels_minus_seven_f_needs_a_quarter_more() -> None:
    """Limit 18 F, 13 F with 20 mph: 25 degrees below it."""
    night = weather(13, 20, Coat.HEAVY)
    assert night.more_percent == pytest.approx(25)
    assert degrees(night.feels_c, Units.US) == "-7 F"
    assert degrees(night.critical_c, Units.US) == "18 F"


def test_a_wet_coat_counts_from_59_f_whatever_coat_it_is() -> None:
    for coat in Coat:
        night = weather(22, coat=coat, wet=True)
        assert night.more_percent == pytest.approx(74)
        assert degrees(night.critical_c, Units.METRIC) == "15 C"


def test_without_a_wind_it_feels_as_cold_as_it_is() -> None:
    assert Weather(-8, None, wet=False, coat=Coat.WINTER).feels_c == pytest.approx(-8)


@pytest.mark.parametrize(("low_c", "air"), [(-3, Air.COLD), (9.9, Air.COLD), (10, Air.MILD), (20.9, Air.MILD),
                                            (21, Air.HOT), (30, Air.HOT)])  # fmt: skip
def test_the_air_of_a_soak_is_that_of_the_night(low_c: float, air: Air) -> None:
    assert Weather(low_c, None, wet=False, coat=Coat.WINTER).air is air
