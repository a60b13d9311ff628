"""An animal leaves the yard: sold, dead, gone home, or never here."""

from collections.abc import Iterator, Sequence
from uuid import UUID

from store.book.drafts import RowDraft
from store.book.facts.milk import Withholding
from store.book.register import Register
from store.book.words import EVENING, MORNING
from store.herd.animal import OneAnimal
from store.herd.answers import words
from store.herd.named_moment import moment_text
from store.herd.sheet import Answers, Choices, Question, Wrong, pick_one, yes_or_no

HOW: Choices = tuple((how, how) for how in ("sold", "died", "killed for meat", "gone home", "entered by mistake"))


FOR_MEAT = ("sold", "killed for meat")


class LeavingSheet(OneAnimal):
    """How and when. meat: what withholds its meat now; None: nothing."""

    def __init__(self, register: Register, animal_id: UUID | None, meat: Withholding | None = None) -> None:
        """Of an animal that is there."""
        super().__init__(register, animal_id)
        self.meat = meat

    @property
    def title(self) -> str:
        """Which animal."""
        return f"{self.name} LEAVES  out of the round from then on; what was stays in the book"

    def questions(self) -> tuple[Question, ...]:
        """How, a word on it, from when."""
        return (
            pick_one("how", "how", HOW),
            Question("words", "a word on it", lambda text: words(text, 60), "to whom, why; may be left empty"),
            self.question_from(),
            *self._sure(),
        )

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """Not kept, nowhere here, shares nothing, is milked no more. Raises Wrong while its meat is withheld."""
        if self._withheld(answers) and not answers["sure"]:
            raise Wrong(
                "sure", f"Its {self.meat_words()}. Is it to go all the same, and is whoever gets it told? Pick yes."
            )
        return list(self._rows(answers))

    def told(self, answers: Answers) -> str:
        """How she left."""
        more = f", {answers['words']}" if answers["words"] else ""
        return f"{answers['how']}{more}{f'; {self.meat_words()}' if self._withheld(answers) else ''}"

    def meat_words(self) -> str:
        """`meat withheld until 20 Mar 2026 18:20: ...`."""
        until = self.meat.until if self.meat else None
        when = moment_text(until, self.zone) if until else "further notice"
        return f"meat is withheld until {when}: {self.meat.why if self.meat else ''}"

    def _sure(self) -> list[Question]:
        hint = f"{self.meat_words()}. Local rules and your vet decide; it is kept with the note"
        return [yes_or_no("sure", "goes although withheld", first=False, hint=hint)] if self.meat else []

    def _withheld(self, answers: Answers) -> bool:
        """Whether it goes where it may be eaten while its meat is withheld."""
        begins = answers.get(self.FROM) or self.register.at
        return self.meat is not None and self.meat.holds_at(begins) and answers["how"] in FOR_MEAT

    def _rows(self, answers: Answers) -> Iterator[RowDraft]:
        same = {"animal_id": self.animal_id}
        yield from self.dated("animal_as", answers, same, {"kept": False})
        yield from self.dated("standing", answers, same, {"pen_id": None})
        yield from self._sharing(answers)
        for slot in (MORNING, EVENING):
            if self.register.get("milk_plan", self.animal_id, slot):
                yield from self.dated("milk_plan", answers, same | {"slot": slot}, {"milked": False})

    def _sharing(self, answers: Answers) -> Iterator[RowDraft]:
        """Whoever shares with her shares no more; a calf with two cows goes on with the other one."""
        second = {row["calf_id"]: row["cow_id"] for row in self.register.all("second_cow") if row["cow_id"]}
        for row in self.register.all("sharing"):
            if row["shares"] and self.animal_id in (row["cow_id"], row["calf_id"]):
                other = second.get(row["calf_id"]) if row["cow_id"] == self.animal_id else None
                goes_on = {"cow_id": other} if other else {"shares": False}
                yield from self.dated("sharing", answers, {"calf_id": row["calf_id"]}, goes_on)
        own = {row["calf_id"] for row in self.register.all("sharing") if row["cow_id"] == self.animal_id}
        for calf_id, cow_id in second.items():
            if self.animal_id in (calf_id, cow_id) or calf_id in own:
                yield from self.dated("second_cow", answers, {"calf_id": calf_id}, {"cow_id": None})
