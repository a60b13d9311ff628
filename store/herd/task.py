"""A standing job of the round: what, where, and when it falls due."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any
from uuid import UUID

from store.book.drafts import RowDraft, Subject
from store.book.register import Register
from store.book.words import EVERY_MOST_DAYS, SLOTS
from store.herd.animal import pen_choices, stages
from store.herd.answers import WORDS_MOST, a_count, words
from store.herd.days import UNTIL, a_day_of_year, day_of_year_words, day_words, maybe_day
from store.herd.sheet import Answers, Choices, Question, Wrong, pick, yes_or_no
from store.herd.thing import ThingSheet
from store.round.amount import Unreadable

WHICH: Choices = tuple((slot, slot) for slot in SLOTS)


class TaskSheet(ThingSheet):
    """A new job, or one that is there."""

    TABLE = "task_as"

    def __init__(self, register: Register, id_: UUID | None = None) -> None:
        """id_ None: a new one."""
        super().__init__(register, id_)
        self.due: Mapping[str, Any] = register.get("task_due", id_) or {}

    @property
    def title(self) -> str:
        """Which job."""
        return f"JOB  {self.row['name']}" if self.row else "A NEW JOB  water runs, gate shut, foot bath, magnesium out"

    def subject(self) -> Subject:
        """The job."""
        return Subject(task_id=self.id_)

    def questions(self) -> tuple[Question, ...]:
        """What, where and when; the second half may stay as it stands."""
        pens = (("the bench", None), *(each for each in pen_choices(self.register) if each[1]))
        return (
            Question("name", "what is to be done", _job, "in a few words", self.row.get("name", "")),
            pick("slot", "in the round of", WHICH, self.row.get("slot", WHICH[0][1])),
            pick("pen_id", "at", pens, self.row.get("pen_id")),
            pick("closing", "comes", (("before the animals", False), ("after the animals", True)),
                 self.row.get("closing", False)),
            *self._when(),
            yes_or_no("adult_only", "no child alone", first=self.row.get("adult_only", False)),
            yes_or_no("two_people", "two people", first=self.row.get("two_people", False)),
            *self._since(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The job, and when it falls due. Raises Wrong for half a season."""
        if (answers["season_first"] is None) != (answers["season_last"] is None):
            raise Wrong("season_last", "A season needs its first and its last day, or neither. Type both, as 1 May.")
        return list(self._rows(answers, self.id_ or self.new_id()))

    def told(self, answers: Answers) -> str:
        """Which job, and how often."""
        how = "once" if answers["once"] else f"every {answers['every_days']} days" if answers["every_days"] > 1 else ""
        words = "job changed" if self.row else f"a new job: {answers['name']}"
        return f"{words}, {how}" if how else words

    def _when(self) -> Iterator[Question]:
        day, due = maybe_day(self.today, to_come=True), self.due
        classes: Choices = (("whoever is there", None), *stages(self.register))
        yield Question("every_days", "every how many days", a_count(1, EVERY_MOST_DAYS, "days"), "1: every day",
                       str(due.get("every_days", 1)))  # fmt: skip
        yield yes_or_no("once", "only once", first=due.get("once", False), hint="it stays until it is done")
        yield Question("until_on", "last on", day, UNTIL, day_words(due.get("until_on")))
        season = "a day of the year, as 1 May; empty: all year"
        yield Question(
            "season_first", "each year from", a_day_of_year, season, day_of_year_words(due.get("season_first"))
        )
        yield Question(
            "season_last", "each year until", a_day_of_year, season, day_of_year_words(due.get("season_last"))
        )
        yield pick("stage", "only while there is", classes, due.get("stage"), "an animal of this class")

    def _since(self) -> Iterator[Question]:
        if self.row:
            yield yes_or_no("in_use", "goes on", first=self.row["in_use"], hint="no: it is in no round any more")
            yield self.question_from()

    def _rows(self, answers: Answers, task_id: UUID) -> Iterator[RowDraft]:
        if not self.row:
            yield RowDraft("task", {"id": task_id})
        asked = ("name", "slot", "pen_id", "closing", "adult_only", "two_people")
        values = {each: answers[each] for each in asked} | {"in_use": answers.get("in_use", True)}
        position = {} if self.row else {"position": self._last_position()}
        yield from self.dated("task_as", answers, {"task_id": task_id}, values | position)
        due = {
            each: answers[each] for each in ("every_days", "once", "until_on", "season_first", "season_last", "stage")
        }
        if self.due or due != EVERY_DAY:
            yield from self.dated("task_due", answers, {"task_id": task_id}, due)

    def _last_position(self) -> int:
        return min(max((row["position"] for row in self.register.all("task_as")), default=0) + 1, 999)


EVERY_DAY: Mapping[str, Any] = {
    "every_days": 1, "once": False, "until_on": None, "season_first": None, "season_last": None, "stage": None,
}  # fmt: skip
"""What needs no row: it is due every day."""


def _job(text: str) -> str:
    if not text.strip():
        raise Unreadable("What is to be done? Type it in a few words, as Water runs.")
    return words(text, WORDS_MOST)
