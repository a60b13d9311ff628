"""What the calf in a beef cow or a growing heifer takes, beside what her own table says. [a day]"""

from math import exp

from store.husbandry.bounds import at_least_zero, percent
from store.husbandry.needs.feed_energy import upkeep_mcal_per_kg
from store.husbandry.why import Source, Sure, equation, example

BOOK = "Nutrient Requirements of Beef Cattle, 7th edition (1996, update 2000)"
TABLE = Source("nap.edu/openbook.php?record_id=9791&page=43, table 4-2, calf of 38.5 kg; up to 0.0014 off this")


@equation(
    "for the calf in her", "0.000576 x calf x (0.4504 - 0.000766 x days) x e^((0.03233 - 0.0000275 x days) x days)",
    "Mcal for upkeep", Source(f"{BOOK}, chapter 4", Sure.MEMORY),
    example(0.327, 0.001, TABLE, days_in_calf=130, calf_kg=38.5),
    example(0.634, 0.001, TABLE, days_in_calf=160, calf_kg=38.5),
    example(2.027, 0.001, TABLE, days_in_calf=220, calf_kg=38.5),
    example(5.174, 0.0014, TABLE, days_in_calf=280, calf_kg=38.5), days_in_calf=(0, 285), calf_kg=(20, 55),
)  # fmt: skip
def carried_mcal(days_in_calf: float, calf_kg: float) -> float:
    """Net energy for upkeep. [Mcal] calf_kg: what it will weigh at birth. Raises ValueError below zero."""
    at_least_zero(days_in_calf=days_in_calf, calf_kg=calf_kg)
    t = days_in_calf
    return 0.000576 * calf_kg * (0.4504 - 0.000766 * t) * exp((0.03233 - 0.0000275 * t) * t)


@equation(
    "TDN for the calf in her", "energy for it / energy for upkeep in a kilogram of feed x TDN of the feed", "kg",
    Source("plain arithmetic"),
)  # fmt: skip
def carried_tdn_kg(carried_mcal: float, tdn_percent: float) -> float:
    """As TDN of the feed that she eats. [kg] tdn_percent: 30 to 100 % of its dry matter. Raises ValueError."""
    at_least_zero(carried_mcal=carried_mcal)
    percent(tdn_percent=tdn_percent)
    return carried_mcal / upkeep_mcal_per_kg(tdn_percent) * tdn_percent / 100


@equation(
    "protein for the calf in her",
    "calf x (0.001669 - 0.00000211 x days) x e^((0.0278 - 0.0000176 x days) x days) x 6.25 / 0.65 / 0.67", "g",
    Source(f"{BOOK}, chapter 4", Sure.MEMORY), days_in_calf=(0, 285), calf_kg=(20, 55),
)  # fmt: skip
def carried_protein_g(days_in_calf: float, calf_kg: float) -> float:
    """Crude protein. [g] calf_kg: what it will weigh at birth. Raises ValueError below zero."""
    at_least_zero(days_in_calf=days_in_calf, calf_kg=calf_kg)
    t = days_in_calf
    return calf_kg * (0.001669 - 0.00000211 * t) * exp((0.0278 - 0.0000176 * t) * t) * 6.25 / 0.65 / 0.67
