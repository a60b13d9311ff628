"""A milk pail and what it weighs when empty."""

from collections.abc import Sequence

from store.book.drafts import RowDraft
from store.herd.answers import a_name, a_weight
from store.herd.sheet import Answers, Question
from store.herd.thing import ThingSheet
from store.round.saying import exact


class PailSheet(ThingSheet):
    """A new pail, or one that is there."""

    TABLE = "pail_as"

    @property
    def title(self) -> str:
        """Which pail."""
        return (
            f"PAIL  {self.row['name']}" if self.row else "A NEW PAIL  weigh it empty, with its lid if it is weighed so"
        )

    def questions(self) -> tuple[Question, ...]:
        """Name and empty weight."""
        empty = exact(self.row["empty_kg"], self.units) if self.row else ""
        asked = (
            Question("name", "name", a_name, "as you tell it from others: steel pail", self.row.get("name", "")),
            Question(
                "empty_kg",
                "weighs empty",
                lambda text: a_weight(text, self.units, 0, 20),
                "as 1.4 kg",
                empty,
                was=self.row.get("empty_kg"),
            ),
        )
        return (*asked, self.question_from()) if self.row else asked

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The pail."""
        self.refuse_taken(answers["name"], (row["name"] for row in self.register.all("pail_as")), "pail")
        pail_id = self.id_ or self.new_id()
        new = [] if self.row else [RowDraft("pail", {"id": pail_id})]
        values = {each: answers[each] for each in ("name", "empty_kg")}
        return [*new, *self.dated("pail_as", answers, {"pail_id": pail_id}, values)]

    def told(self, answers: Answers) -> str:
        """Which pail."""
        return f"{answers['name']} weighs {exact(answers['empty_kg'], self.units)} empty"
