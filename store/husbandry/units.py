"""Units of weight and volume, and what each is in kilograms or litres.

Source of every factor: NIST Handbook 44 (2024), Appendix C, "General tables of units of measurement"
(US customary, inch and mile) and NIST Special Publication 811 (2008), Appendix B.8 (imperial, degrees Fahrenheit).
All are exact.
"""

from typing import Literal

from msgspec import Struct

from store.husbandry.why import Source, equation, example

Dimension = Literal["weight", "volume"]


class Unit(Struct, frozen=True):
    """One unit: how it is written, what it measures, and its size in kg (weight) or L (volume)."""

    sign: str
    dimension: Dimension
    size: float


KG_PER_LB = 0.45359237
L_PER_US_GAL = 3.785411784
L_PER_IMPERIAL_GAL = 4.54609
CM_PER_INCH = 2.54
KM_PER_MILE = 1.609344

KG = Unit("kg", "weight", 1.0)
G = Unit("g", "weight", 0.001)
LB = Unit("lb", "weight", KG_PER_LB)
OZ = Unit("oz", "weight", KG_PER_LB / 16)
L = Unit("L", "volume", 1.0)
ML = Unit("mL", "volume", 0.001)
US_GAL = Unit("US gal", "volume", L_PER_US_GAL)
US_QT = Unit("US qt", "volume", L_PER_US_GAL / 4)
US_PT = Unit("US pt", "volume", L_PER_US_GAL / 8)
IMPERIAL_GAL = Unit("imperial gal", "volume", L_PER_IMPERIAL_GAL)
IMPERIAL_QT = Unit("imperial qt", "volume", L_PER_IMPERIAL_GAL / 4)
IMPERIAL_PT = Unit("imperial pt", "volume", L_PER_IMPERIAL_GAL / 8)

EVERYWHERE = {
    **dict.fromkeys(("kg", "kgs", "kilo", "kilos"), KG),
    **dict.fromkeys(("g", "gr", "gram", "grams"), G),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds"), LB),
    **dict.fromkeys(("oz", "ounce", "ounces"), OZ),
    **dict.fromkeys(("l", "lt", "litre", "litres", "liter", "liters"), L),
    **dict.fromkeys(("ml",), ML),
    **dict.fromkeys(("usgal",), US_GAL),
    **dict.fromkeys(("usqt",), US_QT),
    **dict.fromkeys(("uspt",), US_PT),
    **dict.fromkeys(("igal", "impgal", "imperialgal"), IMPERIAL_GAL),
    **dict.fromkeys(("iqt", "impqt", "imperialqt"), IMPERIAL_QT),
    **dict.fromkeys(("ipt", "imppt", "imperialpt"), IMPERIAL_PT),
}
_GAL, _QT, _PT = (
    ("gal", "gals", "gallon", "gallons"),
    ("qt", "qts", "quart", "quarts"),
    ("pt", "pts", "pint", "pints"),
)
BRITISH = {
    **dict.fromkeys(_GAL, IMPERIAL_GAL),
    **dict.fromkeys(_QT, IMPERIAL_QT),
    **dict.fromkeys(_PT, IMPERIAL_PT),
}
AMERICAN = {**dict.fromkeys(_GAL, US_GAL), **dict.fromkeys(_QT, US_QT), **dict.fromkeys(_PT, US_PT)}


def spoken(word: str, *, american: bool) -> Unit | None:
    """The unit a keeper means by a word; None if it is no unit.

    word: as typed, any case. A bare gallon, quart or pint is the one of the farm's own words.
    """
    key = word.lower().rstrip(".").replace("us ", "us").replace("imperial ", "imperial")
    return EVERYWHERE.get(key) or (AMERICAN if american else BRITISH).get(key)


_SP_811 = Source("NIST Special Publication 811 (2008), Appendix B.8: degrees Fahrenheit; exact")


@equation("degrees C", "(degrees F - 32) / 1.8", "C", _SP_811, example(0, 0, _SP_811, temperature_f=32),
          example(100, 1e-9, _SP_811, temperature_f=212))  # fmt: skip
def celsius(temperature_f: float) -> float:
    """A temperature in degrees C of one in degrees F; any number."""
    return (temperature_f - 32) / 1.8


@equation("degrees F", "degrees C x 1.8 + 32", "F", _SP_811, example(32, 0, _SP_811, temperature_c=0),
          example(212, 1e-9, _SP_811, temperature_c=100))  # fmt: skip
def fahrenheit(temperature_c: float) -> float:
    """A temperature in degrees F of one in degrees C; any number."""
    return temperature_c * 1.8 + 32
