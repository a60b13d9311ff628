"""What a weight says: by the tape about how much, what was gained since the last one, and where she should stand."""

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any

from store.book.words import Species, Stage, Units
from store.herd.bulling import short_day
from store.husbandry.body.girth import spread_kg, weight_by_girth_kg
from store.husbandry.body.growth import (
    WANTED_PERCENT,
    gain_kg_day,
    holstein_heifer_kg,
    part_of_mature_percent,
    wanted_kg,
)
from store.husbandry.dates.ages import days_between, months
from store.husbandry.why import given
from store.round.saying import exact, weight

GAIN_LEAST_DAYS = gain_kg_day.ranges["days"][0]


def by_tape(girth_cm: float, units: Units) -> Iterator[str]:
    """`by the tape about 456 kg, 411 to 502 kg`, and why that is unsure."""
    found = weight_by_girth_kg.of(girth_cm=given(round(girth_cm, 1), "her girth", "cm", "measured"))
    least, most = spread_kg(found.amount)
    yield f"by the tape about {weight(found.amount, units)}, between {weight(least, units)} and {weight(most, units)}"
    yield from found.doubts()


def gained(before: Mapping[str, Any], before_on: date, now_kg: float, today: date, units: Units) -> Iterator[str]:
    """`0.72 kg a day more since 5 Feb`; nothing where that is too short ago to say."""
    days = (today - before_on).days
    if before.get("weight_kg") and days >= GAIN_LEAST_DAYS:
        gain = gain_kg_day(before["weight_kg"], now_kg, days)
        side = "more" if gain >= 0 else "less"
        yield f"{exact(abs(gain), units)} a day {side} since {short_day(before_on)}"


def age_of_growing(row: Mapping[str, Any], day: date) -> float | None:
    """How old a heifer or a calf is on a day; None for others, and where its birth is not known. [months]"""
    grows = row["stage"] in (Stage.CALF, Stage.HEIFER) and row["species"] is Species.CATTLE
    born: date | None = row["born_on"]
    return months(days_between(born, day)) if grows and born and born <= day else None


def on_her_line(age: float, kg: float, grown_kg: float | None, breed: str, units: Units) -> Iterator[str]:
    """Where one that grows stands: of her grown weight, where that is set; and as Holstein heifers, if she is one."""
    if grown_kg and WANTED_PERCENT[0][0] <= age <= WANTED_PERCENT[-1][0]:
        yield (f"{part_of_mature_percent(kg, grown_kg):.0f} % of her grown weight; at {age:.0f} months "
               f"{weight(wanted_kg(age, grown_kg), units)} are wanted, if she is to calve at two years")  # fmt: skip
    least, most = holstein_heifer_kg.ranges["age_months"]
    if "holstein" in breed.lower() and least <= age <= most:
        yield f"Holstein heifers of {age:.0f} months weigh {weight(holstein_heifer_kg(age), units)} in the mean"
