"""What the calf in a beef cow or a growing heifer takes, beside what her own table says. [a day]"""

from math import exp

from store.husbandry.bounds import at_least_zero, percent
from store.husbandry.needs.feed_energy import upkeep_mcal_per_kg
from store.husbandry.why import ARITHMETIC, Source, Sure, equation, example

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
    ARITHMETIC,
)  # fmt: skip
def carried_tdn_kg(carried_mcal: float, tdn_percent: float) -> float:
    """As TDN of the feed that she eats. [kg] tdn_percent: 30 to 100 % of its dry matter. Raises ValueError."""
    at_least_zero(carried_mcal=carried_mcal)
    percent(tdn_percent=tdn_percent)
    return carried_mcal / upkeep_mcal_per_kg(tdn_percent) * tdn_percent / 100


@equation("left for herself", "dry matter - energy for the calf in her / energy for upkeep in a kilogram", "kg",
          ARITHMETIC)  # fmt: skip
def left_kg(dry_matter_kg: float, carried_mcal: float, tdn_percent: float) -> float:
    """Dry matter without what the calf in her takes, 0 where that is more. [kg] Raises ValueError as the one above."""
    at_least_zero(dry_matter_kg=dry_matter_kg, carried_mcal=carried_mcal)
    return max(dry_matter_kg - carried_mcal / upkeep_mcal_per_kg(tdn_percent), 0.0)


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


BONES = Source(f"{BOOK}, chapter 5: 13.7 g of calcium, 7.6 g of phosphorus in a kilogram of calf", Sure.MEMORY)
BONES_DAYS, BONES_FROM_D = 90.0, 193.0
"""It grows bones in the last three months of 283 days. [d]"""


@equation("calcium for the calf in her", "13.7 x calf / 90 / 0.5; from day 193", "g", BONES, days_in_calf=(0, 285),
          calf_kg=(20, 55))  # fmt: skip
def carried_calcium_g(days_in_calf: float, calf_kg: float) -> float:
    """Calcium. [g] calf_kg: what it will weigh at birth. Raises ValueError below zero."""
    at_least_zero(days_in_calf=days_in_calf, calf_kg=calf_kg)
    return 13.7 * calf_kg / BONES_DAYS / 0.5 if days_in_calf >= BONES_FROM_D else 0.0


@equation("phosphorus for the calf in her", "7.6 x calf / 90 / 0.68; from day 193", "g", BONES, days_in_calf=(0, 285),
          calf_kg=(20, 55))  # fmt: skip
def carried_phosphorus_g(days_in_calf: float, calf_kg: float) -> float:
    """Phosphorus. [g] calf_kg: what it will weigh at birth. Raises ValueError below zero."""
    at_least_zero(days_in_calf=days_in_calf, calf_kg=calf_kg)
    return 7.6 * calf_kg / BONES_DAYS / 0.68 if days_in_calf >= BONES_FROM_D else 0.0
