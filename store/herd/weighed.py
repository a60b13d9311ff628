"""Whether a weight can be hers: by what she weighed before, by her girth, or by what is usual of her breed."""

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from store.book.words import Species, Stage, Units
from store.husbandry.body.girth import weight_by_girth_kg
from store.husbandry.breeds import ANY, breed_of
from store.husbandry.slip import meant_kg, slip
from store.round.measured import IF_RIGHT
from store.round.saying import exact

GROWING = (Stage.CALF, Stage.HEIFER, Stage.STEER, Stage.BULL, Stage.OTHER)
GAIN_MOST_KG_DAY = 2.0
"""No growing animal gains more for long. [kg a day] Common practice."""
LEAST_PART, MOST_PART = 0.75, 1.25
"""Of the weight before; what is in her rumen, a calving and a hard winter make less than that. Common practice."""
USUAL_PARTS = (0.55, 1.8)
"""Of a usual weight: more and less than this is asked about. Common practice."""


class Expected(Struct, frozen=True):
    """About what she should weigh, in words whose it is, and between what it is not asked about. [kg]"""

    kg: float
    whose: str
    least_kg: float
    most_kg: float


def by_before(before_kg: float, days: float, stage: Stage) -> Expected:
    """By her last weight, so many days ago."""
    grown_kg = GAIN_MOST_KG_DAY * days if stage in GROWING else 0.0
    return Expected(before_kg, "before", LEAST_PART * before_kg, MOST_PART * before_kg + grown_kg)


def by_girth(girth_cm: float | None) -> Expected | None:
    """By the tape, where that is made for her size."""
    least_cm, most_cm = weight_by_girth_kg.ranges["girth_cm"]
    if girth_cm is None or not least_cm <= girth_cm <= most_cm:
        return None
    return _usual(weight_by_girth_kg(girth_cm), "by her girth")


def by_breed(row: Mapping[str, Any], breed: str) -> Expected | None:
    """What grown cattle of her breed weigh; None for one that grows, and for other animals."""
    if row["stage"] in GROWING or row["species"] is not Species.CATTLE:
        return None
    return _usual((breed_of(breed) or ANY).mature_kg, "usual")


def _usual(kg: float, whose: str) -> Expected:
    return Expected(kg, whose, USUAL_PARTS[0] * kg, USUAL_PARTS[1] * kg)


def doubt(found_kg: float, expected: Expected, units: Units) -> str:
    """What to ask where a weight cannot well be hers; empty where it can.

    `1350.00 kg; before 612.00 kg. Were pounds typed as kilograms? That would be 612.35 kg.`
    """
    if expected.least_kg <= found_kg <= expected.most_kg:
        return ""
    likely = slip(found_kg, expected.kg)
    named = f" Were {likely}? That would be {exact(meant_kg(found_kg, likely), units)}." if likely else ""
    return f"That is {exact(found_kg, units)}; {expected.whose} {exact(expected.kg, units)}.{named} {IF_RIGHT}"
