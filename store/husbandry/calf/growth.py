"""What a calf on milk gains of what it drinks and eats, and how its gain stands to that. Energy is metabolizable."""

from math import pow as power

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import ARITHMETIC, Printed, Source, Sure, equation, example

NOTE = Source("calfnotes.com, calf note 72, after Nutrient Requirements of Dairy Cattle, 7th edition (2001)")
FLORIDA = Source("edis.ifas.ufl.edu AN263, figure 1, a calf of 100 lb: 2.1 Mcal; the book has 17 % less, and disagrees")
BRITAIN = Source(
    "ahdb.org.uk, Achieving calf growth rates, table 1, on milk alone; told in MJ, 4.2 of them to the Mcal"
)
_ROWS = ((35, 6.04, ((0.2, 1.81), (0.4, 4.15))), (40, 6.68, ((0.2, 1.89), (0.4, 4.35), (0.6, 7.08))),
         (45, 7.30, ((0.2, 1.98), (0.4, 4.54), (0.6, 7.38))), (50, 7.90, ((0.2, 2.05), (0.4, 4.71), (0.6, 7.66))),
         (60, 9.05, ((0.2, 2.19), (0.4, 5.03), (0.6, 8.18))))  # fmt: skip
"""Of that table: weight [kg], for upkeep [MJ], and by gain for it [MJ]."""
MJ = 4.2
STARTER_MCAL = 3.0
"""Of a kilogram of calf starter, as it lies. From memory."""
ALL_MILK = 1.0


@equation("energy it gets", "milk x energy in a kilogram of it + 3.0 x starter", "Mcal",
          Source("plain arithmetic; starter 3.0 Mcal a kilogram", Sure.MEMORY))  # fmt: skip
def gets_mcal(milk_kg: float, mcal_per_kg: float, starter_kg: float) -> float:
    """Of milk and starter. [Mcal a day] Raises ValueError below zero."""
    at_least_zero(milk_kg=milk_kg, mcal_per_kg=mcal_per_kg, starter_kg=starter_kg)
    return milk_kg * mcal_per_kg + STARTER_MCAL * starter_kg


@equation("part of it from milk", "milk x energy in a kilogram of it / energy it gets", "", ARITHMETIC)
def milk_part(milk_kg: float, mcal_per_kg: float, gets_mcal: float) -> float:
    """How much of its energy is milk, 0 to 1; all of it where it gets nothing. Raises ValueError below zero."""
    at_least_zero(milk_kg=milk_kg, mcal_per_kg=mcal_per_kg, gets_mcal=gets_mcal)
    return milk_kg * mcal_per_kg / gets_mcal if gets_mcal else ALL_MILK


def _a_part(milk_part: float) -> None:
    if not 0 <= milk_part <= 1:
        raise ValueError(f"milk_part is {milk_part}; it must be 0 to 1")


@equation(
    "energy to keep alive", "0.086 x weight^0.75 / (0.75 + 0.11 x part from milk)", "Mcal", NOTE,
    *(example(upkeep / MJ, 0.005 / MJ, BRITAIN, weight_kg=weight, milk_part=ALL_MILK) for weight, upkeep, _ in _ROWS),
    example(2.1, 0.38, FLORIDA, weight_kg=100 * KG_PER_LB, milk_part=ALL_MILK),
    weight_kg=(25, 120),
)  # fmt: skip
def upkeep_mcal(weight_kg: float, milk_part: float) -> float:
    """In mild air. [Mcal a day] Raises ValueError below zero, and for a part that is not 0 to 1."""
    at_least_zero(weight_kg=weight_kg)
    _a_part(milk_part)
    return 0.086 * power(weight_kg, 0.75) / (0.75 + 0.11 * milk_part)


def _used(milk_part: float) -> float:
    """How much of what is left builds gain: 0.69 of milk, 0.57 of starter."""
    return 0.57 + 0.12 * milk_part


def _printed_gains() -> tuple[Printed, ...]:
    return tuple(
        example(gain, 0.001, BRITAIN, weight_kg=weight, gets_mcal=(upkeep + for_gain) / MJ, milk_part=ALL_MILK)
        for weight, upkeep, rows in _ROWS
        for gain, for_gain in rows
    )


@equation(
    "gain to expect",
    "(used x (energy it gets - energy to keep alive) / (0.69 x 0.84 x weight^0.355))^(1 / 1.2), used 0.69 of milk, "
    "0.57 of starter", "kg a day", NOTE,
    *_printed_gains(),
    example(0.4, 0.002, NOTE, weight_kg=40, gets_mcal=2.63, milk_part=ALL_MILK),
    example(0.4, 0.002, NOTE, weight_kg=40, gets_mcal=2.76, milk_part=0.682),
    weight_kg=(25, 120), gets_mcal=(1, 12),
)  # fmt: skip
def expected_kg_day(weight_kg: float, gets_mcal: float, milk_part: float) -> float:
    """What it should gain in mild air; 0 where it gets no more than keeps it alive. [kg a day] Raises below zero."""
    at_least_zero(weight_kg=weight_kg, gets_mcal=gets_mcal)
    left = max(gets_mcal - upkeep_mcal(weight_kg, milk_part), 0.0)
    return power(_used(milk_part) * left / (0.69 * 0.84 * power(weight_kg, 0.355)), 1 / 1.2) if weight_kg else 0.0


@equation("gain against what was expected", "100 x gain / gain to expect", "%", ARITHMETIC)
def of_expected_percent(gain_kg_day: float, expected_kg_day: float) -> float:
    """How its gain stands to what it should be. [%] gain_kg_day: below zero: it lost. Raises for nothing expected."""
    at_least_zero(expected_kg_day=expected_kg_day)
    if expected_kg_day == 0:
        raise ValueError("expected_kg_day is 0; there is nothing to compare with")
    return 100 * gain_kg_day / expected_kg_day
