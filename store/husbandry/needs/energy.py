"""Net energy for milk (NEL) that a dairy cow needs, by what she does with it. [Mcal a day]

One edition alone, the 7th (2001): its feeds go with its needs. The 8th (2021) counts a quarter more for keeping alive
(0.10), and less for its feeds; they are never mixed.
"""

from store.husbandry.bounds import at_least_zero, percent
from store.husbandry.needs.size import upkeep_kg
from store.husbandry.why import ARITHMETIC, Source, Sure, equation, example

BOOK = "Nutrient Requirements of Dairy Cattle, 7th edition (2001), chapter 2"
OLDER = "Nutrient Requirements of Dairy Cattle, 6th edition (1989)"
GRAZING = Source("articles.extension.org/pages/18326, energy requirements of grazing activity")
KB_PER_LB = 2.2046
PREGNANT_FROM_D, PREGNANT_TO_D = 190.0, 279.0
_ALIVE = Source(f"{OLDER}, table 6-3, maintenance of mature cows", Sure.MEMORY)
_BY_FAT = Source(f"{OLDER}, table 6-3, net energy of milk by fat", Sure.MEMORY)


@equation(
    "to keep alive", "0.080 x weight^0.75", "Mcal", Source(BOOK, Sure.MEMORY),
    example(7.16, 0.005, _ALIVE, weight_kg=400), example(7.82, 0.005, _ALIVE, weight_kg=450),
    example(8.46, 0.005, _ALIVE, weight_kg=500), example(9.09, 0.005, _ALIVE, weight_kg=550),
    example(9.70, 0.005, _ALIVE, weight_kg=600), example(10.30, 0.005, _ALIVE, weight_kg=650),
    example(10.89, 0.005, _ALIVE, weight_kg=700), weight_kg=(400, 800),
)  # fmt: skip
def maintenance(weight_kg: float) -> float:
    """What she burns standing in a stable. [Mcal] weight_kg: hers, without the calf in her. Raises below zero."""
    at_least_zero(weight_kg=weight_kg)
    return 0.080 * upkeep_kg(weight_kg)


@equation(
    "energy in a kilogram of milk", "0.0929 x fat + 0.0547 x protein + 0.0395 x lactose", "Mcal/kg",
    Source(BOOK, Sure.MEMORY), fat_percent=(2, 8), protein_percent=(2, 5), lactose_percent=(4, 5.5),
)  # fmt: skip
def tested_milk(fat_percent: float, protein_percent: float, lactose_percent: float) -> float:
    """Of a milk that was tested in full. [Mcal/kg] protein_percent: crude; true is 0.93 of it. Raises ValueError."""
    percent(fat_percent=fat_percent, protein_percent=protein_percent, lactose_percent=lactose_percent)
    return 0.0929 * fat_percent + 0.0547 * protein_percent + 0.0395 * lactose_percent


@equation(
    "energy in a kilogram of milk", "0.0929 x fat + 0.0547 x protein + 0.192", "Mcal/kg", Source(BOOK, Sure.MEMORY),
    example(
        340 * KB_PER_LB / 1000, 0.004,
        Source("Tyrrell and Reid 1965, 340 kcal to the pound of milk with 4 % fat and 8.9 % solids beside it (acemap."
        "info/paper/387309257); of those, 0.7 % ash and 4.85 % lactose from memory, and so half a percent of room",
        Sure.MEMORY),
        fat_percent=4.0, protein_percent=3.35,
    ), fat_percent=(2, 8), protein_percent=(2, 5),
)  # fmt: skip
def milk(fat_percent: float, protein_percent: float) -> float:
    """Lactose not known: 4.85 % is taken. [Mcal/kg] protein_percent: crude. Raises ValueError beyond 0 to 100."""
    percent(fat_percent=fat_percent, protein_percent=protein_percent)
    return 0.0929 * fat_percent + 0.0547 * protein_percent + 0.192


@equation(
    "energy in a kilogram of milk", "0.3512 + 0.0962 x fat", "Mcal/kg",
    Source(f"{OLDER}, after Moe and Tyrrell; energy of milk is the same in each edition", Sure.MEMORY),
    example(0.64, 0.005, _BY_FAT, fat_percent=3.0), example(0.69, 0.005, _BY_FAT, fat_percent=3.5),
    example(0.78, 0.005, _BY_FAT, fat_percent=4.5), example(0.83, 0.005, _BY_FAT, fat_percent=5.0),
    example(0.88, 0.005, _BY_FAT, fat_percent=5.5),
    example(0.74, 0.005, Source("kb.wisc.edu/dairynutrient/414RN/page.php?id=56416"), fat_percent=4.0),
    example(0.31 * KB_PER_LB, 0.005 * KB_PER_LB, GRAZING, fat_percent=3.5),
    example(0.33 * KB_PER_LB, 0.005 * KB_PER_LB, GRAZING, fat_percent=4.0), fat_percent=(3, 5.5),
)  # fmt: skip
def milk_by_fat(fat_percent: float) -> float:
    """Where nothing but fat is known. [Mcal/kg] Raises ValueError outside of 0 to 100."""
    percent(fat_percent=fat_percent)
    return 0.3512 + 0.0962 * fat_percent


@equation("for milk", "milk x energy in a kilogram of it", "Mcal", Source(BOOK, Sure.MEMORY), milk_kg=(0, 60))
def in_milk_mcal(milk_kg: float, mcal_per_kg: float) -> float:
    """In all milk of a day, what a calf takes included. [Mcal] Raises ValueError below zero."""
    at_least_zero(milk_kg=milk_kg, mcal_per_kg=mcal_per_kg)
    return milk_kg * mcal_per_kg


@equation(
    "calf to come", "0.06275 x weight", "kg", Source(f"{BOOK}, of mature weight", Sure.MEMORY), weight_kg=(350, 800)
)
def calf_to_come_kg(weight_kg: float) -> float:
    """What her calf will weigh at birth, where nobody knows better. [kg] weight_kg: full-grown; a weight with the calf
    in her tells a tenth too much, and her need 1 %. Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg)
    return 0.06275 * weight_kg


def _carried_days(days_in_calf: float) -> float:
    """Days that count: none before 190, none after 279."""
    at_least_zero(days_in_calf=days_in_calf)
    return min(days_in_calf, PREGNANT_TO_D) if days_in_calf >= PREGNANT_FROM_D else 0.0


@equation(
    "for the calf in her", "(0.00318 x days in calf - 0.0352) x calf / 45 / 0.218; from day 190", "Mcal",
    Source(f"{BOOK}; nothing before day 190, where it begins with a step", Sure.MEMORY), days_in_calf=(0, 285),
    calf_kg=(20, 55),
)  # fmt: skip
def pregnancy(days_in_calf: float, calf_kg: float) -> float:
    """What the calf in her takes. [Mcal] calf_kg: what it will weigh at birth. Raises ValueError below zero."""
    at_least_zero(calf_kg=calf_kg)
    days = _carried_days(days_in_calf)
    return (0.00318 * days - 0.0352) * calf_kg / 45 / 0.218 if days else 0.0


@equation(
    "calf and waters in her", "(18 + 0.665 x (days in calf - 190)) x calf / 45; from day 190", "kg",
    Source(BOOK, Sure.MEMORY),
    example(71.0, 0.5, Source("studylib.net/doc/7201686, guidelines after the 7th edition (2001)"),
            days_in_calf=270, calf_kg=45),
    days_in_calf=(0, 285), calf_kg=(20, 55),
)  # fmt: skip
def conceptus_kg(days_in_calf: float, calf_kg: float) -> float:
    """What calf, waters and womb weigh in her: no part of what she keeps alive by herself. [kg] Raises below zero."""
    at_least_zero(calf_kg=calf_kg)
    days = _carried_days(days_in_calf)
    return (18 + 0.665 * (days - PREGNANT_FROM_D)) * calf_kg / 45 if days else 0.0


@equation("weight without the calf in her", "weight - calf and waters in her", "kg", ARITHMETIC)
def own_weight_kg(weight_kg: float, conceptus_kg: float) -> float:
    """Her own. [kg] Raises ValueError below zero, and where the calf in her is heavier than the two."""
    at_least_zero(weight_kg=weight_kg, conceptus_kg=conceptus_kg)
    if conceptus_kg > weight_kg:
        raise ValueError(f"conceptus_kg is {conceptus_kg}; she weighs {weight_kg} with it")
    return weight_kg - conceptus_kg


LOST_MCAL, GAINED_MCAL = 4.92, 5.12


@equation(
    "for her own weight", "5.12 x gain; what she loses gives back 4.92 a kilogram", "Mcal",
    Source(f"{OLDER}, the simplest form", Sure.MEMORY), gain_kg_day=(-1.5, 1.0),
)  # fmt: skip
def weight_change(gain_kg_day: float) -> float:
    """What she puts on costs, what she loses (below zero) gives. [Mcal] Raises ValueError for what is no number."""
    at_least_zero(gain_kg_day=abs(gain_kg_day))
    return gain_kg_day * (GAINED_MCAL if gain_kg_day > 0 else LOST_MCAL)
