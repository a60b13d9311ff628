"""Milk that is withheld on somebody's word, as the vet's: beside what follows from treatments and calvings."""

from collections.abc import Sequence

from store.book.drafts import RowDraft
from store.herd.animal import OneAnimal
from store.herd.answers import a_name, maybe
from store.herd.named_moment import MOMENT, a_moment, moment_text
from store.herd.sheet import Answers, Question, Wrong

UNTIL = "empty: until further notice. That is ended by the very same reason again, until now"


class WithheldSheet(OneAnimal):
    """Her milk is withheld on somebody's word: until a moment, or until further notice.

    What is until further notice is ended by a line that gives the same reason (`reading.facts.withheld`).
    """

    @property
    def title(self) -> str:
        """Whose."""
        return f"MILK OF {self.name} WITHHELD  on the vet's word, or yours. What is written here is not shortened later"

    def questions(self) -> tuple[Question, ...]:
        """Why, and between when."""
        at = a_moment(self.register.at, self.zone)
        return (
            Question("why", "why", a_name, "as: waits for the vet, test of 5 March"),
            Question("begins", "from", at, MOMENT, "now"),
            Question("ends", "until", maybe(at), UNTIL),
        )

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The withholding. Raises Wrong for one that ends before it begins."""
        begins, ends = answers["begins"].at, answers["ends"].at if answers["ends"] else None
        if ends and ends < begins:
            raise Wrong("ends", "That is before it begins. Type when it ends, or leave it empty.")
        return [RowDraft("withheld", {"animal_id": self.animal_id, "begins_at": begins, "ends_at": ends,
                                      "why": answers["why"]})]  # fmt: skip

    def told(self, answers: Answers) -> str:
        """Until when."""
        until = moment_text(answers["ends"].at, self.zone) if answers["ends"] else "further notice"
        return f"milk withheld until {until}: {answers['why']}"
