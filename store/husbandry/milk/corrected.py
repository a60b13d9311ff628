"""Milk of one cow against that of another: as if it all had the same fat, or the same energy."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, equation, example

GAINES = Source("encyclo.co.uk, meaning of fat-corrected milk: 80 lb at 3.5 % are 74 lb")
GAINES_AGAIN = Source("vetriaz009.blogspot.com/2022/04/fat-corrected-milk.html: 0.4 x milk + 15 x fat")
STANDARD_ECM = Source("ntro.it.com, what is the formula for energy corrected milk: milk of 4.0 % fat and 3.3 % protein")
DANISH = Source(
    "doBy data set milkman, column ecmy (Friggens, Ridder and Lovendahl 2007, J. Dairy Sci. 90:5453): 0.7808 and 3.140 "
    "in place of 0.7832 and 3.1138, which is 0.9 % less"
)


@equation(
    "4 % fat-corrected milk", "0.4 x milk + 15 x fat", "kg", GAINES,
    example(74 * KG_PER_LB, 0.05 * KG_PER_LB, GAINES, milk_kg=80 * KG_PER_LB, fat_percent=3.5),
    example(16.48, 0.005, GAINES_AGAIN, milk_kg=16.0, fat_percent=4.2),
    fat_percent=(2.0, 8.0),
)  # fmt: skip
def fat_corrected_kg(milk_kg: float, fat_percent: float) -> float:
    """As if it had 4 % fat. [kg] Raises ValueError below zero."""
    at_least_zero(milk_kg=milk_kg, fat_percent=fat_percent)
    return milk_kg * (0.4 + 15 * fat_percent / 100)


@equation(
    "energy-corrected milk", "milk x (0.383 x fat % + 0.242 x protein % + 0.7832) / 3.1138", "kg", STANDARD_ECM,
    example(10.0, 0.0005, STANDARD_ECM, milk_kg=10.0, fat_percent=4.0, protein_percent=3.3),
    example(7.061159, 0.07, DANISH, milk_kg=6.041, fat_percent=4.96, protein_percent=4.09),
    example(8.869822, 0.09, DANISH, milk_kg=10.018, fat_percent=2.44, protein_percent=4.40),
    fat_percent=(2.0, 8.0), protein_percent=(2.5, 5.0),
)  # fmt: skip
def energy_corrected_kg(milk_kg: float, fat_percent: float, protein_percent: float) -> float:
    """As if it had 4.0 % fat and 3.3 % protein. [kg] Raises ValueError below zero.

    Other forms are printed for other standards, as 0.327 x milk + 12.95 x fat + 7.20 x protein for 3.5 % and 3.2 %:
    they give other numbers, and are not mixed with this one.
    """
    at_least_zero(milk_kg=milk_kg, fat_percent=fat_percent, protein_percent=protein_percent)
    return milk_kg * (0.383 * fat_percent + 0.242 * protein_percent + 0.7832) / 3.1138
