"""The farm's own limits of a feed for one head: whether it is forage, the most at once, a day, and in one step."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from store.book.drafts import RowDraft
from store.book.records.feeding import MEAL_MOST_KG
from store.herd.answers import a_count, a_number, maybe, maybe_weight
from store.herd.feed import FeedSheet
from store.herd.over_limit import plans_over
from store.herd.sheet import Answers, Choices, Question, Wrong, pick
from store.round.confirm import Hand
from store.round.saying import exact

FORAGE: Choices = (("as the table or its bales say", None), ("yes", True), ("no", False))
STEP_LEAST_KG, STEP_DAYS_MOST = 0.001, 30
WEIGHTS = {"most_meal_kg": "most in a meal", "most_day_kg": "most in a day", "step_kg": "most more in one step"}
WHAT = ("forage", "most_meal_kg", "most_day_kg", "share_percent", "step_kg", "step_days")


class FeedLimitSheet(FeedSheet):
    """One feed's limits."""

    @property
    def title(self) -> str:
        """Which feed."""
        return f"{self.row['name']}  its limits for one head: the label's, your vet's, or yours. Empty: no own limit"

    def questions(self) -> tuple[Question, ...]:
        """Forage, then the limits."""
        share, days = self._limit.get("share_percent"), self._limit.get("step_days")
        lies = "dry, before it is soaked" if self.row.get("soaked") else "as it lies"
        return (
            pick("forage", "counts as forage", FORAGE, self._limit.get("forage")),
            self._weight("most_meal_kg", lies),
            self._weight("most_day_kg", "all meals together"),
            Question("share_percent", "most of the ration", maybe(a_number(0, 100, "%")), "% of the day's dry matter",
                     "" if share is None else f"{share:g}", was=share),
            self._weight("step_kg", "in one meal, when a change goes up", STEP_LEAST_KG),
            Question("step_days", "days between steps", maybe(a_count(1, STEP_DAYS_MOST, "days")),
                     "as 3; empty: as the farm has set it", "" if days is None else str(days)),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The limits, where there are some or were. Raises Wrong for a day that holds less than a meal."""
        meal, day = answers["most_meal_kg"], answers["most_day_kg"]
        if meal is not None and day is not None and day < meal:
            raise Wrong("most_day_kg", f"A day would hold less than a meal of {exact(meal, self.units)}. Type more.")
        limits = {name: answers[name] for name in WHAT}
        if not self._limit and all(value is None for value in limits.values()):
            return []
        return self.dated("feed_limit", answers, {"feed_id": self.id_}, limits)

    def told(self, answers: Answers) -> str:
        """`most in a meal 2.00 kg, before none`."""
        return f"limits: {'; '.join(self._changes(answers)) or 'as before'}"

    def says(self, answers: Answers, hand: Hand) -> Sequence[str]:  # noqa: ARG002
        """The plans that are over it."""
        begins = answers[self.FROM] or self.register.at
        return list(plans_over(self.register, self.id_, answers, begins)) if self.id_ else []

    def _changes(self, answers: Answers) -> Iterator[str]:
        for name in WHAT:
            before, now = self._limit.get(name), answers[name]
            if now != before:
                yield f"{self._said(name, now)}{'' if before is None else f', before {self._value(name, before)}'}"

    def _said(self, name: str, value: Any) -> str:
        words = WEIGHTS | {"forage": "forage", "share_percent": "most of the ration", "step_days": "between steps"}
        return f"{words[name]} {self._value(name, value)}"

    def _value(self, name: str, value: Any) -> str:
        if value is None:
            return "as the table says" if name == "forage" else "none"
        if name == "forage":
            return "yes" if value else "no"
        return (
            exact(value, self.units) if name in WEIGHTS else f"{value:g} {'%' if name == 'share_percent' else 'days'}"
        )

    def _weight(self, name: str, hint: str, least_kg: float = 0.0) -> Question:
        kg = self._limit.get(name)
        read = maybe_weight(self.units, least_kg, MEAL_MOST_KG)
        return Question(name, WEIGHTS[name], read, hint, "" if kg is None else exact(kg, self.units), was=kg)

    @property
    def _limit(self) -> Mapping[str, Any]:
        return self.register.get("feed_limit", self.id_) or {}
