"""Where a feed stands free, as a mineral tub: whoever stands in that pen takes what she likes of it."""

from collections.abc import Sequence
from uuid import UUID

from store.book.drafts import RowDraft
from store.book.register import Register, Values
from store.herd.feed import FeedSheet
from store.herd.sheet import Answers, Question, yes_or_no


class FreeSheet(FeedSheet):
    """One feed, and every pen in use."""

    def __init__(self, register: Register, feed_id: UUID) -> None:
        """Of a feed that is there."""
        super().__init__(register, feed_id)
        in_use = (row for row in register.all("pen_as") if row["in_use"])
        self.pens = sorted(in_use, key=lambda row: (row["position"], row["pen_id"].bytes))

    @property
    def title(self) -> str:
        """Which feed."""
        return f"{self.row['name']}  where it stands free. Weighed twice, the feed room says what each head took a day"

    def questions(self) -> tuple[Question, ...]:
        """Pen by pen."""
        asked = (
            yes_or_no(_name(pen), f"stands free in {pen['name']}", first=self._stands(pen), hint="as a mineral tub")
            for pen in self.pens
        )
        return (*asked, self.question_from())

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """A row for each pen where that is otherwise now."""
        return [row for pen in self.pens for row in self._of_pen(answers, pen)]

    def told(self, answers: Answers) -> str:
        """Where it stands free now."""
        pens = ", ".join(pen["name"] for pen in self.pens if answers[_name(pen)])
        return f"{self.row['name']} stands free in {pens}" if pens else f"{self.row['name']} stands free nowhere"

    def _of_pen(self, answers: Answers, pen: Values) -> list[RowDraft]:
        if answers[_name(pen)] == self._stands(pen):
            return []
        same = {"feed_id": self.id_, "pen_id": pen["pen_id"]}
        return self.dated("free_feed", answers, same, {"offered": answers[_name(pen)]})

    def _stands(self, pen: Values) -> bool:
        row = self.register.get("free_feed", self.id_, pen["pen_id"])
        return bool(row and row["offered"])


def _name(pen: Values) -> str:
    return f"free {pen['pen_id']}"
