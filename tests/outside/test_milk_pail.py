"""The weight of milk against measured containers, against printed figures, and a pail worked through by hand."""

import pytest

from store.husbandry.milk.pail import KG_PER_L, kilograms, litres, milk_in_pail
from store.husbandry.units import IMPERIAL_GAL, IMPERIAL_PT, LB, US_GAL, US_QT

MEAN_KG_PER_L, LEAST_KG_PER_L, MOST_KG_PER_L = 1.02994, 1.0262, 1.0322
"""Density of the milk in 86 containers: data set `milk` of the R package robustbase, column X1; from Daudin, Duby and
Trecourt (1988), Statistics 19, 241-258. Mean, least and most of the 86 values."""

LB_PER_US_GAL, LB_PER_US_QT = 8.6, 2.15
"""Whole milk as extension sheets in the United States print it, said there to be the USDA's. From memory."""


def test_the_density_is_the_measured_mean_to_the_places_it_is_given() -> None:
    """1.03 is the mean of the containers, rounded as it is written."""
    assert round(MEAN_KG_PER_L, 2) == KG_PER_L


def test_the_density_lies_inside_the_measured_range() -> None:
    """Between the lightest and the heaviest milk of the containers."""
    assert LEAST_KG_PER_L < KG_PER_L < MOST_KG_PER_L


def test_any_of_the_measured_milks_is_weighed_right_within_half_a_percent() -> None:
    """How wrong a litre can be: the widest of the 86 containers."""
    worst = max(abs(litres(density) - 1) for density in (LEAST_KG_PER_L, MOST_KG_PER_L))
    assert worst < 0.005


def test_a_us_gallon_of_milk_weighs_what_is_printed() -> None:
    """8.6 lb, to the place it is printed."""
    assert round(kilograms(US_GAL.size) / LB.size, 1) == LB_PER_US_GAL


def test_a_us_quart_of_milk_weighs_what_is_printed() -> None:
    """2.15 lb, to the places it is printed."""
    assert round(kilograms(US_QT.size) / LB.size, 2) == LB_PER_US_QT


def test_an_imperial_gallon_of_milk_weighs_4_68_kg() -> None:
    """4.54609 L x 1.03 kg/L = 4.6825 kg, worked by hand."""
    assert round(kilograms(IMPERIAL_GAL.size), 2) == 4.68


def test_a_full_pail_on_the_scale_worked_through_by_hand() -> None:
    """12.9 kg less a pail of 1.4 kg is 11.5 kg of milk, and that is 11.17 L."""
    milk_kg = milk_in_pail(12.9, 1.4)
    assert milk_kg == pytest.approx(11.5, abs=1e-12)
    assert round(litres(milk_kg), 2) == 11.17


def test_eleven_imperial_pints_are_six_and_a_quarter_litres() -> None:
    """11 x 0.56826125 L = 6.2508737 L."""
    assert round(11 * IMPERIAL_PT.size, 2) == 6.25
