"""What the heads of a ration drink: cows in milk by what they eat and give, others as it is printed for beef cattle."""

from collections.abc import Iterator
from functools import cache

from msgspec import Struct
from msgspec.structs import replace

from store.book.words import Species, Stage
from store.herd.proposal import DRINKS
from store.husbandry.weather.water import DRINKS_L, LEAST_F, MOST_F, drinks_l, in_milk_l, on_hay_l
from store.husbandry.why import Value, given, total
from store.ration.asked import ASSUMED
from store.ration.parts import Balance, Case, Head, Part

NIGHT = given(10.0, "lowest temperature of the night", "C", "a starting value", ASSUMED)
SODIUM = given(30.0, "sodium that she eats", "g", "a starting value", ASSUMED)
LEAST_AIR, MOST_AIR = (given(air_f, "air", "F", "as it is printed") for air_f in (LEAST_F, MOST_F))
LEAST_KG, CALF_MOST_KG, YOUNG_MOST_KG = 150.0, 295.0, 430.0
"""Below the first nothing is printed; the others lie half way between the rows of 500 and 800 lb and of a dry cow."""


class Drinks(Struct, frozen=True):
    """Together in a day, from least to most. [L] milking, others: whether there are such: they are
    told of other air.
    """

    least: Value
    most: Value
    milking: bool
    others: bool


def drinks(case: Case, balance: Balance) -> Drinks | None:
    """Of all heads, in the mean of which so much is eaten. None: of one of them it is not known, or it is no cattle."""
    found = [_of(head, balance) for head in case.heads]
    known = [each for each in found if each]
    if not known or len(known) < len(found):
        return None
    least, most = known[0] if len(known) == 1 else tuple(total("water", "L", each) for each in zip(*known, strict=True))
    milking = [head.animal.stage is Stage.IN_MILK for head in case.heads]
    least, most = replace(least, name="water a day, at least"), replace(most, name="water a day, at most")
    return Drinks(least, most, any(milking), not all(milking))


def _of(head: Head, balance: Balance) -> tuple[Value, Value] | None:
    if head.animal.species is not Species.CATTLE:
        return None
    if head.animal.stage is Stage.IN_MILK:
        return _in_milk(head, balance)
    row = _row(head)
    return _by_row(row) if row else None


def _in_milk(head: Head, balance: Balance) -> tuple[Value, Value] | None:
    """By two equations, the smaller first."""
    eaten = next((line.has for line in balance.lines if line.need.part is Part.DRY_MATTER), None)
    if not (eaten and eaten.amount and head.milk_kg):
        return None
    of = {"dry_matter_kg": eaten, "milk_kg": head.milk_kg}
    name = f"water, {head.animal.name}"
    found = (in_milk_l.of(name, sodium_g=SODIUM, low_c=NIGHT, **of), on_hay_l.of(name, **of))
    least, most = sorted(found, key=lambda each: each.amount)
    return least, most


def _row(head: Head) -> str:
    """The printed row that it drinks by; empty: there is none of so light a one."""
    row = DRINKS[head.animal.stage]
    if row not in ("calf", "growing"):
        return row
    kg = head.weight_kg.amount if head.weight_kg else 0.0
    if kg < LEAST_KG:
        return ""
    return "calf" if kg < CALF_MOST_KG else "growing" if kg < YOUNG_MOST_KG else "dry"


@cache
def _by_row(row: str) -> tuple[Value, Value]:
    at = dict(zip(("at_70", "at_80", "at_90"), _printed(row), strict=True))
    return drinks_l.of(f"water, {row}", air_f=LEAST_AIR, **at), drinks_l.of(f"water, {row}", air_f=MOST_AIR, **at)


def _printed(row: str) -> Iterator[Value]:
    for litres, air in zip(DRINKS_L[row], ("70 F", "80 F", "90 F"), strict=True):
        yield given(litres, f"at {air}, a head", "L", "a table", drinks_l.source)
