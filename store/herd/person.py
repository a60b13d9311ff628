"""Somebody who does rounds."""

from collections.abc import Sequence

from store.book.drafts import RowDraft
from store.herd.answers import a_name
from store.herd.sheet import Answers, Question, Wrong, pick, yes_or_no
from store.herd.thing import ThingSheet


class PersonSheet(ThingSheet):
    """A new person, or one that is there."""

    TABLE = "person_as"

    @property
    def title(self) -> str:
        """Who."""
        return f"PERSON  {self.row['name']}" if self.row else "A NEW PERSON  P picks who does the round, by a digit"

    def questions(self) -> tuple[Question, ...]:
        """Name, and whether it is a child."""
        adult = (("adult", True), ("child", False))
        asked = (
            Question("name", "name", a_name, first=self.row.get("name", "")),
            pick("adult", "is", adult, self.row.get("adult", True), "a child is told where an adult has to be there"),
        )
        here = yes_or_no("here", "does rounds here", first=self.row.get("here", True))
        return (*asked, here) if self.row else asked

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The person. Raises Wrong where nobody would be left."""
        others = [row for row in self.register.all("person_as") if row["person_id"] != self.id_ and row["here"]]
        self.refuse_taken(answers["name"], (row["name"] for row in others), "person")
        if not answers.get("here", True) and not any(row["adult"] for row in others):
            raise Wrong("here", "Then no adult would be left to do the round. Set up somebody else first.")
        person_id = self.id_ or self.new_id()
        new = [] if self.row else [RowDraft("person", {"id": person_id})]
        values = {"name": answers["name"], "adult": answers["adult"], "here": answers.get("here", True)}
        return [*new, *self.dated("person_as", answers, {"person_id": person_id}, values)]

    def told(self, answers: Answers) -> str:
        """Who."""
        return f"{answers['name']}: " + ("changed" if self.row else "does rounds now")
