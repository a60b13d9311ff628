"""She was seen bulling: when to serve her, and when to look again."""

from collections.abc import Sequence
from datetime import date, timedelta

from store.book.drafts import RowDraft
from store.book.turn import local
from store.book.words import Stage
from store.herd.animal import OneAnimal
from store.herd.days import day_words
from store.herd.moments import Happened, happened
from store.herd.sheet import Answers, Choices, Question, pick_one
from store.husbandry.dates.heats import Serve, next_heat, serve_after
from store.round.amount import Unreadable
from store.round.confirm import Hand
from store.round.dialect import said

NOT_BULLING = (Stage.CALF, Stage.STEER, Stage.BULL)
SIGNS: Choices = (("stood to be mounted", True), ("other signs: restless, bawling, clear slime", False))


def short_day(day: date) -> str:
    """`31 Jan`."""
    return f"{day.day} {day:%b}"


class BullingSheet(OneAnimal):
    """When, and by what sign."""

    @property
    def title(self) -> str:
        """Who."""
        return f"{self.name} {self._bulling.upper()}  when it was seen first"

    def questions(self) -> tuple[Question, ...]:
        """When and how sure."""
        return (
            Question("seen", "seen first", self._when, "as 6:10, or yesterday 22:00; not between two times", "now"),
            pick_one("stood", "by what", SIGNS, "standing is the surest sign; from it the time to serve is counted"),
        )

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The heat, at the moment at which it was seen."""
        return [RowDraft("heat", {"animal_id": self.animal_id, "stood": answers["stood"], "seen": True,
                                  "begins_at": answers["seen"].at})]  # fmt: skip

    def told(self, answers: Answers) -> str:
        """`bulling, stood: serve this evening; next 31 Jan to 7 Feb`."""
        seen = local(answers["seen"].at, self.zone)
        first, last = next_heat(seen.date())
        how = "stood" if answers["stood"] else "other signs"
        served = self._serve_words(serve_after(seen), stood=answers["stood"])
        return f"{self._bulling}, {how}: {served}; next {short_day(first)} to {short_day(last)}"

    def says(self, answers: Answers, hand: Hand) -> Sequence[str]:  # noqa: ARG002
        """That she should not be bulling."""
        due = self.breeding.get("due_on")
        return (
            [f"She is down as in calf, due {day_words(due)}: have that looked at before she is served"] if due else []
        )

    @property
    def _bulling(self) -> str:
        return said("bulling", self.register.farm.dialect)

    def _serve_words(self, serve: Serve, *, stood: bool) -> str:
        late = serve.on < self.today
        if late:
            return f"the time to serve was {self._when_words(serve)}"
        return f"serve {self._when_words(serve)}" if stood else f"if she stands too, serve {self._when_words(serve)}"

    def _when_words(self, serve: Serve) -> str:
        part = "evening" if serve.evening else "morning"
        near = {self.today: f"this {part}", self.today + timedelta(days=1): f"tomorrow {part}",
                self.today - timedelta(days=1): f"yesterday {part}"}  # fmt: skip
        return near.get(serve.on, f"in the {part} of {short_day(serve.on)}")

    def _when(self, text: str) -> Happened:
        found = happened(text, self.register.at, self.zone, whole_days=False)
        if found.since:
            raise Unreadable(f"«{text.strip()}» is between two times. Type when it was seen first, as 6:10.")
        return found
