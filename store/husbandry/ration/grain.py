"""Grain: how much of it for her weight, what it is worth in hay, and what passes through her whole."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, Sure, equation, example

MINNESOTA = Source(
    "University of Minnesota, feeding the dairy herd: 32 lb of grain for 1300 lb; a ceiling for big cows"
)
CORN_COWS = Source("beef-cattle.extension.org, how much corn can I feed to my cows: 0.25 % of body weight")
CORN_FOR_HAY = Source(
    CORN_COWS.words + "; a pound replaces 1.5 lb of good to 1.9 lb of poor hay, here of 60 and 47 % TDN"
)
MISSISSIPPI = Source("Mississippi State P2489, extension.msstate.edu/node/7007: from 0.5 % of body weight of grain on")
KERNELS = Source("m.farms.com/news/to-crack-or-not-to-crack: 1,500 of 19,000 kernels passed, 92 % digested, steers")
MOST_PERCENT, ON_HAY_PERCENT, HAY_SUFFERS_PERCENT = 2.5, 0.25, 0.5
"""Of body weight a day: the ceiling of a mixed ration, maize for cows on hay, from where on hay is digested worse."""
WHOLE_GRAIN = {"barley": 0.6, "wheat": 0.6, "oats": 0.9}
"""How much of the energy of a grain is left to a grown cow where it is fed whole. WHOLE_SOURCE"""
WHOLE_SOURCE = Source(
    "Morgan and Campling 1978: rolled barley and oats were digested wholly, whole oats 0.72, less with age; roll barley"
    " always, oats gain little. The factors are ours", Sure.ASSUMED,
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


@equation(
    "hay that a kilogram of grain replaces", "TDN of the grain / TDN of the hay", "kg", CORN_FOR_HAY,
    example(1.5, 0.05, CORN_FOR_HAY, grain_tdn_percent=88.7, hay_tdn_percent=60.0),
    example(1.9, 0.05, CORN_FOR_HAY, grain_tdn_percent=88.7, hay_tdn_percent=47.0),
    hay_tdn_percent=(45.0, 65.0),
)  # fmt: skip
def replaces(grain_tdn_percent: float, hay_tdn_percent: float) -> float:
    """Energy for energy, dry matter for dry matter. [kg a kg] Raises ValueError below zero, or for hay of no energy."""
    at_least_zero(grain_tdn_percent=grain_tdn_percent, hay_tdn_percent=hay_tdn_percent)
    if hay_tdn_percent == 0:
        raise ValueError("hay_tdn_percent is 0; it must be above 0")
    return grain_tdn_percent / hay_tdn_percent


@equation(
    "kernels that were digested", "100 x (1 - passed / eaten)", "%", KERNELS,
    example(92.0, 0.5, KERNELS, eaten=19000.0, passed=1500.0),
)  # fmt: skip
def digested(eaten: float, passed: float) -> float:
    """How many of the kernels she ate did not pass whole. [%] Raises ValueError below zero, or where more passed."""
    at_least_zero(eaten=eaten, passed=passed)
    if passed > eaten or eaten == 0:
        raise ValueError(f"passed is {passed}; only {eaten} were eaten")
    return 100 * (1 - passed / eaten)


@equation("energy of a whole grain", "energy of the rolled grain x what is left of it whole", "Mcal/kg", WHOLE_SOURCE)
def whole(nel_mcal: float, left: float) -> float:
    """Energy of a grain that is fed whole to a grown cow. [Mcal/kg] left: of WHOLE_GRAIN, 0 to 1.

    Raises ValueError outside of these.
    """
    at_least_zero(nel_mcal=nel_mcal, left=left)
    if left > 1:
        raise ValueError(f"left is {left}; it must be at most 1")
    return nel_mcal * left
