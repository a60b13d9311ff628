"""What a kilogram of dry matter gives growing and beef cattle, by its total digestible nutrients (TDN)."""

from store.husbandry.bounds import percent
from store.husbandry.why import Source, Sure, equation

BOOK = "Nutrient Requirements of Beef Cattle, 7th edition (1996, update 2000)"
LEAST_TDN = 30.0
"""Below it the curves give nothing for upkeep: no feed of cattle is so poor."""


def _usable_mcal(tdn_percent: float) -> float:
    """Metabolizable energy: 0.82 of the digestible, 4.409 Mcal for a kilogram of TDN. [Mcal/kg]"""
    percent(tdn_percent=tdn_percent)
    if tdn_percent < LEAST_TDN:
        raise ValueError(f"tdn_percent is {tdn_percent}; it must be {LEAST_TDN:g} or more")
    return 0.82 * 0.04409 * tdn_percent


@equation(
    "energy for upkeep in a kilogram of dry matter",
    "1.37 x ME - 0.138 x ME^2 + 0.0105 x ME^3 - 1.12, where ME = 0.82 x 0.04409 x TDN", "Mcal/kg",
    Source(f"{BOOK}, chapter 1", Sure.MEMORY), tdn_percent=(45, 90),
)  # fmt: skip
def upkeep_mcal_per_kg(tdn_percent: float) -> float:
    """Net energy for upkeep (NEm). [Mcal/kg] Raises ValueError for what is not 30 to 100 %."""
    me = _usable_mcal(tdn_percent)
    return 1.37 * me - 0.138 * me**2 + 0.0105 * me**3 - 1.12


@equation(
    "energy for gain in a kilogram of dry matter",
    "1.42 x ME - 0.174 x ME^2 + 0.0122 x ME^3 - 1.65, where ME = 0.82 x 0.04409 x TDN", "Mcal/kg",
    Source(f"{BOOK}, chapter 1", Sure.MEMORY), tdn_percent=(50, 90),
)  # fmt: skip
def gain_mcal_per_kg(tdn_percent: float) -> float:
    """Net energy for gain (NEg). [Mcal/kg] Raises ValueError for what is not 30 to 100 %."""
    me = _usable_mcal(tdn_percent)
    return 1.42 * me - 0.174 * me**2 + 0.0122 * me**3 - 1.65
