"""Fibre: how much forage fills her, and how much of it a ration must at least hold."""

from msgspec import Struct

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, Sure, equation, example

HAY_AND_FORAGE = Source("hayandforage.com/article-499: at most 1.1 to 1.2 % of body weight in fibre from forage")
RAYBURN = Source("Rayburn, West Virginia University, Forage quality, fiber and energy, January 1997; whole pounds")
PAIRS_2001 = Source("Nutrient Requirements of Dairy Cattle, 7th edition (2001), table 4-3", Sure.MEMORY)
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


class Pair(Struct, frozen=True):
    """How much fibre in all a ration needs at so much fibre from forage, and how much starch and sugar it bears. [%]"""

    forage_ndf_percent: float
    least_ndf_percent: float
    most_nfc_percent: float


PAIRS = (
    Pair(19.0, 25.0, 44.0), Pair(18.0, 27.0, 42.0), Pair(17.0, 29.0, 40.0), Pair(16.0, 31.0, 38.0),
    Pair(15.0, 33.0, 36.0),
)  # fmt: skip
"""PAIRS_2001: two percent more fibre for each percent less from forage."""


@equation(
    "least fibre in the dry matter", "25 + 2 x (19 - fibre from forage), 25 from 19 on", "%", PAIRS_2001,
    *(example(each.least_ndf_percent, 0.5, PAIRS_2001, forage_ndf_percent=each.forage_ndf_percent) for each in PAIRS),
    forage_ndf_percent=(15.0, 60.0),
)  # fmt: skip
def least_fibre(forage_ndf_percent: float) -> float:
    """Fibre that a milking cow's ration needs, by how much of it forage brings. [% of dry matter]

    Raises ValueError below zero.
    """
    at_least_zero(forage_ndf_percent=forage_ndf_percent)
    return 25.0 + 2.0 * max(19.0 - forage_ndf_percent, 0.0)
