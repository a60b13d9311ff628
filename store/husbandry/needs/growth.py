"""Crude protein, calcium and phosphorus of growing cattle: upkeep and what a gain is built of. [g a day]"""

from store.husbandry.needs.gain import (
    BOOK,
    FINISH_KG,
    SHRUNK,
    STEER_KG,
    TABLE,
    as_finished_kg,
    gain_takes_mcal,
)
from store.husbandry.needs.size import upkeep_kg
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Printed, Source, Sure, equation, example

_ROWS = ((50, 15.2, 0.64, 7.1, 0.21, 0.13), (60, 16.1, 1.77, 9.8, 0.36, 0.19), (70, 15.7, 2.68, 12.4, 0.49, 0.24),
         (80, 14.8, 3.34, 14.9, 0.61, 0.29), (90, 13.7, 3.75, 17.3, 0.72, 0.34))  # fmt: skip
"""Of the table: TDN, eaten and gain [lb], protein, calcium, phosphorus [% of dry matter]."""


def _printed(column: int, off: float, rounded: float) -> tuple[Printed, ...]:
    """The rows of one column as grams. off: part by which it lies off; rounded: half of its last digit."""
    return tuple(
        example(row[1] * KG_PER_LB * row[column] * 10, row[1] * KG_PER_LB * 10 * (off * row[column] + rounded), TABLE,
                weight_kg=STEER_KG, gain_kg_day=row[2] * KG_PER_LB, mature_kg=FINISH_KG)
        for row in _ROWS
    )  # fmt: skip


def _protein_gained_g(weight_kg: float, gain_kg_day: float, mature_kg: float) -> float:
    """Protein in what she gains: the fatter the gain the less. [g]"""
    return max(268 * gain_kg_day - 29.4 * gain_takes_mcal(weight_kg, gain_kg_day, mature_kg), 0.0)


@equation(
    "protein", "(3.8 x weight^0.75 + protein gained / (0.834 - 0.00114 x weight as finished)) / 0.67", "g",
    Source(f"{BOOK}, chapter 3; 0.67 in Arkansas MP391 too, scribd.com/document/466698147", Sure.MEMORY),
    *_printed(3, 0.011, 0.0), weight_kg=(100, 600), gain_kg_day=(0, 1.7), mature_kg=(350, 800),
)  # fmt: skip
def protein_g(weight_kg: float, gain_kg_day: float, mature_kg: float) -> float:
    """Crude protein. [g] mature_kg: her weight when finished or full-grown. Raises ValueError below zero."""
    used = 0.834 - 0.00114 * min(as_finished_kg(weight_kg, mature_kg), 300.0)
    gained = _protein_gained_g(weight_kg, gain_kg_day, mature_kg) / used
    return (3.8 * upkeep_kg(SHRUNK * weight_kg) + gained) / 0.67


@equation(
    "calcium", "(0.0154 x weight + 0.071 x protein gained) / 0.5", "g", Source(f"{BOOK}, chapter 5", Sure.MEMORY),
    *_printed(4, 0.03, 0.005), weight_kg=(100, 600), gain_kg_day=(0, 1.7), mature_kg=(350, 800),
)  # fmt: skip
def calcium_g(weight_kg: float, gain_kg_day: float, mature_kg: float) -> float:
    """Calcium. [g] mature_kg: her weight when finished or full-grown. Raises ValueError below zero."""
    return (0.0154 * SHRUNK * weight_kg + 0.071 * _protein_gained_g(weight_kg, gain_kg_day, mature_kg)) / 0.5


@equation(
    "phosphorus", "(0.016 x weight + 0.039 x protein gained) / 0.68", "g", Source(f"{BOOK}, chapter 5", Sure.MEMORY),
    *_printed(5, 0.03, 0.005), weight_kg=(100, 600), gain_kg_day=(0, 1.7), mature_kg=(350, 800),
)  # fmt: skip
def phosphorus_g(weight_kg: float, gain_kg_day: float, mature_kg: float) -> float:
    """Phosphorus. [g] mature_kg: her weight when finished or full-grown. Raises ValueError below zero."""
    return (0.016 * SHRUNK * weight_kg + 0.039 * _protein_gained_g(weight_kg, gain_kg_day, mature_kg)) / 0.68
