"""How long a feed soaks, and in how much water: the farm's own rule for cold, mild and hot air."""

from collections.abc import Sequence

from store.book.drafts import RowDraft
from store.book.words import Air, Water
from store.herd.answers import a_number
from store.herd.feed import FeedSheet
from store.herd.sheet import Answers, Choices, Question, Wrong, pick

WATERS: Choices = tuple((water.value, water) for water in Water)
MOST_H = {Air.COLD: 16.0, Air.MILD: 12.0, Air.HOT: 4.0}
"""Where the farm has none yet, from then on it is thrown out. A judgement, on the strict side of what is printed:
articles on beet pulp give 2 h in hot damp weather and 12 to 48 h when it is cool. [h]"""
LEAST_H, WATER_PER_KG = 4.0, 2.0
"""Starting values only: pellets in cold water take hours, and twice their weight of water. From memory. [h; kg a kg]"""


class SoakingSheet(FeedSheet):
    """One feed's rule."""

    @property
    def title(self) -> str:
        """Which feed."""
        return f"{self.row['name']}  how it soaks. Starting values stand there: your own and the tag's count"

    def questions(self) -> tuple[Question, ...]:
        """Water, the least time, and the longest in each air."""
        rules = {air: self.register.get("soak_rule", self.feed_id, air) or {} for air in Air}
        first = rules[Air.MILD]
        most = ((air, rules[air].get("most_h", MOST_H[air])) for air in Air)
        return (
            pick("water", "in water that is", WATERS, first.get("water", Water.COLD)),
            Question("water_per_kg", "kg of water to a kg dry", a_number(0, 20, "kg"), "weigh it once",
                     f"{first.get('water_per_kg', WATER_PER_KG):g}"),
            Question("least_h", "soft through after", a_number(0, 72, "hours"), "hours",
                     f"{first.get('least_h', LEAST_H):g}"),
            *(Question(air, f"thrown out after, {air} air", a_number(0, 72, "hours"), "hours", f"{hours:g}")
              for air, hours in most),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """A rule for each air."""
        early = next((air for air in Air if answers[air] < answers["least_h"]), None)
        if early:
            raise Wrong(
                early, f"{answers[early]:g} hours is before it is soft ({answers['least_h']:g}). Type more hours."
            )
        same = {each: answers[each] for each in ("water", "water_per_kg", "least_h")}
        drafts = (
            self.dated("soak_rule", answers, {"feed_id": self.feed_id, "air": air}, same | {"most_h": answers[air]})
            for air in Air
        )
        return [draft for each in drafts for draft in each]

    def told(self, answers: Answers) -> str:  # noqa: ARG002
        """That its rule changed."""
        return "how it soaks"
