"""How much dry matter a head can eat a day: dairy cows by milk and weeks, beef cattle by the rule of thumb. [kg]"""

from math import exp

from store.husbandry.bounds import at_least_zero, percent
from store.husbandry.needs.size import upkeep_kg
from store.husbandry.why import Source, Sure, equation, example

BOOK = "Nutrient Requirements of Dairy Cattle, 7th edition (2001)"
SHEET = Source(
    "studylib.net/doc/7201686, guidelines after the 7th edition (2001) for a cow of 680 kg; what she eats there lies "
    "1.2 to 1.4 % below the equation each time, as if 0.97 of her weight counted"
)
QUOTED = Source(
    "barnardhealth.us/amino-acids-2/nutrient-requirements.html, after the 7th edition (2001) for a cow of 680 kg; it "
    "lies 1.2 to 1.4 % below the equation too"
)
LAG = 0.015
"""By so much of it a printed intake may lie below the equation; both sources say how far."""

POOR_BELOW_TDN, GOOD_ABOVE_TDN = 52.0, 59.0
RULE = Source(
    "oklahomafarmreport.com, 2 October 2024, David Lalman on feed intake; he says there that the rule gave about 6 lb "
    "a day more than dry cows really ate. Others print 2.0 and 2.3 % for the middle class (beefmagazine.com)"
)
MIDDLE_TDN = 55.0
"""Where nobody knows the hay: the middle class. Common practice."""


@equation(
    "4 % milk", "0.4 x milk + 15 x milk x fat / 100", "kg",
    Source("Nutrient Requirements of Dairy Cattle, 6th edition, 1989, table 6-1, note, pdfslide.us/documents/fv-fi"),
    example(11.5, 0.05, Source("ecoursesonline.iasri.res.in/mod/page/view.php?id=55176, 10 kg of milk with 5 % fat"),
            milk_kg=10, fat_percent=5), fat_percent=(2, 7),
)  # fmt: skip
def fat_corrected_kg(milk_kg: float, fat_percent: float) -> float:
    """Her milk as if it had 4 % fat. [kg] Raises ValueError below zero, and for a fat that is not 0 to 100 %."""
    at_least_zero(milk_kg=milk_kg)
    percent(fat_percent=fat_percent)
    return 0.4 * milk_kg + 15 * milk_kg * fat_percent / 100


@equation(
    "can eat", "(0.372 x 4 % milk + 0.0968 x weight^0.75) x (1 - e^(-0.192 x (days in milk / 7 + 3.67)))", "kg",
    Source(f"{BOOK}, equation 1-2, Holsteins fed as much as they want", Sure.MEMORY),
    example(23.6, 23.6 * LAG, SHEET, fat_corrected_kg=32.375, weight_kg=680, days_in_milk=90),
    example(20.3, 20.3 * LAG, SHEET, fat_corrected_kg=23.125, weight_kg=680, days_in_milk=90),
    example(15.6, 15.6 * LAG, SHEET, fat_corrected_kg=32.375, weight_kg=680, days_in_milk=11),
    example(23.6, 23.6 * LAG, QUOTED, fat_corrected_kg=32.375, weight_kg=680, days_in_milk=90),
    example(30.2, 30.2 * LAG, QUOTED, fat_corrected_kg=50.875, weight_kg=680, days_in_milk=90),
    fat_corrected_kg=(5, 60), weight_kg=(400, 800), days_in_milk=(5, 400),
)  # fmt: skip
def milking_kg(fat_corrected_kg: float, weight_kg: float, days_in_milk: float) -> float:
    """A dairy cow in milk; less in her first weeks. [kg] Raises ValueError below zero."""
    at_least_zero(fat_corrected_kg=fat_corrected_kg, weight_kg=weight_kg, days_in_milk=days_in_milk)
    comes_up = 1 - exp(-0.192 * (days_in_milk / 7 + 3.67))
    return (0.372 * fat_corrected_kg + 0.0968 * upkeep_kg(weight_kg)) * comes_up


@equation(
    "can eat", "weight x (1.97 - 0.75 x e^(0.16 x (days in calf - 280))) / 100", "kg",
    Source(f"{BOOK}, chapter 1", Sure.MEMORY),
    example(13.7, 0.05, Source("studylib.net/doc/7201686, guidelines after the 7th edition (2001), dry cow, 270 days"),
            weight_kg=751, days_in_calf=270),
    weight_kg=(400, 900), days_in_calf=(200, 280),
)  # fmt: skip
def dry_kg(weight_kg: float, days_in_calf: float) -> float:
    """A dry dairy cow; less and less before she calves. [kg] weight_kg: the calf in her included. Past day 280 it
    stays as on that day. Raises ValueError below zero.
    """
    at_least_zero(weight_kg=weight_kg, days_in_calf=days_in_calf)
    return weight_kg * (1.97 - 0.75 * exp(0.16 * (min(days_in_calf, 280) - 280))) / 100


def _by_forage(tdn_percent: float, poor: float, middle: float, good: float) -> float:
    percent(tdn_percent=tdn_percent)
    return poor if tdn_percent < POOR_BELOW_TDN else good if tdn_percent > GOOD_ABOVE_TDN else middle


@equation(
    "can eat", "1.8, 2.2 or 2.5 % of weight, by TDN of the forage: below 52, to 59, above", "kg", RULE,
    example(1.8, 0.05, RULE, weight_kg=100, tdn_percent=50), example(2.2, 0.05, RULE, weight_kg=100, tdn_percent=52),
    example(2.2, 0.05, RULE, weight_kg=100, tdn_percent=59), example(2.5, 0.05, RULE, weight_kg=100, tdn_percent=60),
    weight_kg=(350, 800), tdn_percent=(40, 70),
)  # fmt: skip
def dry_by_rule_kg(weight_kg: float, tdn_percent: float) -> float:
    """A dry beef cow on forage. [kg] tdn_percent: of its dry matter. Raises ValueError below zero, or above 100 %."""
    at_least_zero(weight_kg=weight_kg)
    return weight_kg * _by_forage(tdn_percent, 1.8, 2.2, 2.5) / 100


@equation(
    "can eat", "2.2, 2.5 or 2.7 % of weight, by TDN of the forage: below 52, to 59, above", "kg", RULE,
    example(2.2, 0.05, RULE, weight_kg=100, tdn_percent=50), example(2.5, 0.05, RULE, weight_kg=100, tdn_percent=52),
    example(2.5, 0.05, RULE, weight_kg=100, tdn_percent=59), example(2.7, 0.05, RULE, weight_kg=100, tdn_percent=60),
    example(27.6, 2.4, Source("beefmagazine.com, Cows' daily feed consumption: 2.3 % of 1200 lb in the middle class, "
                              "where the newer rule has 2.5 %, 2.4 lb more"), weight_kg=1200, tdn_percent=55),
    weight_kg=(350, 800), tdn_percent=(40, 70),
)  # fmt: skip
def milking_by_rule_kg(weight_kg: float, tdn_percent: float) -> float:
    """A beef cow in milk on forage. [kg] tdn_percent: of its dry matter. Raises ValueError below zero, above 100 %."""
    at_least_zero(weight_kg=weight_kg)
    return weight_kg * _by_forage(tdn_percent, 2.2, 2.5, 2.7) / 100


YOUNG = Source('progressivecattle.com, "Forage intake in beef cattle"')


@equation(
    "can eat", "3 % of weight", "kg", YOUNG, example(21.0, 0.05, YOUNG, weight_kg=700), weight_kg=(150, 400)
)  # fmt: skip
def growing_by_rule_kg(weight_kg: float) -> float:
    """Young growing cattle on forage. [kg] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg)
    return weight_kg * 3.0 / 100
