"""What stands in for a soaked feed that is thrown out: another feed, at the farm's ratio, at most so much a head."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from store.book.drafts import RowDraft
from store.book.register import Register
from store.book.snapshot import Snapshot
from store.herd.answers import a_number, maybe_weight
from store.herd.feed import FeedSheet, feeds_in_use
from store.herd.sheet import Answers, Choices, Question, pick
from store.husbandry.soak import replaced
from store.round.bucket import needed, takers
from store.round.saying import bare, exact

NOTHING = "nothing"
MOST_KG = (0.01, 50.0)
"""A cap for one head and feeding lies between these. [kg] Common practice."""


class SubstituteSheet(FeedSheet):
    """One soaked feed's rule."""

    @property
    def title(self) -> str:
        """Which feed."""
        return f"{self.row['name']}  what is given instead where a batch is thrown out. Your own figures, or your vet's"

    def questions(self) -> tuple[Question, ...]:
        """Which feed, how much of it, and no more than what."""
        rule = self._rule()
        most_kg = rule.get("most_kg")
        return (
            pick("by_id", "instead of it", self._feeds(), rule.get("by_id"), "not soaked itself; nothing ends it"),
            Question("ratio", "so much of it for 1 dry", a_number(0.01, 100, "kg or lb for 1"),
                     "by weight: 0.8 is 0.8 kg for 1 kg, or 0.8 lb for 1 lb",
                     f"{rule.get('ratio', 1):g}", was=rule.get("ratio")),
            Question("most_kg", "at most, a head", maybe_weight(self.units, *MOST_KG),
                     "in one feeding; what that leaves is made up by hay. Empty: no cap",
                     "" if most_kg is None else exact(most_kg, self.units), was=most_kg),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The rule; none where there was none and nothing is to stand in."""
        if answers["by_id"] is None and not self._rule():
            return []
        values = {name: answers[name] for name in ("by_id", "ratio", "most_kg")}
        return self.dated("substitute", answers, {"feed_id": self.id_}, values)

    def told(self, answers: Answers) -> str:
        """What stands in now."""
        if answers["by_id"] is None:
            return "nothing stands in for it"
        return f"{self.register.name('feed_as', answers['by_id'])} stands in for it, {answers['ratio']:g} for 1 dry"

    def _feeds(self) -> Choices:
        found = (row for row in feeds_in_use(self.register) if not row["soaked"] and row["feed_id"] != self.id_)
        return ((NOTHING, None), *((row["name"], row["feed_id"]) for row in found))

    def _rule(self) -> Mapping[str, Any]:
        return self.register.get("substitute", self.id_) or {}


def substitute_words(register: Register, feed_id: Any) -> str:
    """What stands in for a feed, in a few words: `dairy nuts, 0.80 for 1`."""
    rule = register.get("substitute", feed_id)
    if rule is None or rule["by_id"] is None:
        return f"{NOTHING} yet"
    return f"{register.name('feed_as', rule['by_id'])}, {bare(rule['ratio'])} for 1"


def replacements(before: Snapshot, after: Snapshot) -> Iterator[str]:
    """In words, what all heads of a round would get for a soaked feed, where another rule counts than before."""
    units = after.farm.units
    for feed, due_kg in needed(after, after.portions):
        rule = after.substitutes.get(feed.id)
        if rule == before.substitutes.get(feed.id):
            continue
        thrown_out = f"{feed.name}, {exact(due_kg, units)} thrown out"
        if rule is None:
            yield f"{thrown_out}: nothing stands in for it"
            continue
        plans = [(each, heads) for each, heads in takers(after, after.portions) if each.feed.id == feed.id]
        each_of = [replaced(each.due_kg * heads, rule.ratio, rule.most_kg, heads) for each, heads in plans]
        kg, rest_kg = sum(each.kg for each in each_of), sum(each.rest_kg for each in each_of)
        hay = f", and {exact(rest_kg, units)} hay" if rest_kg else ""
        yield f"{thrown_out}: {exact(kg, units)} {after.feeds[rule.by_id].name}{hay}"
