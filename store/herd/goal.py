"""What an animal is fed for: a condition, a gain, forage alone."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from store.book.drafts import RowDraft
from store.book.words import EVERY_MOST_DAYS, GAIN_MOST_KG_DAY, Stage
from store.herd.animal import OneAnimal
from store.herd.answers import a_count, maybe, maybe_weight
from store.herd.condition import maybe_points, points_say, points_words, scale_of
from store.herd.sheet import Answers, Question, yes_or_no
from store.round.confirm import Hand
from store.round.saying import exact

GROWN_LEAST_KG = 20.0
"""No grown animal of a yard, a small goat neither, weighs less. Common practice. [kg]"""
WHAT = ("condition", "gain_kg_day", "mature_kg", "forage_only", "score_every_days")


class GoalSheet(OneAnimal):
    """Her feeding goal; all of it may be left out."""

    @property
    def title(self) -> str:
        """Whose."""
        return f"{self.name} IS FED FOR  what is wanted. Everything may be left empty"

    def questions(self) -> tuple[Question, ...]:
        """Condition, growth, forage."""
        goal, most = self._goal, scale_of(self._stage)[1]
        gain, grown, days = goal.get("gain_kg_day"), goal.get("mature_kg"), goal.get("score_every_days")
        points = goal.get("condition")
        return (
            Question("condition", "condition wanted", maybe_points(self._stage), f"of {most:g}, as her class is scored",
                     "" if points is None else f"{points:g}", was=points),
            Question("gain_kg_day", "gain wanted a day", maybe_weight(self.units, 0.0, GAIN_MOST_KG_DAY),
                     "of one that grows", "" if gain is None else exact(gain, self.units), was=gain),
            Question("mature_kg", "weight when grown", maybe_weight(self.units, GROWN_LEAST_KG),
                     "as the dam weighs; for what grows", "" if grown is None else exact(grown, self.units), was=grown),
            yes_or_no("forage_only", "forage alone", first=goal.get("forage_only", False),
                      hint="no grain while condition is held"),
            Question("score_every_days", "scored every", maybe(a_count(1, EVERY_MOST_DAYS, "days")),
                     "days, as 30; the looks ask for it", "" if days is None else str(days)),
            self.question_from(),
            *self.question_coming(*(self.from_words(row) for row in self.coming("feeding_goal", self._same))),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The goal, where there is one or was one."""
        wanted = {name: answers[name] for name in WHAT}
        if not self._goal and not any(wanted.values()):
            return []
        return self.dated("feeding_goal", answers, self._same, wanted)

    def told(self, answers: Answers) -> str:
        """`fed for condition 3.25 of 5, forage alone`."""
        return f"fed for {', '.join(self._words(answers)) or 'nothing more than she needs'}"

    def says(self, answers: Answers, hand: Hand) -> Sequence[str]:  # noqa: ARG002
        """What is usual of her class, and what a point is worth."""
        return list(points_say(self._stage, self.units)) if answers["condition"] is not None else []

    def _words(self, answers: Answers) -> Iterator[str]:
        if answers["condition"] is not None:
            yield f"condition {points_words(answers['condition'], self._stage)}"
        if answers["gain_kg_day"] is not None:
            yield f"a gain of {exact(answers['gain_kg_day'], self.units)} a day"
        if answers["mature_kg"] is not None:
            yield f"a grown weight of {exact(answers['mature_kg'], self.units)}"
        if answers["forage_only"]:
            yield "forage alone while she holds condition"
        if answers["score_every_days"]:
            yield f"scored every {answers['score_every_days']} days"

    @property
    def _stage(self) -> Stage:
        return Stage(self.row["stage"])

    @property
    def _goal(self) -> Mapping[str, Any]:
        return self.register.get("feeding_goal", self.animal_id) or {}

    @property
    def _same(self) -> Mapping[str, Any]:
        return {"animal_id": self.animal_id}
