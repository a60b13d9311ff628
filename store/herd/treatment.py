"""A treatment as label or vet have it, and how long it withholds milk and meat. Nothing is proposed here."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import datetime
from typing import Any
from uuid import UUID

from store.book.drafts import RowDraft
from store.book.register import Register
from store.book.words import DOSES_MOST, DRY_MOST_DAYS, MEAT_MOST_DAYS, WITHHELD_MOST_H, SaidBy
from store.herd.animal import OneAnimal
from store.herd.answers import a_count, a_name, a_number, maybe, words
from store.herd.moments import Happened
from store.herd.named_moment import MOMENT, a_moment, moment_text
from store.herd.sheet import Answers, Choices, Question, Wrong, pick, yes_or_no

EVERY_MOST_H = 8784
MILKINGS_READ = 30
"""So many milkings are surely read back (`reading.sql.PAILS_BEFORE`): more would never be over."""
NOT_KNOWN = "may be left empty: then it is withheld until it is typed"
WITHDRAWAL = ("milk_h", "milkings", "meat_days", "dry_days", "calved_h", "calved_milkings")
BY: Choices = (("the label", SaidBy.LABEL), ("the vet", SaidBy.VET))


class TreatmentSheet(OneAnimal):
    """A treatment of an animal: a new one, or one to be mended or ended. All but the product may be missing."""

    def __init__(self, register: Register, animal_id: UUID | None, treatment_id: UUID | None = None) -> None:
        """Of an animal; treatment_id None: a new one."""
        super().__init__(register, animal_id)
        self.treatment_id = treatment_id
        self.given: Mapping[str, Any] = register.get("treatment_as", treatment_id) or {}
        self.typed: Mapping[str, Any] = register.get("withdrawal", treatment_id) or {}

    @property
    def title(self) -> str:
        """Of whom, and the caution."""
        return f"TREATMENT OF {self.name}  only as label or vet say: local rules and your vet decide"

    def questions(self) -> tuple[Question, ...]:
        """What is given, how often; then how long milk and meat are withheld."""
        ends = (
            [yes_or_no("in_use", "goes on", first=self.given["in_use"], hint="no: no more doses")] if self.given else []
        )
        return (*self._course(), *self._withdrawal(), *ends)

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The treatment from its first dose on, also where it is typed later, and how long it withholds."""
        if answers["doses"] > 1 and not answers["every_h"]:
            raise Wrong("every_h", f"{answers['doses']} doses need the hours between them. Type them, as 12.")
        return list(self._rows(answers, self.treatment_id or self.new_id()))

    def told(self, answers: Answers) -> str:
        """What is given."""
        if self.given and not answers["in_use"]:
            return f"treatment ended: {answers['product']}"
        doses = "1 dose" if answers["doses"] == 1 else f"{answers['doses']} doses, every {answers['every_h']:g} h"
        return f"treatment{' mended' if self.given else ''}: {answers['product']}, {doses}"

    def _course(self) -> Iterator[Question]:
        given, first_at = self.given, self.given.get("first_at")
        texts = (
            ("amount", "amount of one dose", 80, "as label or vet say it"),
            ("batch", "batch", 40, "from the pack"),
            ("route", "where, or how", 40, "as: left hind quarter, under the skin"),
            ("why", "for what", 120, "and who ordered it"),
        )
        yield Question("product", "product", a_name, "as it stands on the label", given.get("product", ""))
        for name, asked, most, hint in texts:
            yield Question(name, asked, _words(most), f"{hint}; may be left empty", given.get(name, ""))
        yield Question("doses", "how many doses", a_count(1, DOSES_MOST, "doses"), first=str(given.get("doses", 1)))
        yield _number("every_h", "every how many hours", a_number(1, EVERY_MOST_H, "hours"),
                      "from one dose to the next, as 12; one dose: leave it empty", given)  # fmt: skip
        yield Question(
            "first_at", "first dose at", a_moment(self.register.at, self.zone),
            f"{MOMENT}; its step asks whether it was given", moment_text(first_at, self.zone) if first_at else "now",
            was=Happened(first_at) if first_at else None,
        )  # fmt: skip

    def _withdrawal(self) -> Iterator[Question]:
        hours, days = a_number(0, WITHHELD_MOST_H, "hours"), a_number(0, MEAT_MOST_DAYS, "days")
        milkings, dry = a_count(0, MILKINGS_READ, "milkings"), a_number(0, DRY_MOST_DAYS, "days")
        asked = (
            ("milk_h", "milk withheld, hours", hours, f"after the last dose; 0: none is; {NOT_KNOWN}"),
            ("milkings", "milk withheld, milkings", milkings, "where the label counts them; of both the later counts"),
            ("meat_days", "meat withheld, days", days, "days of 24 h after the last dose; 0: none"),
            ("dry_days", "dry-cow: least days dry", dry, "from the product to calving; only of a dry-cow product"),
            ("calved_h", "dry-cow: h from calving", hours, "milk withheld from calving on, in hours"),
            ("calved_milkings", "dry-cow: milkings from it", milkings, "milk withheld from calving on, in milkings"),
        )
        for name, words_, read, hint in asked:
            yield _number(name, words_, read, hint, self.typed)
        yield pick(
            "said_by", "how long is said by", BY, self.typed.get("said_by"), "other than on the label: the vet only"
        )

    def _rows(self, answers: Answers, treatment_id: UUID) -> Iterator[RowDraft]:
        same, first_at = {"treatment_id": treatment_id}, answers["first_at"].at
        course = {each: answers[each] for each in ("product", "amount", "route", "why", "batch", "doses")}
        course |= {"every_h": answers["every_h"] or 24.0, "first_at": first_at, "animal_id": self.animal_id}
        course["in_use"] = answers.get("in_use", True)
        if not self.given:
            yield RowDraft("treatment", {"id": treatment_id})
        yield from self._from(first_at, "treatment_as", self.given, same, course)
        figures = {each: answers[each] for each in WITHDRAWAL}
        if self.typed or any(each is not None for each in figures.values()):
            yield from self._from(first_at, "withdrawal", self.typed, same, figures | {"said_by": answers["said_by"]})

    def _from(
        self, first_at: datetime, table: str, before: Mapping[str, Any], same: Mapping[str, Any], values: dict[str, Any]
    ) -> Iterator[RowDraft]:
        """In force from the first dose on: so that a round typed in later knows it too."""
        begins = before.get("begins_at", min(first_at, self.register.at))
        if self.given and first_at < begins and first_at != self.given["first_at"]:
            yield RowDraft(table, {**values, **same, "begins_at": first_at})
        yield from self.dated(table, {self.FROM: begins}, same, values)


def _words(most: int) -> Callable[[str], str]:
    return lambda text: words(text, most)


def _number(name: str, asked: str, read: Callable[[str], float], hint: str, row: Mapping[str, Any]) -> Question:
    """A number that may be missing; left as it stands it stays the very one."""
    number = row.get(name)
    return Question(name, asked, maybe(read), hint, "" if number is None else f"{number:g}", was=number)
