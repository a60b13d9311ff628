"""Gossypol in cottonseed, by the analysis of the seed or of its kernel."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, equation, example

COTTON = Source("cottoninc.com, whole cottonseed, feeding limitations, and wholecottonseed.com, how much should I feed")
MOST_G = 24.0
"""Free gossypol that a milking cow bears in a day. [g] COTTON, after work at Auburn"""
KERNEL = 0.68
"""The part of the whole seed that its kernel is. COTTON"""


@equation(
    "free gossypol", "seed x its free gossypol % x 10", "g", COTTON,
    example(22.7, 0.05, COTTON, seed_kg=10 * KG_PER_LB, percent=0.5), percent=(0.0, 1.6),
)  # fmt: skip
def free_gossypol(seed_kg: float, percent: float) -> float:
    """What so much whole seed holds. [g] percent: of the whole seed. Raises ValueError below zero."""
    at_least_zero(seed_kg=seed_kg, percent=percent)
    return seed_kg * percent * 10


@equation(
    "gossypol of the whole seed", "of its kernel x 0.68", "%", COTTON, example(0.63, 0.005, COTTON, kernel_percent=0.92)
)
def of_seed(kernel_percent: float) -> float:
    """Free gossypol of the whole seed by an analysis of the kernel. [%] Raises ValueError below zero."""
    at_least_zero(kernel_percent=kernel_percent)
    return kernel_percent * KERNEL
