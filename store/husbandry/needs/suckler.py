"""What a beef cow needs in a day, by months since she calved. Energy is total digestible nutrients (TDN).

Keys: tdn_kg, protein_g, calcium_g, phosphorus_g, dry_matter_kg (what she eats), and those of `diet` [% of dry matter].
The printed rows are cows of 1000 and 1200 lb with 20 lb of milk at their peak, in calf again so that they calve every
year; between two rows, and beyond them, evenly. Raises ValueError for what cannot be.
"""

from collections.abc import Mapping, Sequence
from math import exp

from store.husbandry.body.growth import on_a_line
from store.husbandry.bounds import at_least_zero
from store.husbandry.needs import diet
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Printed, Source, Sure, Value, equation, example, given

BOOK = "Nutrient Requirements of Beef Cattle, 7th edition (1996, update 2000)"
TABLE = Source(f"{BOOK}, tables of beef cows by months since calving, peak milk 20 lb", Sure.MEMORY)
EARLY = Source(
    "beefmagazine.com, Cows' daily feed consumption: 1200 lb, 20 lb of milk, the first 90 days; in the middle of these "
    "the table has 5 % more protein"
)
MONTH_D, YEAR_D, GESTATION_D, WEANED_D = 30.4, 365.0, 283.0, 7 * 30.4
LIGHT_KG, HEAVY_KG = 1000 * KG_PER_LB, 1200 * KG_PER_LB
_EATEN_LB = ((24.0, 25.0, 25.4, 24.4, 23.5, 22.7, 21.1, 21.0, 20.9, 20.8, 21.0, 21.4),
             (26.8, 27.8, 28.4, 27.4, 26.5, 25.7, 24.2, 24.1, 24.0, 23.9, 24.1, 24.6))  # fmt: skip
_TDN = ((59.6, 60.9, 58.6, 57.0, 55.4, 53.9, 44.9, 45.8, 47.1, 49.3, 52.3, 56.2),
        (58.7, 59.9, 57.6, 56.2, 54.7, 53.4, 44.9, 45.8, 47.1, 49.3, 52.3, 56.2))  # fmt: skip
_PROTEIN = ((10.54, 11.18, 10.38, 9.65, 8.86, 8.17, 5.98, 6.16, 6.47, 6.95, 7.66, 8.67),
            (10.10, 10.69, 9.92, 9.25, 8.54, 7.92, 5.99, 6.18, 6.50, 7.00, 7.73, 8.78))  # fmt: skip
"""By month, of the cow of 1000 lb and of that of 1200 lb: eaten [lb], TDN and protein [% of it]."""
_ALL = ((100.0,) * 12,) * 2


def _amounts_kg(part_percent: Sequence[float], eaten_lb: Sequence[float]) -> list[float]:
    return [lb * KG_PER_LB * part / 100 for part, lb in zip(part_percent, eaten_lb, strict=True)]


def _between(weight_kg: float, place_d: float, parts: Sequence[Sequence[float]]) -> float:
    """A part of what is eaten at a place in her year: along the rows by days, across them by weight. [kg]"""
    at_least_zero(weight_kg=weight_kg, place_d=place_d)
    light, heavy = (
        on_a_line([(MONTH_D * month, kg) for month, kg in enumerate(_amounts_kg(part, eaten), 1)], place_d)
        for part, eaten in zip(parts, _EATEN_LB, strict=True)
    )
    return light + (heavy - light) * (weight_kg - LIGHT_KG) / (HEAVY_KG - LIGHT_KG)


def _printed(parts: Sequence[Sequence[float]], unit_kg: float) -> tuple[Printed, ...]:
    """Of both cows the months of most milk, of least need, and before she calves again. unit_kg: of the amount."""
    return tuple(
        example(kg[month - 1] / unit_kg, 0.005 / unit_kg, TABLE, weight_kg=weight_kg, place_d=MONTH_D * month)
        for weight_kg, part, eaten in zip((LIGHT_KG, HEAVY_KG), parts, _EATEN_LB, strict=True)
        for month in (2, 7, 12)
        for kg in [_amounts_kg(part, eaten)]
    )


@equation(
    "place in her year", "days since she calved; once the calf is weaned, 82 + days in calf", "days",
    Source("a calf every year: 365 - 283 = 82 days", Sure.PRACTICE),
)  # fmt: skip
def place_d(days_in_milk: float, days_in_calf: float) -> float:
    """Where she stands between two calvings. [days] days_in_calf: 0 without, then she stays as just weaned. Raises
    ValueError below zero."""
    at_least_zero(days_in_milk=days_in_milk, days_in_calf=days_in_calf)
    if days_in_milk <= WEANED_D:
        return days_in_milk
    return min(max(YEAR_D - GESTATION_D + days_in_calf, WEANED_D), YEAR_D)


@equation("can eat", "a table by weight and months since calving", "kg", TABLE, *_printed(_ALL, 1.0),
          weight_kg=(350, 700))  # fmt: skip
def eats_kg(weight_kg: float, place_d: float) -> float:
    """Dry matter. [kg] place_d: days since she calved, in a year of one calf. Raises ValueError below zero."""
    return _between(weight_kg, place_d, _ALL)


@equation("TDN", "a table by weight and months since calving", "kg", TABLE, *_printed(_TDN, 1.0),
          example(16 * KG_PER_LB, 0.5 * KG_PER_LB, EARLY, weight_kg=HEAVY_KG, place_d=45),
          weight_kg=(350, 700))  # fmt: skip
def tdn_kg(weight_kg: float, place_d: float) -> float:
    """Energy, as total digestible nutrients. [kg] Raises ValueError below zero."""
    return _between(weight_kg, place_d, _TDN)


@equation("protein", "a table by weight and months since calving", "g", TABLE, *_printed(_PROTEIN, 0.001),
          example(2700 * KG_PER_LB, 0.055 * 2700 * KG_PER_LB, EARLY, weight_kg=HEAVY_KG, place_d=45),
          weight_kg=(350, 700))  # fmt: skip
def protein_g(weight_kg: float, place_d: float) -> float:
    """Crude protein. [g] Raises ValueError below zero."""
    return 1000 * _between(weight_kg, place_d, _PROTEIN)


@equation(
    "milk", "peak x weeks / 8.5 x e^(1 - weeks / 8.5); fading out in the seventh month", "kg",
    Source(f"{BOOK}, chapter 4; weaned in the seventh month, as its tables have it", Sure.MEMORY),
    *(example(lb * KG_PER_LB, 0.05 * KG_PER_LB, TABLE, place_d=MONTH_D * month, peak_kg=20 * KG_PER_LB)
      for month, lb in enumerate((16.7, 20.0, 18.0, 14.4, 10.8, 7.8), 1)),
)  # fmt: skip
def milk_kg(place_d: float, peak_kg: float) -> float:
    """What her calf sucks. [kg a day] peak_kg: in her ninth week. Raises ValueError below zero."""
    at_least_zero(place_d=place_d, peak_kg=peak_kg)
    part = place_d / 7 / 8.5
    suckled = min(max((WEANED_D - place_d) / MONTH_D, 0.0), 1.0)
    return peak_kg * part * exp(1 - part) * suckled


def _last_quarter(place_d: float) -> float:
    """0 up to the ninth month, 1 from the tenth on, when the calf in her grows bones."""
    return min(max(place_d / MONTH_D - 9, 0.0), 1.0)


@equation(
    "calcium", "(0.0154 x weight + 1.23 x milk + 5.8 in the last three months) / 0.5", "g",
    Source(f"{BOOK}, chapter 5", Sure.MEMORY), weight_kg=(350, 700),
)  # fmt: skip
def calcium_g(weight_kg: float, milk_kg: float, place_d: float) -> float:
    """Calcium. [g] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg, milk_kg=milk_kg, place_d=place_d)
    return (0.0154 * weight_kg + 1.23 * milk_kg + 5.8 * _last_quarter(place_d)) / 0.5


@equation(
    "phosphorus", "(0.016 x weight + 0.95 x milk + 3.2 in the last three months) / 0.68", "g",
    Source(f"{BOOK}, chapter 5", Sure.MEMORY), weight_kg=(350, 700),
)  # fmt: skip
def phosphorus_g(weight_kg: float, milk_kg: float, place_d: float) -> float:
    """Phosphorus. [g] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg, milk_kg=milk_kg, place_d=place_d)
    return (0.016 * weight_kg + 0.95 * milk_kg + 3.2 * _last_quarter(place_d)) / 0.68


PEAK = given(20 * KG_PER_LB, "milk at her peak", "kg", "a table", TABLE)
NO_CALF = given(0.0, "days in calf", "days", "none known")


def suckler(*, weight_kg: Value, days_in_milk: Value, days_in_calf: Value | None = None) -> Mapping[str, Value]:
    """A beef cow. days_in_milk: since she calved, also once it is weaned. days_in_calf None: not known."""
    at = place_d.of(days_in_milk=days_in_milk, days_in_calf=days_in_calf or NO_CALF)
    cow = {"weight_kg": weight_kg, "place_d": at}
    milk = milk_kg.of(place_d=at, peak_kg=PEAK)
    return {
        "tdn_kg": tdn_kg.of(**cow),
        "dry_matter_kg": eats_kg.of(**cow),
        "protein_g": protein_g.of(**cow),
        "calcium_g": calcium_g.of(milk_kg=milk, **cow),
        "phosphorus_g": phosphorus_g.of(milk_kg=milk, **cow),
        **diet.DRY,
    }
