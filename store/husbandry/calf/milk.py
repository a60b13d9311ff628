"""What a calf drinks: colostrum at first, then milk by its weight."""

from store.husbandry.bounds import at_least_zero, percent
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, Sure, equation, example, given

CORNELL = Source(
    "vet.cornell.edu, NYSCHAP, liquid feed management: 90 lb drink 4.5 quarts of 2 lb, twice 2.25; a floor, no target"
)
MERCK = Source("merckvetmanual.com, feeding young dairy calves")
AMPLE = Source("paacodairywelfareauditortraining.com, opportunity to suck: calves that may drink take about 20 %")
LEAST_PERCENT = given(10.0, "least milk", "% of its weight", "a table", CORNELL)
AMPLE_PERCENT = given(20.0, "milk that it would drink", "% of its weight", "a table", AMPLE)
FIRST_L, FIRST_WITHIN_H = given(3.0, "first colostrum, at least", "L", "a table", MERCK), 6.0
"""Of good colostrum, and so soon; a second feed after 8 to 12 h, or 4.2 L at once."""
WISCONSIN = Source("dairy.extension.wisc.edu, Up your colostrum game: 10 to 15 %, so an 80 lb calf about a gallon")
QUART_KG, GALLON_OF_MILK_KG = 2 * KG_PER_LB, 8.6 * KG_PER_LB


@equation(
    "milk a day", "weight x part of it / 100", "kg", CORNELL,
    example(4.5 * QUART_KG, 0.05 * QUART_KG, CORNELL, weight_kg=90 * KG_PER_LB, percent_of_weight=10),
    weight_kg=(25, 120), percent_of_weight=(8, 25),
)  # fmt: skip
def allowance_kg(weight_kg: float, percent_of_weight: float) -> float:
    """Whole milk. [kg] percent_of_weight: 10 is a floor, about 20 what a calf drinks by itself. Raises ValueError."""
    at_least_zero(weight_kg=weight_kg)
    percent(percent_of_weight=percent_of_weight)
    return weight_kg * percent_of_weight / 100


@equation(
    "first colostrum", "weight x part of it / 100", "kg",
    Source("Cornell, Maximizing passive immunity, dairyherd.com: at least 10 % of its weight within 4 h"),
    example(GALLON_OF_MILK_KG, 0.7 * KG_PER_LB, Source(f"{WISCONSIN.words}; 10 % is 0.6 lb less, 11 % as much more"),
            weight_kg=80 * KG_PER_LB, percent_of_weight=10),
    weight_kg=(20, 60), percent_of_weight=(10, 15),
)  # fmt: skip
def colostrum_kg(weight_kg: float, percent_of_weight: float) -> float:
    """In its first hours; the vet decides for one that does not drink. [kg] Raises ValueError beyond 0 to 100 %."""
    at_least_zero(weight_kg=weight_kg)
    percent(percent_of_weight=percent_of_weight)
    return weight_kg * percent_of_weight / 100


@equation(
    "energy in a kilogram of milk", "0.376 + 0.0755 x fat", "Mcal for a calf",
    Source("a line of ours through the two milks of Froberg et al. 2008, publications.slu.se id 20628", Sure.ASSUMED),
    example(2.9 / 4.184, 0.05 / 4.184, Source("Froberg et al. 2008, publications.slu.se id 20628, 2.9 and 3.5 MJ"),
            fat_percent=4.2),
    example(3.5 / 4.184, 0.05 / 4.184, Source("Froberg et al. 2008, publications.slu.se id 20628, 2.9 and 3.5 MJ"),
            fat_percent=6.1),
    example(22.71 * 0.125 / 4.184, 0.002, Source("ahdb.org.uk, Achieving calf growth rates: 22.71 MJ in a kilogram of "
            "dry matter of milk with 4 % fat; 12.5 % dry matter, from memory", Sure.MEMORY), fat_percent=4.0),
    fat_percent=(3, 7),
)  # fmt: skip
def milk_mcal_per_kg(fat_percent: float) -> float:
    """Metabolizable energy of whole milk. [Mcal/kg] Raises ValueError for what is not 0 to 100 %."""
    percent(fat_percent=fat_percent)
    return 0.376 + 0.0755 * fat_percent
