"""Something about an animal that is looked at again and again."""

from collections.abc import Mapping, Sequence
from typing import Any
from uuid import UUID

from store.book.drafts import RowDraft
from store.book.register import Register
from store.book.words import EVERY_MOST_DAYS, SLOTS, Asks
from store.herd.animal import OneAnimal
from store.herd.answers import a_count, a_name
from store.herd.days import UNTIL, day_words, maybe_day
from store.herd.sheet import Answers, Choices, Question, pick, yes_or_no

WHAT: Choices = tuple((asks.value, asks) for asks in Asks)
WHICH: Choices = tuple((slot, slot) for slot in SLOTS)


class LookSheet(OneAnimal):
    """A new look, or one that is there."""

    def __init__(self, register: Register, animal_id: UUID | None, look_id: UUID | None = None) -> None:
        """At an animal; look_id None: a new one."""
        super().__init__(register, animal_id)
        self.look_id = look_id
        self.look: Mapping[str, Any] = register.get("look_as", look_id) or {}

    @property
    def title(self) -> str:
        """At whom."""
        return f"LOOK AT {self.name}  something that is looked at again and again"

    def questions(self) -> tuple[Question, ...]:
        """What, in which round, how often, until when."""
        look = self.look
        asked = (
            Question("name", "look at", a_name, "as left hind foot, condition, signs of calving", look.get("name", "")),
            pick("asks", "asks for", WHAT, look.get("asks")),
            pick("slot", "in the round of", WHICH, look.get("slot")),
            Question("every_days", "every how many days", a_count(1, EVERY_MOST_DAYS, "days"), "1: every day",
                     str(look.get("every_days", 1))),
            Question("until_on", "last on", maybe_day(self.today, to_come=True), UNTIL,
                     day_words(look.get("until_on"))),
        )  # fmt: skip
        return (*asked, yes_or_no("in_use", "goes on", first=look["in_use"])) if look else asked

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The look."""
        look_id = self.look_id or self.new_id()
        new = [] if self.look else [RowDraft("look", {"id": look_id})]
        values = {each: answers[each] for each in ("name", "asks", "slot", "every_days", "until_on")}
        more = {"animal_id": self.animal_id, "in_use": answers.get("in_use", True)}
        return [*new, *self.dated("look_as", answers, {"look_id": look_id}, values | more)]

    def told(self, answers: Answers) -> str:
        """What is looked at."""
        return f"look at {answers['name']}, every {answers['every_days']} days"
