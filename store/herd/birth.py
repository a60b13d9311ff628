"""A calf, lamb or kid is born: it stands with its mother, and she has calved."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from store.book.drafts import RowDraft
from store.book.turn import from_wall
from store.book.words import Species, Stage
from store.herd.animal import OneAnimal, kept, stages
from store.herd.answers import a_name, words
from store.herd.days import maybe_day
from store.herd.milking import LONGEST_H
from store.herd.sheet import Answers, Choices, Question, Wrong, pick, yes_or_no

MOTHERS = (Stage.IN_MILK, Stage.SUCKLER, Stage.OTHER)


class BirthSheet(OneAnimal):
    """What was born of whom."""

    @property
    def title(self) -> str:
        """Whose."""
        return f"BORN OF {self.name}  up, licked dry, and has it sucked? See that first"

    def questions(self) -> tuple[Question, ...]:
        """Name, day, tag, and what becomes of the mother."""
        mother = Stage.SUCKLER if self.row["stage"] is Stage.SUCKLER else Stage.IN_MILK
        cow = self.row["species"] is Species.CATTLE
        return (
            Question("name", "name", a_name, "as you call it"),
            Question("born_on", "born on", maybe_day(self.today), "today, yesterday, or a day", "today"),
            Question("tag", "ear tag", lambda text: words(text, 40), "may be left empty"),
            pick("mother", f"{self.name} is now", self._classes(), mother if cow else Stage.OTHER),
            yes_or_no(
                "shares", "shut away at night", first=False, hint="not in the first days; later, to share her milk"
            ),
        )

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The young one, and its mother."""
        if answers["born_on"] is None or answers["born_on"] > self.today:
            raise Wrong(
                "born_on", "The day it was born is needed, and it is not still to come. Type today or yesterday."
            )
        if any(row["name"].lower() == answers["name"].lower() for row in kept(self.register)):
            raise Wrong("name", f"There is an animal {answers['name']} already. Type another name.")
        return [*self._young(answers), *self._mother(answers)]

    def told(self, answers: Answers) -> str:
        """What was born."""
        return f"has borne {answers['name']}"

    def _classes(self) -> Choices:
        return tuple(each for each in stages(self.register) if each[1] in MOTHERS)

    def _young(self, answers: Answers) -> Iterator[RowDraft]:
        id_, day = self.new_id(), answers["born_on"]
        stage = Stage.CALF if self.row["species"] is Species.CATTLE else Stage.OTHER
        values = {"name": answers["name"], "tag": answers["tag"], "stage": stage, "born_on": day}
        begins = {"begins_at": from_wall(datetime(day.year, day.month, day.day), self.zone)}  # noqa: DTZ001 wall time
        same = {"animal_id": id_}
        yield RowDraft("animal", {"id": id_})
        yield RowDraft("animal_as", {**same, **values, **begins, "species": self.row["species"]})
        yield RowDraft("standing", {**same, "pen_id": self.standing})
        yield RowDraft(
            "breeding", {**same, **begins, "breed": self.breeding.get("breed", ""), "dam_id": self.animal_id}
        )
        if answers["shares"]:
            yield RowDraft("sharing", {"cow_id": self.animal_id, "calf_id": id_, "longest_h": LONGEST_H})

    def _mother(self, answers: Answers) -> Iterator[RowDraft]:
        same = {"animal_id": self.animal_id}
        calved = {"stage": answers["mother"], "calved_on": answers["born_on"]}
        yield from self.dated("animal_as", answers, same, calved)
        if self.breeding.get("due_on"):
            yield from self.dated("breeding", answers, same, {"due_on": None, "served_on": None})
