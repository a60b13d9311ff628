"""What the keeper's own rules for a class propose for a case: it stands beside the plan, and is never applied."""

from collections.abc import Iterator
from uuid import UUID

from msgspec import Struct

from store.book.register import Register, Values
from store.book.words import Units
from store.herd.class_rule import rule_of, rules
from store.husbandry.intake import by_milk_kg, by_weight_kg
from store.husbandry.mean import mean_of
from store.husbandry.why import Value, given, total
from store.ration.parts import Case, Head, RationFeed
from store.round.rule import Rule, rule_words
from store.round.saying import exact

OWN = "your rule"


class Proposed(Struct, frozen=True):
    """So much of a feed a day by a rule, for the mean of the heads that it is made for, and what they get now. [kg]"""

    feed: RationFeed
    day_kg: Value
    now_kg: float
    rule: str
    units: Units

    @property
    def says(self) -> str:
        """`Your rule 0.25 per kg milk over 5.00 kg: 3.00 kg dairy nuts a day; now 3.38 kg.`"""
        wanted, now = exact(self.day_kg.amount, self.units), exact(self.now_kg, self.units)
        more = exact(abs(self.now_kg - self.day_kg.amount), self.units)
        beside = f", {more} {'more' if self.now_kg > self.day_kg.amount else 'less'} than the rule"
        return (
            f"Your rule {self.rule}: {wanted} {self.feed.feed.name} a day; now {now}{'' if wanted == now else beside}."
        )


def proposed_by_rule(register: Register, case: Case) -> Iterator[Proposed]:
    """One for each rule of a class that stands in the case; none where the milk or weight that it needs is unknown."""
    by_id = {each.feed.id: each for each in case.feeds}
    for row in rules(register):
        heads = [head for head in case.heads if head.animal.stage is row["stage"]]
        found = [_of(rule_of(row), head) for head in heads]
        known = [each for each in found if each is not None]
        if known and len(known) == len(heads) and row["feed_id"] in by_id:
            yield _proposed(case, by_id[row["feed_id"]], row, known)


def _proposed(case: Case, feed: RationFeed, row: Values, found: list[Value]) -> Proposed:
    words = rule_words(rule_of(row), case.units)
    now_kg = _now_kg(case, feed.feed.id)
    if len(found) == 1:
        return Proposed(feed, found[0], now_kg, words, case.units)
    together = total("by the rule, together", "kg", found)
    mean = mean_of.of("by the rule", together=together, count=given(len(found), "heads", "", "counted"))
    return Proposed(feed, mean, now_kg, words, case.units)


def _of(rule: Rule, head: Head) -> Value | None:
    milk, weight = head.milk_kg, head.weight_kg
    if rule.a_day_kg(milk.amount if milk else None, weight.amount if weight else None) is None:
        return None
    return total(f"by the rule, {head.animal.name}", "kg", _parts(rule, milk, weight))


def _parts(rule: Rule, milk_kg: Value | None, weight_kg: Value | None) -> Iterator[Value]:
    """What it gives every day, by milk, and by weight."""
    if rule.fixed_kg:
        yield given(rule.fixed_kg, "every day", "kg", OWN)
    if rule.per_kg_milk and milk_kg:
        part = given(rule.per_kg_milk, "feed for a kilogram of milk", "kg", OWN)
        above = given(rule.above_kg, "milk that asks for none", "kg", OWN)
        yield by_milk_kg.of(milk_kg_day=milk_kg, kg_per_kg=part, above_kg=above)
    if rule.percent and weight_kg:
        yield by_weight_kg.of(weight_kg=weight_kg, percent=given(rule.percent, "part of her weight", "%", OWN))


def _now_kg(case: Case, feed_id: UUID) -> float:
    return sum(kg for each in (case.now, case.besides) for (_, id_), kg in each.items() if id_ == feed_id)
