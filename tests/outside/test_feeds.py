"""The shipped table and its energy against what others print of the same feeds."""

from typing import NamedTuple

import pytest

from store.husbandry.feeds.density import ALABAMA, BULKS, FAO
from store.husbandry.feeds.energy import energy_of
from store.husbandry.feeds.made import SPREAD, made
from store.husbandry.feeds.table import BY_NAME, BY_PRODUCTS, DAIRY_2001, DISTILLERS, FEEDS, VIRGINIA_2001
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Printed, Source, Sure, Value, example

APART = "; feeds lie up to 15 %, their minerals 30 %, their energy 10 % from a table (beefmagazine.com)"
ALABAMA_TABLE = Source(BY_PRODUCTS.words + ", table 1" + APART)
NORTH_DAKOTA = Source("ndsu.edu/agriculture/node/8819, beet pulp" + APART)
WEST_VIRGINIA = Source(
    "extension.wvu.edu, soy hulls as a feeding supplement; of two TDN printed there the lower" + APART
)
ANGUS = Source("angusbeefbulletin.com/extra/2011/08aug11: soyhulls have 64, 80 and 77 % TDN in three editions")
FOUR_PLANTS = Source("Michigan State E3074: distillers grains of four plants have 76.7 to 90.1 % TDN")
ALBERTA = Source("Alberta Agriculture, faq14096, protein and fibre of hay by stage" + APART)
GRAZING = Source("articles.extension.org/pages/18326: pasture 1.52 to 1.59 Mcal/kg")
LEGUMES = Source(
    "extension.psu.edu, pasture quality: legumes of 26 to 30 % ADF have 1.37 to 1.50 Mcal/kg, pellets here 31"
)
ROUGHAGES = Source("universalium.en-academic.com/295127, roughages as they lie, told here of the dry matter" + APART)
OWN_ROWS = Source(
    DAIRY_2001.words + ", from memory: within 3 %, as each feed's own digested protein is there", Sure.MEMORY
)
A_LB = 1 / KG_PER_LB
ROUNDED = 0.011 + 0.005
"""Mcal/lb of two digits told in Mcal/kg, and our own last digit."""


class Check(NamedTuple):
    """One part of one row, and what another source prints for it."""

    row: str
    part: str
    printed: Printed


def near(row: str, source: Source, **parts: float) -> tuple[Check, ...]:
    """Parts that another table prints, which may lie as far away as feeds do."""
    return tuple(Check(row, part, example(gives, gives * SPREAD[part] / 100, source)) for part, gives in parts.items())


def same(row: str, source: Source, **parts: tuple[float, float]) -> tuple[Check, ...]:
    """Parts that another source prints as they stand here: the figure, and half of its last digit or its range."""
    return tuple(Check(row, part, example(*gives, source)) for part, gives in parts.items())


DDGS, CORN = "Maize (corn) distillers with solubles", "Maize (corn), ground dry"
SOYA, SEED, SOYHULLS = "Soya (soybean) meal, 44 %", "Whole cottonseed, linted", "Soya (soybean) hulls"
SILAGE, TIMOTHY = "Maize (corn) silage, normal", "Timothy hay, full bloom"
CHECKS = (
    *same(CORN, DISTILLERS, cp_percent=(9.4, 0.05), ndf_percent=(9.5, 0.05), p_percent=(0.3, 0.005)),
    *same(DDGS, DISTILLERS, cp_percent=(29.7, 0.05), ndf_percent=(38.8, 0.05), fat_percent=(10.0, 0.05)),
    *same(DDGS, DISTILLERS, p_percent=(0.83, 0.005), nel_mcal=(0.90 * A_LB, ROUNDED)),
    *near(CORN, DISTILLERS, nel_mcal=0.95 * A_LB, fat_percent=4.0),
    *same(SOYA, VIRGINIA_2001, nel_mcal=(0.96 * A_LB, ROUNDED)),
    *same(SEED, VIRGINIA_2001, nel_mcal=(0.88 * A_LB, ROUNDED)),
    *near(SILAGE, VIRGINIA_2001, nel_mcal=0.71 * A_LB),
    *near("Citrus pulp, dried", ALABAMA_TABLE, tdn_percent=82, cp_percent=7, ca_percent=1.7),
    *near("Cottonseed hulls", ALABAMA_TABLE, tdn_percent=42, ca_percent=0.15, p_percent=0.10),
    *near(DDGS, ALABAMA_TABLE, cp_percent=28, p_percent=0.88),
    *near("Rice bran, full fat", ALABAMA_TABLE, tdn_percent=71, cp_percent=14, ca_percent=0.07, p_percent=1.70),
    *near(SOYHULLS, ALABAMA_TABLE, ca_percent=0.55, p_percent=0.20),
    *near("Wheat middlings", ALABAMA_TABLE, cp_percent=18, ca_percent=0.16, p_percent=1.10),
    *near("Cottonseed meal, solvent", ALABAMA_TABLE, cp_percent=45, ca_percent=0.20, p_percent=1.00),
    *near("Maize (corn) gluten feed, dry", ALABAMA_TABLE, cp_percent=24, ca_percent=0.08),
    *near(SEED, ALABAMA_TABLE, cp_percent=23),
    *near("Beet pulp, dried", NORTH_DAKOTA, cp_percent=9.1, tdn_percent=72, ca_percent=0.72),
    *near(SOYHULLS, WEST_VIRGINIA, tdn_percent=67),
    *same(SOYHULLS, ANGUS, tdn_percent=(72.0, 8.0)),
    *same(DDGS, FOUR_PLANTS, tdn_percent=(83.4, 6.7)),
    *near(TIMOTHY, ALBERTA, cp_percent=7.9, ndf_percent=72.8),
    *near("Lucerne (alfalfa) hay, early bloom", ALBERTA, cp_percent=17.6, ndf_percent=52.0),
    *same("Pasture, spring, well managed", GRAZING, nel_mcal=(1.555, 0.035)),
    *same("Lucerne (alfalfa) pellets, grade 20", LEGUMES, nel_mcal=(1.435, 0.065)),
    *near(SILAGE, ROUGHAGES, tdn_percent=22.8 / 0.33, cp_percent=2.8 / 0.33),
    *near(TIMOTHY, ROUGHAGES, tdn_percent=52.5 / 0.889, fat_percent=2.3 / 0.889),
)
BY_TDN = tuple(
    Check(row.name, "nel_mcal", example(row.nel_mcal, row.nel_mcal * 0.03, OWN_ROWS))
    for row in FEEDS
    if row.nel_mcal and row.tdn_percent
)
"""The printed energies of the one edition, against its equations. All of them agree."""
CHECKED = {"feeds": tuple(each.printed for each in CHECKS + BY_TDN)}
FARTHER = (
    *near("Cottonseed hulls", ALABAMA_TABLE, cp_percent=4),
    *near(DDGS, ALABAMA_TABLE, tdn_percent=95),
    *near(SOYHULLS, ALABAMA_TABLE, tdn_percent=78, cp_percent=12),
    *near("Wheat middlings", ALABAMA_TABLE, tdn_percent=83),
    *near("Maize (corn) gluten feed, dry", ALABAMA_TABLE, tdn_percent=83, p_percent=0.55),
    *near("Cottonseed meal, solvent", ALABAMA_TABLE, tdn_percent=78),
    *near(SEED, ALABAMA_TABLE, tdn_percent=93, ca_percent=0.60, p_percent=1.10),
    *near("Citrus pulp, dried", ALABAMA_TABLE, p_percent=0.20),
    *near("Beet pulp, dried", NORTH_DAKOTA, p_percent=0.20),
    *near(SOYHULLS, WEST_VIRGINIA, cp_percent=11, fat_percent=2.2),
    *near(TIMOTHY, ROUGHAGES, cp_percent=8.6 / 0.889),
)
"""Where another table lies farther away than feeds are said to. Most tell the TDN of beef cattle at a low intake."""


def of_row(check: Check) -> float:
    """What the row has of the part; energy that it does not print is reckoned."""
    return made({}, "table", check.row)[check.part].amount


@pytest.mark.parametrize("check", [pytest.param(each, id=f"{each.row} {each.part}") for each in CHECKS])
def test_a_row_agrees_with_what_others_print(check: Check) -> None:
    assert of_row(check) == pytest.approx(check.printed.gives, abs=check.printed.within), check.printed.source.words


@pytest.mark.parametrize("check", [pytest.param(each, id=each.row) for each in BY_TDN])
def test_the_equations_give_the_printed_energy_of_their_own_edition(check: Check) -> None:
    parts = made({}, "table", check.row)
    values: list[Value] = [parts[each] for each in ("tdn_percent", "cp_percent", "fat_percent")]
    assert energy_of(*values).amount == pytest.approx(check.printed.gives, abs=check.printed.within)


@pytest.mark.parametrize("check", [pytest.param(each, id=f"{each.row} {each.part}") for each in FARTHER])
def test_where_tables_are_farther_apart_is_known(check: Check) -> None:
    """So that a row that is mended later leaves this list."""
    assert of_row(check) != pytest.approx(check.printed.gives, abs=check.printed.within)


def test_bulk_densities_of_two_tables_agree() -> None:
    """Loose citrus pulp, rice bran, cottonseed meal and gluten feed stand in both. [kg/L]"""
    ours = {each.name: each for each in BULKS}
    assert ours["citrus pulp, loose or pelleted"].least == pytest.approx(0.32, abs=0.005), FAO.words
    assert ours["rice bran"].least == pytest.approx(20 * 0.016018, abs=0.005), ALABAMA.words
    assert ours["cottonseed meal"].most >= 38 * 0.016018 >= ours["cottonseed meal"].least, ALABAMA.words
    assert ours["maize gluten feed"].most == pytest.approx(33 * 0.016018, abs=0.01), ALABAMA.words


def test_every_density_names_rows_that_are_there() -> None:
    assert all(row in BY_NAME for each in BULKS for row in each.like)
    assert all(each.least <= each.most for each in BULKS)
