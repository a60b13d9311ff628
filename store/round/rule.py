"""The keeper's own rule for a class of animal: `0.25 per kg milk over 5 kg`, `2 kg`, `1.5 % of weight`, added by `+`.

What it gives is proposed beside the plan and never applied.
"""

import re
from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import asdict

from store.book.words import Units
from store.husbandry.intake import by_milk_kg, by_weight_kg
from store.husbandry.units import KG, LB, spoken
from store.round.amount import Unreadable, number_and_unit
from store.round.saying import exact

HOW = "Type 0.25 per kg milk over 5 kg, 2 kg, or 1.5 % of weight."
_BY_MILK = re.compile(
    r"^(?P<part>.+?)\s+(?:a|per)\s+(?P<unit>kg|lb)\s+(?:of\s+)?milk(?:\s+over\s+(?P<above>.+))?$", re.IGNORECASE
)
_BY_WEIGHT = re.compile(r"^(?P<percent>.+?)\s*%\s*of\s+(?:body\s*)?weight$", re.IGNORECASE)


class Rule(Struct, frozen=True):
    """So much a day: fixed, for each kilogram of milk above some, or of the body weight. [kg, %]"""

    fixed_kg: float = 0.0
    per_kg_milk: float = 0.0
    above_kg: float = 0.0
    percent: float = 0.0

    def a_day_kg(self, milk_kg_day: float | None, weight_kg: float | None) -> float | None:
        """What it proposes for an animal a day. [kg] None: her milk or weight, which it needs, is not known."""
        if (self.per_kg_milk and milk_kg_day is None) or (self.percent and weight_kg is None):
            return None
        by_milk = by_milk_kg(milk_kg_day or 0.0, self.per_kg_milk, self.above_kg)
        return self.fixed_kg + by_milk + by_weight_kg(weight_kg or 0.0, self.percent)


def rule(typed: str, units: Units) -> Rule:
    """A typed rule. A bare number is the farm's own weight. Raises Unreadable, also where one kind is told twice."""
    parts = [_part(each.strip(), units) for each in typed.split("+")]
    told = [{name: value for name, value in asdict(part).items() if value} for part in parts]
    together = {name: value for part in told for name, value in part.items()}
    if len(together) != sum(map(len, told)):
        raise Unreadable(f"«{typed.strip()}» tells one thing twice. {HOW}")
    return Rule(**together)


def rule_words(found: Rule, units: Units) -> str:
    """A rule as it can be typed again: `2.00 kg + 0.25 per kg milk over 5.00 kg`; empty where it gives nothing."""
    return " + ".join(_words(found, units))


def _words(found: Rule, units: Units) -> Iterator[str]:
    if found.fixed_kg:
        yield exact(found.fixed_kg, units)
    if found.per_kg_milk:
        over = f" over {exact(found.above_kg, units)}" if found.above_kg else ""
        yield f"{found.per_kg_milk:g} per {'lb' if units is Units.US else 'kg'} milk{over}"
    if found.percent:
        yield f"{found.percent:g} % of weight"


def _part(typed: str, units: Units) -> Rule:
    by_milk, by_weight = _BY_MILK.match(typed), _BY_WEIGHT.match(typed)
    if by_weight:
        percent, word = number_and_unit(by_weight["percent"])
        if word or percent > 100:
            raise Unreadable(f"«{typed}» is no rule. {HOW}")
        return Rule(percent=percent)
    if by_milk:
        milk_kg = LB.size if by_milk["unit"].lower() == "lb" else KG.size
        alike = Units.US if milk_kg == LB.size else Units.METRIC  # 0.25 per lb is 0.25 lb
        above = by_milk["above"]
        return Rule(per_kg_milk=_kg(by_milk["part"], alike) / milk_kg, above_kg=_kg(above, units) if above else 0.0)
    return Rule(fixed_kg=_kg(typed, units))


def _kg(text: str, units: Units) -> float:
    number, word = number_and_unit(text)
    unit = spoken(word, american=units is Units.US) if word else (LB if units is Units.US else KG)
    if unit is None or unit.dimension != "weight":
        raise Unreadable(f"«{text.strip()}» is no weight. {HOW}")
    return number * unit.size
