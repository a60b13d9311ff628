"""Every unit factor against two outside authorities: the printed exact values, and a general units library.

Printed values: NIST Handbook 44, Appendix C, section 4 (US customary: exact values underlined) and NIST Special
Publication 811 (2008), Appendix B.8 (imperial gallon, exact). An imperial quart and pint are a quarter and an eighth
of the imperial gallon.
"""

import pytest
from pint import UnitRegistry

from store.husbandry import units
from store.husbandry.units import Unit
from store.husbandry.why import Printed, Source, example

PRINTED = {
    "kg": 1.0,  # the unit of weight itself
    "g": 0.001,  # by its prefix
    "lb": 0.45359237,  # Handbook 44 App. C: 1 pound = 453.592 37 g exactly
    "oz": 0.028349523125,  # Handbook 44 App. C: 1 avoirdupois ounce = 28.349 523 125 g exactly
    "L": 1.0,  # the unit of volume itself
    "mL": 0.001,  # by its prefix
    "US gal": 3.785411784,  # Handbook 44 App. C: 1 gallon = 3.785 411 784 L exactly
    "US qt": 0.946352946,  # Handbook 44 App. C: 1 liquid quart = 0.946 352 946 L exactly
    "US pt": 0.473176473,  # Handbook 44 App. C: 1 liquid pint = 0.473 176 473 L exactly
    "imperial gal": 4.54609,  # SP 811 App. B.8: gallon [Canadian and U.K. (Imperial)] = 4.546 09 E-03 m3 exactly
    "imperial qt": 1.1365225,  # a quarter of it
    "imperial pt": 0.56826125,  # an eighth of it
}
"""What each unit is in kg or L, by its sign."""

HANDBOOK = Source("NIST Handbook 44, Appendix C, section 4; exact")
SP_811 = Source("NIST Special Publication 811 (2008), Appendix B.8, imperial gallon; exact")
INCH = Source("nzdl.org, Determining weights of animals: one inch is 2.54 cm")
CHECKED: dict[str, list[Printed]] = {
    "units": [
        *(example(PRINTED[sign], 0, HANDBOOK) for sign in ("lb", "oz", "US gal", "US qt", "US pt")),
        example(PRINTED["imperial gal"], 0, SP_811),
        example(2.54, 0, INCH),
        example(1.609344, 0, HANDBOOK),
    ],
}
"""Those that are printed themselves, and checked below."""

IN_THE_LIBRARY = {
    "kg": "kilogram",
    "g": "gram",
    "lb": "pound",
    "oz": "ounce",
    "L": "liter",
    "mL": "milliliter",
    "US gal": "US_liquid_gallon",
    "US qt": "US_liquid_quart",
    "US pt": "US_pint",
    "imperial gal": "imperial_gallon",
    "imperial qt": "imperial_quart",
    "imperial pt": "imperial_pint",
}
"""What each unit is called by the units library."""

EVERY_UNIT = {unit.sign: unit for unit in vars(units).values() if isinstance(unit, Unit)}


@pytest.fixture(scope="module")
def library() -> UnitRegistry[float]:
    """The other library's tables."""
    return UnitRegistry()


def test_no_unit_goes_unchecked() -> None:
    """A unit added to the tables must be added here too."""
    assert set(PRINTED) == set(IN_THE_LIBRARY) == set(EVERY_UNIT)


@pytest.mark.parametrize("sign", PRINTED)
def test_each_unit_has_its_printed_exact_size(sign: str) -> None:
    """Not nearly: the very same number."""
    assert EVERY_UNIT[sign].size == PRINTED[sign]


@pytest.mark.parametrize("sign", PRINTED)
def test_each_unit_agrees_with_a_general_units_library(sign: str, library: UnitRegistry[float]) -> None:
    """To the last digits that both can hold."""
    unit = EVERY_UNIT[sign]
    base = "kilogram" if unit.dimension == "weight" else "liter"
    theirs = library.Quantity(1, IN_THE_LIBRARY[sign]).to(base).magnitude
    assert unit.size == pytest.approx(theirs, rel=1e-14)


def test_an_inch_is_the_printed_exact_one_and_the_librarys(library: UnitRegistry[float]) -> None:
    """Handbook 44 App. C: 1 inch = 2.54 centimeters exactly."""
    assert units.CM_PER_INCH == 2.54 == library.Quantity(1, "inch").to("centimeter").magnitude


def test_a_mile_is_the_printed_exact_one_and_the_librarys(library: UnitRegistry[float]) -> None:
    """Handbook 44 App. C: 1 mile = 1.609 344 kilometers exactly."""
    assert units.KM_PER_MILE == 1.609344
    assert library.Quantity(1, "mile").to("kilometer").magnitude == pytest.approx(1.609344, rel=1e-14)


@pytest.mark.parametrize("temperature_f", [-40.0, 32.0, 100.0, 101.5, 212.0])
def test_a_temperature_is_the_librarys_and_comes_back(temperature_f: float, library: UnitRegistry[float]) -> None:
    """SP 811 App. B.8: t/C = (t/F - 32) / 1.8; 32 F is 0 C and 212 F is 100 C."""
    theirs = library.Quantity(temperature_f, "degF").to("degC").magnitude
    assert units.celsius(temperature_f) == pytest.approx(theirs, abs=1e-9)
    assert units.fahrenheit(units.celsius(temperature_f)) == pytest.approx(temperature_f, abs=1e-9)
    assert units.celsius(32) == 0
    assert units.celsius(212) == pytest.approx(100)
