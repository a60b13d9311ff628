"""The keeper's own rule for a class: so much of a feed a day, by milk, by weight, or fixed. It is only proposed."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any
from uuid import UUID

from store.book.drafts import RowDraft, Subject
from store.book.records.feeding import MEAL_MOST_KG
from store.book.register import Register, Values
from store.book.words import Stage, Units
from store.herd.animal import stages
from store.herd.feed import feeds_in_use
from store.herd.sheet import Answers, Question, Wrong, YardSheet, pick
from store.round.amount import Unreadable
from store.round.dialect import said
from store.round.rule import HOW, Rule, rule, rule_words

PER_KG_MILK_MOST = 5.0
"""More feed for a kilogram of milk is a slip of the keys. [kg] Common practice."""


def rule_of(row: Values | None) -> Rule:
    """The rule that a row holds; one that gives nothing where there is none."""
    if row is None:
        return Rule()
    return Rule(row["fixed_kg"], row["per_kg_milk"], row["above_kg"], row["weight_percent"])


def rules(register: Register) -> list[Values]:
    """The rows of the rules that give something, by class and feed."""
    found = (row for row in register.all("class_rule") if rule_of(row) != Rule())
    return sorted(found, key=lambda row: (list(Stage).index(row["stage"]), register.name("feed_as", row["feed_id"])))


class ClassRuleSheet(YardSheet):
    """A new rule, or one that is there."""

    def __init__(self, register: Register, stage: Stage | None = None, feed_id: UUID | None = None) -> None:
        """Of a class and a feed; without them, a new one."""
        super().__init__(register)
        self.stage, self.feed_id = stage, feed_id

    @property
    def title(self) -> str:
        """Of whom."""
        if self.stage is None:
            return "A RULE FOR A CLASS  so much of a feed a day. It is proposed beside the plans, and changes none"
        return f"RULE FOR {self._class(self.stage)}  {self.register.name('feed_as', self.feed_id)} a day; empty ends it"

    def subject(self) -> Subject:
        """The feed."""
        return Subject(feed_id=self.feed_id)

    def questions(self) -> tuple[Question, ...]:
        """Which class and feed, if it is new; then the rule."""
        now = rule_of(self.register.get("class_rule", self.stage, self.feed_id))
        feeds = tuple((row["name"], row["feed_id"]) for row in feeds_in_use(self.register))
        new = (pick("stage", "class", stages(self.register)), pick("feed_id", "feed", feeds))
        hint = f"{HOW.removeprefix('Type ').rstrip('.')}; joined by +"
        asked = Question("rule", "so much a day", _maybe_rule(self.units), hint, rule_words(now, self.units), was=now)
        return (*(() if self.stage else new), asked, self.question_from())

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The rule; none where there was none and none is typed."""
        found = answers["rule"]
        self._refuse(found)
        same = self._same(answers)
        if found == Rule() and self.register.get("class_rule", *same.values()) is None:
            return []
        values = {"fixed_kg": found.fixed_kg, "per_kg_milk": found.per_kg_milk, "above_kg": found.above_kg,
                  "weight_percent": found.percent}  # fmt: skip
        return self.dated("class_rule", answers, same, values)

    def told(self, answers: Answers) -> str:
        """`in milk, dairy nuts a day: 0.25 per kg milk over 5.00 kg`."""
        same = self._same(answers)
        feed = self.register.name("feed_as", same["feed_id"])
        return f"{self._class(same['stage'])}, {feed} a day: {rule_words(answers['rule'], self.units) or 'no rule'}"

    def _same(self, answers: Answers) -> Mapping[str, Any]:
        return {"stage": self.stage or answers["stage"], "feed_id": self.feed_id or answers["feed_id"]}

    def _class(self, stage: Stage) -> str:
        return said(stage.value, self.register.farm.dialect)

    def _refuse(self, found: Rule) -> None:
        if max(found.fixed_kg, found.above_kg) > MEAL_MOST_KG:
            raise Wrong("rule", f"That is more than {MEAL_MOST_KG:g} kg. Look at the figures again.")
        if found.per_kg_milk > PER_KG_MILK_MOST:
            raise Wrong("rule", f"More than {PER_KG_MILK_MOST:g} for each of milk is more feed than milk. Look again.")


def _maybe_rule(units: Units) -> Callable[[str], Rule]:
    def read(text: str) -> Rule:
        found = rule(text, units) if text.strip() else Rule()
        if text.strip() and found == Rule():
            raise Unreadable("That gives nothing. Type an amount, or leave it empty for no rule.")
        return found

    return read
