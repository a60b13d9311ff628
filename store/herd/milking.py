"""Whether a cow is milked, into which pail, and which calf shares her milk."""

from collections.abc import Iterator, Sequence
from uuid import UUID

from store.book.drafts import RowDraft
from store.book.words import EVENING, MORNING, Stage
from store.herd.animal import OneAnimal, kept
from store.herd.answers import a_number
from store.herd.sheet import Answers, Choices, Question, pick, yes_or_no

LONGEST_H = 13.0
"""The longest time apart until the farm says otherwise. Common practice: about twelve hours. [h]"""
SLOTS = (MORNING, EVENING)
EVERY: Choices = (("each", 1), ("every other", 2), ("every third", 3), ("every fourth", 4))
"""At which of her planned milkings."""


class MilkingSheet(OneAnimal):
    """Morning, evening, pail, calf."""

    @property
    def title(self) -> str:
        """Which cow."""
        return f"{self.name}  milking, and the calf that shares her milk"

    def questions(self) -> tuple[Question, ...]:
        """When, into which pail, with which calf."""
        plans = [self.register.get("milk_plan", self.animal_id, slot) for slot in SLOTS]
        milked = [bool(plan and plan["milked"]) for plan in plans]
        pail_id = next((plan["pail_id"] for plan in plans if plan and plan["milked"]), None)
        calf_id, longest_h = self._calf()
        pails: Choices = tuple((row["name"], row["pail_id"]) for row in self.register.all("pail_as"))
        calves: Choices = tuple(
            (row["name"], row["animal_id"]) for row in kept(self.register) if row["stage"] is Stage.CALF
        )
        return (
            yes_or_no(MORNING, "milked in the morning", first=milked[0]),
            yes_or_no(EVENING, "milked in the evening", first=milked[1]),
            pick("pail_id", "into", (*pails, ("no pail that was weighed", None)), pail_id,
                 "its empty weight is taken off"),
            pick("calf_id", "shares her milk with", (("no calf", None), *calves), calf_id),
            Question("longest_h", "calf apart at most", a_number(1, 48, "hours"), "hours, your own limit",
                     f"{longest_h:g}"),
            pick("every", "of these she is milked at", EVERY, self._every(), "she is felt at the others"),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """A plan for each slot that changes, and the calf that shares or does not any more."""
        return [*self._plans(answers), *self._sharing(answers), *self._rhythm(answers)]

    def told(self, answers: Answers) -> str:
        """When she is milked."""
        slots = " and ".join(slot for slot in SLOTS if answers[slot])
        which = next(word for word, every in EVERY if every == answers["every"])
        return f"milked {slots or 'no more'}{f', {which} time' if slots and answers['every'] > 1 else ''}"

    def _plans(self, answers: Answers) -> Iterator[RowDraft]:
        for slot in SLOTS:
            same = {"animal_id": self.animal_id, "slot": slot}
            if answers[slot] or self.register.get("milk_plan", self.animal_id, slot):
                pail_id = answers["pail_id"] if answers[slot] else None
                yield from self.dated("milk_plan", answers, same, {"milked": answers[slot], "pail_id": pail_id})

    def _every(self) -> int:
        return int((self.register.get("milk_rhythm", self.animal_id) or {"every": 1})["every"])

    def _rhythm(self, answers: Answers) -> Iterator[RowDraft]:
        if answers["every"] > 1 or self.register.get("milk_rhythm", self.animal_id):
            yield from self.dated("milk_rhythm", answers, {"animal_id": self.animal_id}, {"every": answers["every"]})

    def _sharing(self, answers: Answers) -> Iterator[RowDraft]:
        before, _ = self._calf()
        if before and before != answers["calf_id"]:
            yield from self.dated("sharing", answers, {"calf_id": before}, {"shares": False})
        if answers["calf_id"]:
            values = {"cow_id": self.animal_id, "shares": True, "longest_h": answers["longest_h"]}
            yield from self.dated("sharing", answers, {"calf_id": answers["calf_id"]}, values)

    def _calf(self) -> tuple[UUID | None, float]:
        shared = (row for row in self.register.all("sharing") if row["cow_id"] == self.animal_id and row["shares"])
        row = next(shared, None)
        return (row["calf_id"], row["longest_h"]) if row else (None, LONGEST_H)
