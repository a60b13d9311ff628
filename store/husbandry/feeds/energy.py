"""Net energy for lactation of a feed from its TDN, by one edition: that of 2001, at three times maintenance.

A need of one edition is met with the energy of feeds of the same edition: no other one is in the program.
"""

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Source, Sure, Value, equation

CHAPTER_2 = Source("Nutrient Requirements of Dairy Cattle, 7th edition (2001), chapter 2", Sure.MEMORY)

DIGESTED_PROTEIN = 0.9
"""The part of the protein that is digested: about 0.97 in a concentrate, 0.85 in a forage. Rounded, from memory."""
DIET_TDN, TIMES_ABOVE = 74.0, 2.0
"""The table's diet [% TDN], fed at three times maintenance: two times above it."""
KEPT = (DIET_TDN - (0.18 * DIET_TDN - 10.3) * TIMES_ABOVE) / DIET_TDN
"""The part of the digestible energy that is left at that intake, 0.918."""
FATTY_PERCENT = 3.0
"""From so much fat on, fat gives energy that the equations count apart."""


@equation(
    "digestible energy", "(0.042 x TDN - 0.006 + 0.014 x 0.9 x protein) x 0.918 for a full feeding", "Mcal/kg",
    CHAPTER_2, tdn_percent=(30.0, 100.0), cp_percent=(0.0, 60.0),
)  # fmt: skip
def digestible(tdn_percent: float, cp_percent: float) -> float:
    """Digestible energy of a kilogram of dry matter at three times maintenance. Raises ValueError below zero."""
    at_least_zero(tdn_percent=tdn_percent, cp_percent=cp_percent)
    return max(0.042 * tdn_percent - 0.006 + 0.014 * DIGESTED_PROTEIN * cp_percent, 0.0) * KEPT


@equation(
    "metabolisable energy", "1.01 x digestible energy - 0.45 + 0.0046 x (fat - 3, from 3 on)", "Mcal/kg", CHAPTER_2
)
def metabolisable(digestible_mcal: float, fat_percent: float) -> float:
    """Metabolisable energy of a kilogram of dry matter, 0 where nothing is left. Raises ValueError below zero."""
    at_least_zero(digestible_mcal=digestible_mcal, fat_percent=fat_percent)
    return max(1.01 * digestible_mcal - 0.45 + 0.0046 * max(fat_percent - FATTY_PERCENT, 0.0), 0.0)


@equation(
    "net energy (NEL)",
    "0.703 x metabolisable energy - 0.19 + (0.097 x metabolisable energy + 0.19) / 97 x (fat - 3, from 3 on)",
    "Mcal/kg", CHAPTER_2, fat_percent=(0.0, 40.0),
)  # fmt: skip
def net(metabolisable_mcal: float, fat_percent: float) -> float:
    """Net energy for lactation of a kilogram of dry matter, 0 where nothing is left. Raises ValueError below zero."""
    at_least_zero(metabolisable_mcal=metabolisable_mcal, fat_percent=fat_percent)
    for_fat = (0.097 * metabolisable_mcal + 0.19) / 97 * max(fat_percent - FATTY_PERCENT, 0.0)
    return max(0.703 * metabolisable_mcal - 0.19 + for_fat, 0.0)


def energy_of(tdn_percent: Value, cp_percent: Value, fat_percent: Value) -> Value:
    """Net energy of a kilogram of dry matter by the edition of 2001, step by step. [Mcal/kg]"""
    digested = digestible.of(tdn_percent=tdn_percent, cp_percent=cp_percent)
    metabolised = metabolisable.of(digestible_mcal=digested, fat_percent=fat_percent)
    return net.of(metabolisable_mcal=metabolised, fat_percent=fat_percent)
