"""Crude protein, calcium and phosphorus that a dairy cow needs: the simple tables, keeping alive plus milk. [g a day]

The tables are of 1989; later editions count what is digested where, which needs tests that no small farm has.
"""

from math import pow as power

from store.husbandry.bounds import at_least_zero, percent
from store.husbandry.needs.energy import PREGNANT_FROM_D
from store.husbandry.needs.size import upkeep_kg
from store.husbandry.why import Source, Sure, equation, example

TABLE = "Nutrient Requirements of Dairy Cattle, 6th edition (1989), table 6-3"
ALIVE = Source(f"{TABLE}, maintenance of mature cows, fitted; protein lies up to 1.3 g off it", Sure.MEMORY)
CARRYING = Source(
    f"{TABLE}, maintenance and last two months in calf, fitted within 1 g; here from day 190 on, as energy", Sure.MEMORY
)
MILK = Source(f"{TABLE}, a kilogram of milk by fat, fitted", Sure.MEMORY)


@equation(
    "protein to keep alive", "7.93 x weight^0.6157", "g", ALIVE,
    example(318, 1.3, ALIVE, weight_kg=400), example(341, 1.3, ALIVE, weight_kg=450),
    example(364, 1.3, ALIVE, weight_kg=500),
    example(386, 1.3, ALIVE, weight_kg=550),
    example(406, 1.3, ALIVE, weight_kg=600), example(428, 1.3, ALIVE, weight_kg=650),
    example(449, 1.3, ALIVE, weight_kg=700), weight_kg=(400, 700),
)  # fmt: skip
def alive_protein_g(weight_kg: float) -> float:
    """To keep alive. [g] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg)
    return 7.93 * power(weight_kg, 0.6157)


@equation(
    "protein to keep alive and for the calf in her", "9.953 x weight^0.75; from day 190", "g", CARRYING,
    example(890, 1, CARRYING, weight_kg=400, days_in_calf=250),
    example(1207, 1, CARRYING, weight_kg=600, days_in_calf=250),
    example(1355, 1, CARRYING, weight_kg=700, days_in_calf=250), weight_kg=(400, 700),
)  # fmt: skip
def carrying_protein_g(weight_kg: float, days_in_calf: float) -> float:
    """With a calf in her: 95.7 g for each of 0.104 Mcal; before day 190 as without. [g] Raises below zero."""
    at_least_zero(weight_kg=weight_kg, days_in_calf=days_in_calf)
    if days_in_calf < PREGNANT_FROM_D:
        return alive_protein_g(weight_kg)
    return 95.7 * 0.104 * upkeep_kg(weight_kg)


@equation(
    "protein for milk", "milk x (43.6 + 11.54 x fat)", "g", MILK,
    example(78, 0.5, MILK, milk_kg=1, fat_percent=3.0), example(84, 0.5, MILK, milk_kg=1, fat_percent=3.5),
    example(90, 0.5, MILK, milk_kg=1, fat_percent=4.0), example(96, 0.5, MILK, milk_kg=1, fat_percent=4.5),
    example(101, 0.5, MILK, milk_kg=1, fat_percent=5.0), example(107, 0.5, MILK, milk_kg=1, fat_percent=5.5),
    fat_percent=(3, 5.5),
)  # fmt: skip
def milk_protein_g(milk_kg: float, fat_percent: float) -> float:
    """For all milk of a day. [g] Raises ValueError below zero, and for a fat that is not 0 to 100 %."""
    at_least_zero(milk_kg=milk_kg)
    percent(fat_percent=fat_percent)
    return milk_kg * (43.6 + 11.54 * fat_percent)


@equation(
    "calcium to keep alive", "0.04 x weight; 0.0657 x weight from day 190 in calf", "g", CARRYING,
    example(16, 0.5, ALIVE, weight_kg=400, days_in_calf=0), example(28, 0.5, ALIVE, weight_kg=700, days_in_calf=0),
    example(26, 0.5, CARRYING, weight_kg=400, days_in_calf=250),
    example(46, 0.5, CARRYING, weight_kg=700, days_in_calf=250), weight_kg=(400, 700),
)  # fmt: skip
def alive_calcium_g(weight_kg: float, days_in_calf: float) -> float:
    """To keep alive, and for the calf in her. [g] days_in_calf: 0 without. Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg, days_in_calf=days_in_calf)
    return weight_kg * (0.0657 if days_in_calf >= PREGNANT_FROM_D else 0.04)


@equation(
    "phosphorus to keep alive", "0.0286 x weight; 0.04 x weight from day 190 in calf", "g", CARRYING,
    example(11, 0.5, ALIVE, weight_kg=400, days_in_calf=0), example(20, 0.5, ALIVE, weight_kg=700, days_in_calf=0),
    example(16, 0.5, CARRYING, weight_kg=400, days_in_calf=250),
    example(28, 0.5, CARRYING, weight_kg=700, days_in_calf=250), weight_kg=(400, 700),
)  # fmt: skip
def alive_phosphorus_g(weight_kg: float, days_in_calf: float) -> float:
    """To keep alive, and for the calf in her. [g] days_in_calf: 0 without. Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg, days_in_calf=days_in_calf)
    return weight_kg * (0.04 if days_in_calf >= PREGNANT_FROM_D else 0.0286)


@equation(
    "calcium for milk", "milk x (1.29 + 0.48 x fat)", "g", MILK,
    example(2.73, 0.005, MILK, milk_kg=1, fat_percent=3.0), example(3.21, 0.005, MILK, milk_kg=1, fat_percent=4.0),
    example(3.93, 0.005, MILK, milk_kg=1, fat_percent=5.5), fat_percent=(3, 5.5),
)  # fmt: skip
def milk_calcium_g(milk_kg: float, fat_percent: float) -> float:
    """For all milk of a day. [g] Raises ValueError below zero, and for a fat that is not 0 to 100 %."""
    at_least_zero(milk_kg=milk_kg)
    percent(fat_percent=fat_percent)
    return milk_kg * (1.29 + 0.48 * fat_percent)


@equation(
    "phosphorus for milk", "milk x (0.78 + 0.30 x fat)", "g", MILK,
    example(1.68, 0.005, MILK, milk_kg=1, fat_percent=3.0), example(1.98, 0.005, MILK, milk_kg=1, fat_percent=4.0),
    example(2.43, 0.005, MILK, milk_kg=1, fat_percent=5.5), fat_percent=(3, 5.5),
)  # fmt: skip
def milk_phosphorus_g(milk_kg: float, fat_percent: float) -> float:
    """For all milk of a day. [g] Raises ValueError below zero, and for a fat that is not 0 to 100 %."""
    at_least_zero(milk_kg=milk_kg)
    percent(fat_percent=fat_percent)
    return milk_kg * (0.78 + 0.30 * fat_percent)
