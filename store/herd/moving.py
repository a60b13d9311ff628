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
        others = tuple((word, id_) for word, id_ in pen_choices(self.register) if id_ != self.standing)
        return (pick("pen_id", "goes to", others), self.question_from())

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """Where she stands."""
        return self.dated("standing", answers, {"animal_id": self.animal_id}, {"pen_id": answers["pen_id"]})

    def told(self, answers: Answers) -> str:
        """Where she went."""
        return f"moved to {self.register.name('pen_as', answers['pen_id']) or 'no pen'}"
