"""Urea: how much of a feed it is by its label, and what it counts for as protein. No amount here is advice."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, equation, example

FACTOR = 2.81
"""Protein that a kilogram of urea counts for: 45 % nitrogen x 6.25. [kg]"""
NEBRASKA = Source("beef.unl.edu/faq20101008urea-nitrates: 8 % from NPN / 2.81 is 2.85 % urea")
FEED_TAG = Source(
    "beefmagazine.com/products/0831-more-on-feed-tag: 10 % from NPN / 2.81 is 3.55 % urea; cut off, not rounded"
)
EQUIVALENT = Source("beef-cattle.extension.org, what is the protein equivalent of urea: 100 lb are 281 lb")
MOST_OF_CONCENTRATE_PERCENT, MOST_DAIRY_KG, MOST_OF_PROTEIN_PERCENT = 1.0, 0.135, 20.0
"""Of a dairy cow's concentrate, a day, and of her protein. DAIRY_LIMIT"""
DAIRY_LIMIT = Source("Kertz 2010, Professional Animal Scientist 26:257: older limits were too high")


@equation(
    "urea by the label", "protein from NPN % / 2.81", "%", EQUIVALENT,
    example(2.85, 0.005, NEBRASKA, npn_percent=8.0), example(3.55, 0.01, FEED_TAG, npn_percent=10.0),
    npn_percent=(0.0, 60.0),
)  # fmt: skip
def urea_percent(npn_percent: float) -> float:
    """How much urea a feed holds whose label tells its protein from non-protein nitrogen. [%] Raises below zero."""
    at_least_zero(npn_percent=npn_percent)
    return npn_percent / FACTOR


@equation(
    "protein that urea counts for", "urea x 2.81", "kg", EQUIVALENT,
    example(281 * KG_PER_LB, 0.5 * KG_PER_LB, EQUIVALENT, urea_kg=100 * KG_PER_LB),
)  # fmt: skip
def protein_of_urea(urea_kg: float) -> float:
    """What urea counts for as protein, where the rumen has enough to make it of. [kg] Raises ValueError below zero."""
    at_least_zero(urea_kg=urea_kg)
    return urea_kg * FACTOR
