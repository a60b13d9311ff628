"""What a test found in her milk."""

from collections.abc import Callable, Sequence
from datetime import date, datetime

from store.book.drafts import RowDraft
from store.book.turn import from_wall, local
from store.book.words import FAT_PERCENT, PROTEIN_PERCENT
from store.herd.animal import OneAnimal
from store.herd.answers import a_number, maybe
from store.herd.days import a_day, day_words
from store.herd.sheet import Answers, Question, Wrong
from store.round.amount import Unreadable


class MilkTestSheet(OneAnimal):
    """Fat and protein, of the day on which the milk was taken."""

    @property
    def title(self) -> str:
        """Whose, and what was found last."""
        return f"MILK OF {self.name} TESTED  {self._last()}"

    def questions(self) -> tuple[Question, ...]:
        """One of the two is enough."""
        return (
            Question("fat_percent", "fat", maybe(a_number(*FAT_PERCENT, "%")), "% of the whole milking, well mixed"),
            Question("protein_percent", "protein", maybe(a_number(*PROTEIN_PERCENT, "%")), "%; may be left empty"),
            Question("taken", "taken on", has_been(self.today), "as today, yesterday, 5 Mar 2026", "today"),
        )

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The test; nothing where nothing is typed. One typed again for the same day takes the place of the first."""
        found = {each: answers[each] for each in ("fat_percent", "protein_percent")}
        if not any(found.values()):
            return []
        if found["fat_percent"] is None:
            raise Wrong("fat_percent", "The fat is needed with the protein. Type it as 4.2, or Esc goes back.")
        return [
            RowDraft("milk_test", {"animal_id": self.animal_id, **found, "begins_at": self._begins(answers["taken"])})
        ]

    def told(self, answers: Answers) -> str:
        """`milk tested on 5 Mar 2026: fat 4.2 %, protein 3.4 %`."""
        found = _words(answers["fat_percent"], answers["protein_percent"]) or "nothing typed"
        return f"milk tested on {day_words(answers['taken'])}: {found}"

    def _begins(self, day: date) -> datetime:
        return from_wall(datetime(day.year, day.month, day.day), self.zone)  # noqa: DTZ001 wall time

    def _last(self) -> str:
        row = self.register.get("milk_test", self.animal_id)
        if row is None or row["fat_percent"] is None:
            return "not tested so far"
        day = day_words(local(row["begins_at"], self.zone).date())
        return f"last {day}: {_words(row['fat_percent'], row['protein_percent'])}"


def has_been(today: date) -> Callable[[str], date]:
    """A day that has been, or today."""

    def read(text: str) -> date:
        found = a_day(" ".join(text.lower().replace(",", " ").split()), today)
        if found > today:
            raise Unreadable(f"{day_words(found)} is still to come. Type a day that has been.")
        return found

    return read


def _words(fat: float | None, protein: float | None) -> str:
    named = (("fat", fat), ("protein", protein))
    return ", ".join(f"{name} {percent:g} %" for name, percent in named if percent is not None)
