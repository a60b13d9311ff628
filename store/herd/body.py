"""What an animal weighs, or measures around the heart."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import datetime
from typing import Any

from store.book.drafts import RowDraft
from store.book.turn import from_wall, local
from store.book.words import Species, Stage, Units
from store.herd.animal import OneAnimal
from store.herd.answers import maybe_girth, maybe_weight
from store.herd.grown import age_of_growing, by_tape, gained, on_her_line
from store.herd.milk_test import has_been
from store.herd.sheet import Answers, Question, Wrong
from store.herd.weighed import Expected, Weight, agrees, by_girth, doubt
from store.herd.weights import Weights, weights_of
from store.husbandry.units import CM_PER_INCH
from store.round.confirm import Hand
from store.round.measured import SURE
from store.round.saying import exact


class BodySheet(OneAnimal):
    """Weighed, or taped."""

    @property
    def title(self) -> str:
        """Which animal."""
        return f"{self.name}  weight, or heart girth from the tape"

    def questions(self) -> tuple[Question, ...]:
        """One of the two is enough."""
        kg, cm = self._before.get("weight_kg"), self._before.get("girth_cm")
        girth = "" if cm is None else f"{cm / CM_PER_INCH:.1f}" if self.units is Units.US else f"{cm:g}"
        return (
            Question("weight_kg", "weight", self._weight, "on a scale, as 612; may be left empty",
                     exact(kg, self.units) if kg else "", was=(kg, True) if kg else None),
            Question("girth_cm", "heart girth", maybe_girth(self.units), "behind the elbows, tape snug", girth, was=cm),
            Question(self.FROM, "found on", self._day, "now, or a day that has been, as 5 Mar", "now"),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """What was found. Raises Wrong where nothing was, and where the weight can hardly be hers."""
        found = {"weight_kg": answers["weight_kg"][0], "girth_cm": answers["girth_cm"]}
        if not any(found.values()):
            raise Wrong("weight_kg", "Neither weight nor girth is typed. Type one of them, or Esc goes back.")
        self._ask(answers)
        begins = answers[self.FROM]
        if begins is None and all(self._before.get(name) == value for name, value in found.items()):
            return []
        return [RowDraft("body", {"animal_id": self.animal_id, **found, **({"begins_at": begins} if begins else {})})]

    def told(self, answers: Answers) -> str:
        """What was found."""
        kg, cm = answers["weight_kg"][0], answers["girth_cm"]
        found = (f"weighs {exact(kg, self.units)}" if kg else "", f"girth {self._girth_words(cm)}" if cm else "")
        return ", ".join(filter(None, found))

    def says(self, answers: Answers, hand: Hand) -> Sequence[str]:  # noqa: ARG002
        """What the tape says of her weight, what she gained, and where she should stand."""
        return list(self._says(answers))

    def _says(self, answers: Answers) -> Iterator[str]:
        kg, cm, before = answers["weight_kg"][0], answers["girth_cm"], self._before
        day = local(answers[self.FROM] or self.register.at, self.zone).date()
        if cm and not kg and self.row["species"] is Species.CATTLE:
            yield from by_tape(cm, self.units)
        doubted = self._weights.scaled.doubted
        if kg and doubted and not self._bears_out(kg):
            yield f"{exact(doubted.kg, self.units)} before can hardly have been right; it is left out from now on"
        elif kg and before and kg != before["weight_kg"]:
            yield from gained(before, local(before["begins_at"], self.zone).date(), kg, day, self.units)
        age = age_of_growing(self.row, day)
        if kg and age is not None:
            goal = self.register.get("feeding_goal", self.animal_id) or {}
            yield from on_her_line(age, kg, goal.get("mature_kg"), self.breeding.get("breed", ""), self.units)

    @property
    def _before(self) -> Mapping[str, Any]:
        return self.register.get("body", self.animal_id) or {}

    def _ask(self, answers: Answers) -> None:
        kg, sure = answers["weight_kg"]
        expected = self._expected(answers["girth_cm"])
        asked = doubt(kg, expected, self.units) if kg and expected and not sure and not self._bears_out(kg) else ""
        if asked:
            raise Wrong("weight_kg", asked)

    @property
    def _weights(self) -> Weights:
        return weights_of(self.register, self.animal_id)

    def _bears_out(self, kg: float) -> bool:
        """Whether it is like the one before, which was asked about too."""
        return agrees(self._weights.scaled.doubted, Weight(self.register.at, kg), Stage(self.row["stage"]))

    def _expected(self, girth_cm: float | None) -> Expected | None:
        found = self._weights
        taped = None if found.scaled.likely else by_girth(girth_cm)
        return taped or found.expected(self.register.at)

    def _weight(self, text: str) -> tuple[float | None, bool]:
        """And whether it was said to be right."""
        return maybe_weight(self.units)(text.rstrip(f"{SURE} ")), text.rstrip().endswith(SURE)

    @property
    def _day(self) -> Callable[[str], datetime | None]:
        """Nothing, `now` or `today` is this moment; a day that has been is its midnight."""

        def read(text: str) -> datetime | None:
            day = has_been(self.today)(text if text.strip() else "now")
            wall = datetime(day.year, day.month, day.day)  # noqa: DTZ001 wall time
            return None if day == self.today else from_wall(wall, self.zone)

        return read

    def _girth_words(self, cm: float) -> str:
        return f"{cm / CM_PER_INCH:.1f} in" if self.units is Units.US else f"{cm:.0f} cm"
