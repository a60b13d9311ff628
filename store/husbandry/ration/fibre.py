"""Fibre: how much forage fills her, and how much of it a ration must at least hold."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, equation, example

HAY_AND_FORAGE = Source("hayandforage.com/article-499: at most 1.1 to 1.2 % of body weight in fibre from forage")
RAYBURN = Source("Rayburn, West Virginia University, Forage quality, fiber and energy, January 1997; whole pounds")
FILLED_PERCENT = 1.2
"""So much of her weight in fibre from forage fills a cow. [% a day] HAY_AND_FORAGE"""


@equation(
    "forage she has room for", "weight x share of it in fibre / fibre of the forage", "kg dry matter", HAY_AND_FORAGE,
    example(30 * KG_PER_LB, 0.5 * KG_PER_LB, HAY_AND_FORAGE,
            weight_kg=1500 * KG_PER_LB, ndf_percent=60.0, fill_percent=FILLED_PERCENT),
    example(28.6 * KG_PER_LB, 0.05 * KG_PER_LB, RAYBURN,
            weight_kg=1300 * KG_PER_LB, ndf_percent=50.0, fill_percent=1.1),
    example(36 * KG_PER_LB, 0.5 * KG_PER_LB, RAYBURN, weight_kg=1300 * KG_PER_LB, ndf_percent=40.0, fill_percent=1.1),
    fill_percent=(0.75, 1.4), ndf_percent=(30.0, 80.0), weight_kg=(300.0, 900.0),
)  # fmt: skip
def most_forage(weight_kg: float, ndf_percent: float, fill_percent: float) -> float:
    """Forage whose fibre is so many percent of her weight, as FILLED_PERCENT. [kg dry matter]

    Raises ValueError below zero, or for forage of no fibre.
    """
    at_least_zero(weight_kg=weight_kg, ndf_percent=ndf_percent, fill_percent=fill_percent)
    if ndf_percent == 0:
        raise ValueError("ndf_percent is 0; it must be above 0")
    return weight_kg * fill_percent / ndf_percent
