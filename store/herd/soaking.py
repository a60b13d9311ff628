"""How long a feed soaks, and in how much water: the farm's own rule for cold, mild and hot air."""

from collections.abc import Mapping, Sequence
from typing import Any

from store.book.drafts import RowDraft
from store.book.words import Air, Water
from store.herd.answers import a_number
from store.herd.feed import FeedSheet
from store.herd.sheet import Answers, Choices, Question, Wrong, pick

WATERS: Choices = tuple((water.value, water) for water in Water)
MOST_H = {Air.COLD: 12.0, Air.MILD: 12.0, Air.HOT: 2.0}
"""Where the farm has none yet, from then on it is thrown out: the strictest that is printed of beet pulp. [h]
Fed within 12 h at most, and in hot humid weather it can ferment within 2 h:
pressreader.com/usa/equus/20150201/281960311136811. Another article prints more, 12 h when it is hot and humid and up to
48 h in winter: ntro.it.com, how-long-is-beet-pulp-good-for-once-soaked. Of cattle no figure was found."""
LEAST_H, WATER_PER_KG = {Air.COLD: 4.0, Air.MILD: 4.0, Air.HOT: 1.0}, 2.0
"""Starting values only: pellets in cold water take hours, in warm water one or two, and twice their weight of water.
In hot air only warm water has them soft before they spoil. From memory. [h; kg a kg]"""

TIMES = (("least", "soft through"), ("most", "thrown out"))


class SoakingSheet(FeedSheet):
    """One feed's rule."""

    @property
    def title(self) -> str:
        """Which feed."""
        return f"{self.row['name']}  how it soaks. Starting values stand there: your own and the tag's count"

    def questions(self) -> tuple[Question, ...]:
        """Water, then the least and the longest time in each air."""
        first = self._rule(Air.MILD)
        return (
            pick("water", "in water that is", WATERS, first.get("water", Water.COLD)),
            Question("water_per_kg", "kg of water to a kg dry", a_number(0, 20, "kg"), "weigh it once",
                     f"{first.get('water_per_kg', WATER_PER_KG):g}", was=first.get("water_per_kg")),
            *(self._asked(air, which, words) for air in Air for which, words in TIMES),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """A rule for each air."""
        for air in Air:
            if answers[f"most {air}"] < answers[f"least {air}"]:
                least, most = (f"{answers[f'{each} {air}']:g}" for each in ("least", "most"))
                raise Wrong(f"most {air}", f"{most} hours is before it is soft ({least}). Type more hours.")
        return [row for air in Air for row in self._of(air, answers)]

    def _of(self, air: Air, answers: Answers) -> Sequence[RowDraft]:
        """What is asked once holds for every air; left as it stands, each keeps its own."""
        first = self._rule(Air.MILD)
        times = {f"{each}_h": answers[f"{each} {air}"] for each in ("least", "most")}
        both = {each: answers[each] for each in ("water", "water_per_kg") if answers[each] != first.get(each)}
        every = {} if self._rule(air) else {each: answers[each] for each in ("water", "water_per_kg")}
        return self.dated("soak_rule", answers, {"feed_id": self.id_, "air": air}, every | both | times)

    def _asked(self, air: Air, which: str, words: str) -> Question:
        first = f"{self._hours(air, f'{which}_h'):g}"
        hint = "hours; in hot air only warm water is quick enough" if air is Air.HOT else "hours"
        return Question(f"{which} {air}", f"{air} air: {words} after", a_number(0, 72, "hours"), hint, first)

    def _rule(self, air: Air) -> Mapping[str, Any]:
        return self.register.get("soak_rule", self.id_, air) or {}

    def _hours(self, air: Air, name: str) -> float:
        return float(self._rule(air).get(name, (LEAST_H if name == "least_h" else MOST_H)[air]))

    def told(self, answers: Answers) -> str:  # noqa: ARG002
        """That its rule changed."""
        return "how it soaks"
