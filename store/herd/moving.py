"""An animal goes to another pen: a move, shut in for the vet, a visitor's pen."""

from collections.abc import Sequence

from store.book.drafts import RowDraft
from store.herd.animal import OneAnimal, pen_choices
from store.herd.sheet import Answers, Question, pick


class MovingSheet(OneAnimal):
    """Where to, and from when on."""

    @property
    def title(self) -> str:
        """Which animal, and where she is."""
        return f"{self.name} MOVES  from {self.register.name('pen_as', self.standing) or 'no pen'}"

    def questions(self) -> tuple[Question, ...]:
        """The pen."""
        planned = self.coming("standing", {"animal_id": self.animal_id})
        words = (f"{self.register.name('pen_as', row['pen_id']) or 'no pen'} {self.from_words(row)}" for row in planned)
        return (
            pick("pen_id", "goes to", pen_choices(self.register), self.standing, "where she stands is picked already"),
            self.question_from(),
            *self.question_coming(*words),
        )

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """Where she stands."""
        return self.dated("standing", answers, {"animal_id": self.animal_id}, {"pen_id": answers["pen_id"]})

    def told(self, answers: Answers) -> str:
        """Where she went."""
        return f"moved to {self.register.name('pen_as', answers['pen_id']) or 'no pen'}"
