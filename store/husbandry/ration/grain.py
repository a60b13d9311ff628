"""Grain: how much of it for her weight, and which passes through her whole."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, equation, example

MINNESOTA = Source(
    "University of Minnesota, feeding the dairy herd: 32 lb of grain for 1300 lb; a ceiling for big cows"
)
MISSISSIPPI = Source("Mississippi State P2489, extension.msstate.edu/node/7007: from 0.5 % of body weight of grain on")
MOST_PERCENT, ON_HAY_PERCENT, HAY_SUFFERS_PERCENT = 2.5, 0.25, 0.5
"""Of body weight a day: the ceiling of a mixed ration, maize for cows on hay, from where on hay is digested worse.

Sources: MINNESOTA, beef-cattle.extension.org (how much corn can I feed to my cows), MISSISSIPPI.
"""
WHOLE_GRAIN = ("barley", "wheat", "oats")
"""Of which a grown cow leaves part undigested where it is fed whole. WHOLE_SOURCE"""
WHOLE_SOURCE = Source(
    "Morgan and Campling 1978: rolled barley and oats were digested wholly, whole oats 0.72, less with age; roll barley"
    " always, oats gain little"
)  # fmt: skip


@equation(
    "grain by weight", "weight x share", "kg", MINNESOTA,
    example(32 * KG_PER_LB, 0.5 * KG_PER_LB, MINNESOTA, weight_kg=1300 * KG_PER_LB, percent=MOST_PERCENT),
    percent=(0.0, MOST_PERCENT),
)  # fmt: skip
def grain(weight_kg: float, percent: float) -> float:
    """So much grain a day as is so many percent of her weight. [kg] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg, percent=percent)
    return weight_kg * percent / 100
