"""What an animal weighs, or measures around the heart."""

from collections.abc import Sequence

from store.book.drafts import RowDraft
from store.book.words import Units
from store.herd.animal import OneAnimal
from store.herd.answers import maybe_girth, maybe_weight
from store.herd.sheet import Answers, Question, Wrong
from store.husbandry.units import CM_PER_INCH
from store.round.saying import exact


class BodySheet(OneAnimal):
    """Weighed, or taped."""

    @property
    def title(self) -> str:
        """Which animal."""
        return f"{self.name}  weight, or heart girth from the tape"

    def questions(self) -> tuple[Question, ...]:
        """One of the two is enough."""
        before = self.register.get("body", self.animal_id) or {}
        kg, cm = before.get("weight_kg"), before.get("girth_cm")
        girth = "" if cm is None else f"{cm / CM_PER_INCH:.1f}" if self.units is Units.US else f"{cm:g}"
        return (
            Question("weight_kg", "weight", maybe_weight(self.units), "on a scale, as 612; may be left empty",
                     exact(kg, self.units) if kg else "", was=kg),
            Question("girth_cm", "heart girth", maybe_girth(self.units), "behind the elbows, tape snug", girth, was=cm),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """What was found."""
        found = {each: answers[each] for each in ("weight_kg", "girth_cm")}
        if not any(found.values()):
            raise Wrong("weight_kg", "Neither weight nor girth is typed. Type one of them, or Esc goes back.")
        return self.dated("body", answers, {"animal_id": self.animal_id}, found)

    def told(self, answers: Answers) -> str:
        """What was found."""
        kg, cm = answers["weight_kg"], answers["girth_cm"]
        found = (exact(kg, self.units) if kg else "", f"girth {cm:.0f} cm" if cm else "")
        return "weighs " + ", ".join(filter(None, found))
