"""A pen: its name, and where it comes in the walk."""

from collections.abc import Iterator, Sequence
from uuid import UUID

from store.book.drafts import RowDraft, Subject
from store.herd.answers import a_name
from store.herd.sheet import Answers, Question, pick, yes_or_no
from store.herd.thing import ThingSheet

STEP = 10
"""Between the positions of two pens in the walk."""


class PenSheet(ThingSheet):
    """A new pen, or one that is there."""

    TABLE = "pen_as"

    @property
    def title(self) -> str:
        """Which pen."""
        return f"PEN  {self.row['name']}" if self.row else "A NEW PEN  a stall, yard, field: where animals stand"

    def subject(self) -> Subject:
        """The pen."""
        return Subject(pen_id=self.id_)

    def questions(self) -> tuple[Question, ...]:
        """Its name and place in the walk; whether it is still used, once it is there."""
        others = self._others()
        places = (
            ("first", 0),
            *((f"after {self.register.name('pen_as', id_)}", at) for at, id_ in enumerate(others, 1)),
        )
        asked = (
            Question("name", "name", a_name, "as you say it: Stall, Orchard", self.row["name"] if self.row else ""),
            pick("place", "comes in the walk", places, self._place()),
        )
        if not self.row:
            return asked
        in_use = yes_or_no(
            "in_use", "in use", first=self.row["in_use"], hint="no: it is out of the walk, what was stays"
        )
        return (*asked, in_use, self.question_from())

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The pen, and a new position of each pen whose place in the walk is another now."""
        in_use = (row["name"] for row in self.register.all("pen_as") if row["in_use"])
        self.refuse_taken(answers["name"], in_use, "pen")
        return list(self._rows(answers, self.id_ or self.new_id()))

    def told(self, answers: Answers) -> str:
        """Which pen."""
        return f"pen {answers['name']} set up" if not self.row else "name or place in the walk changed"

    def _rows(self, answers: Answers, pen_id: UUID) -> Iterator[RowDraft]:
        own = {"name": answers["name"], "in_use": answers.get("in_use", True)}
        if self.row and answers["place"] == self._place():
            yield from self.dated("pen_as", answers, {"pen_id": pen_id}, own)
            return
        if not self.row:
            yield RowDraft("pen", {"id": pen_id})
        order = self._others()
        order.insert(answers["place"], pen_id)
        for at, id_ in enumerate(order, 1):
            position = {"position": at * STEP}
            yield from self.dated("pen_as", answers, {"pen_id": id_}, (own if id_ == pen_id else {}) | position)

    def _place(self) -> int:
        """How many pens come before it in the walk; behind all where it is new."""
        others = self._others()
        return sum(self._position(id_) < self.row["position"] for id_ in others) if self.row else len(others)

    def _others(self) -> list[UUID]:
        """The other pens in use, in walking order."""
        found = [row for row in self.register.all("pen_as") if row["in_use"] and row["pen_id"] != self.id_]
        return [row["pen_id"] for row in sorted(found, key=lambda row: (row["position"], row["name"]))]

    def _position(self, pen_id: UUID) -> int:
        row = self.register.get("pen_as", pen_id)
        return int(row["position"]) if row else 0
