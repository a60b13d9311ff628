"""An animal: what she is called, where she stands in life, and in which pen."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any
from uuid import UUID

from store.book.drafts import RowDraft, Subject
from store.book.register import Register
from store.book.words import Species, Stage
from store.herd.answers import a_name, words
from store.herd.days import day_words, maybe_day
from store.herd.sheet import Answers, Choices, Question, Wrong, YardSheet, pick, yes_or_no
from store.round.dialect import said

NO_PEN = "in no pen"
SPECIES: Choices = tuple((species.value, species) for species in Species)


def kept(register: Register) -> list[Mapping[str, Any]]:
    """The rows of the animals that are here, by name."""
    return sorted((row for row in register.all("animal_as") if row["kept"]), key=lambda row: row["name"])


def stages(register: Register) -> Choices:
    """Every class, in the farm's own words."""
    return tuple((said(stage.value, register.farm.dialect), stage) for stage in Stage)


def pen_choices(register: Register) -> Choices:
    """The pens in use in walking order, then no pen."""
    pens = sorted((row for row in register.all("pen_as") if row["in_use"]), key=lambda row: row["position"])
    return (*((row["name"], row["pen_id"]) for row in pens), (NO_PEN, None))


class OneAnimal(YardSheet):
    """A sheet about an animal; animal_id None: a new one."""

    def __init__(self, register: Register, animal_id: UUID | None = None) -> None:
        """Of an animal that is there, or of a new one."""
        super().__init__(register)
        self.animal_id = animal_id
        self.row: Mapping[str, Any] = register.get("animal_as", animal_id) or {}
        self.standing = (register.get("standing", animal_id) or {}).get("pen_id")
        self.breeding = register.get("breeding", animal_id) or {}

    @property
    def name(self) -> str:
        """Hers."""
        return str(self.row.get("name", ""))

    def subject(self) -> Subject:
        """The animal."""
        return Subject(animal_id=self.animal_id)


class AnimalSheet(OneAnimal):
    """What has to be known of every animal."""

    @property
    def title(self) -> str:
        """Which animal."""
        return f"ANIMAL  {self.name}" if self.row else "A NEW ANIMAL  born here, bought, or a visitor"

    def questions(self) -> tuple[Question, ...]:
        """Name, class, pen and tag; the kind of animal is cattle unless it is said otherwise."""
        pens = pen_choices(self.register)
        stands = self.standing if self.row else pens[0][1]
        asked = (
            Question("name", "name", a_name, "as you call her", self.name),
            pick("stage", "class", stages(self.register), self.row.get("stage", Stage.IN_MILK)),
            pick("pen_id", "stands in", pens, stands),
            Question("tag", "ear tag", lambda text: words(text, 40), "as one reads it: BLUE 12; may be left empty",
                     self.row.get("tag", "")),
            pick("species", "kind of animal", SPECIES, self.row.get("species", Species.CATTLE)),
        )  # fmt: skip
        return (*asked, self.question_from(), *self.question_coming(*self._coming())) if self.row else asked

    def _coming(self) -> Iterator[str]:
        """What is planned for her already."""
        for row in self.coming("animal_as", {"animal_id": self.animal_id}):
            yield f"{said(row['stage'].value, self.register.farm.dialect)} {self.from_words(row)}"
        for row in self.coming("standing", {"animal_id": self.animal_id}):
            yield f"{self.register.name('pen_as', row['pen_id']) or 'no pen'} {self.from_words(row)}"

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The animal, and where she stands."""
        self._unlike_others(answers)
        return list(self._rows(answers, self.animal_id or self.new_id()))

    def told(self, answers: Answers) -> str:
        """What was changed."""
        return "class, pen or name changed" if self.row else f"{answers['name']} is new here"

    def _unlike_others(self, answers: Answers) -> None:
        others = [row for row in kept(self.register) if row["animal_id"] != self.animal_id]
        name, tag = answers["name"], answers["tag"]
        if name != self.name and any(row["name"].lower() == name.lower() for row in others):
            raise Wrong("name", f"There is an animal {name} already. Type another name, as {name} 2.")
        own = self.row.get("tag", "")
        same = next((row["name"] for row in others if tag not in ("", own) and row["tag"].lower() == tag.lower()), None)
        if same:
            raise Wrong("tag", f"{same} has the tag {tag} already. Look at the tag again, or leave it empty.")

    def _rows(self, answers: Answers, animal_id: UUID) -> Iterator[RowDraft]:
        if not self.row:
            yield RowDraft("animal", {"id": animal_id})
        same = {"animal_id": animal_id}
        values = {each: answers[each] for each in ("name", "stage", "tag", "species")}
        yield from self.dated("animal_as", answers, same, values)
        yield from self.dated("standing", answers, same, {"pen_id": answers["pen_id"]})


class DetailSheet(OneAnimal):
    """What is good to know of an animal."""

    @property
    def title(self) -> str:
        """Which animal."""
        return f"{self.name}  birth, calving, breed. Everything may be left empty"

    def questions(self) -> tuple[Question, ...]:
        """All of it may be left out."""
        day, hint = maybe_day(self.today), "as 5 Mar 2026, or 8 weeks ago; may be left empty"
        mothers = tuple(
            (row["name"], row["animal_id"]) for row in kept(self.register) if row["animal_id"] != self.animal_id
        )
        return (
            Question("born_on", "born on", day, hint, day_words(self.row.get("born_on"))),
            Question("breed", "breed", lambda text: words(text, 40), first=self.breeding.get("breed", "")),
            Question("calved_on", "calved last on", day, hint, day_words(self.row.get("calved_on"))),
            pick("dam_id", "calf of", (("not known", None), *mothers), self.breeding.get("dam_id")),
            yes_or_no("adult_only", "no child alone with her", first=self.row.get("adult_only", False)),
            yes_or_no("two_people", "two people for her", first=self.row.get("two_people", False)),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """What is known of her."""
        for name, most in (("born_on", "born"), ("calved_on", "calved")):
            if answers[name] and answers[name] > self.today:
                raise Wrong(name, f"{day_words(answers[name])} is still to come; she cannot have {most} then.")
        of_her = {each: answers[each] for each in ("born_on", "calved_on", "adult_only", "two_people")}
        bred = {each: answers[each] for each in ("breed", "dam_id")}
        same = {"animal_id": self.animal_id}
        rows = self.dated("animal_as", answers, same, of_her)
        return [*rows, *self.dated("breeding", answers, same, bred)] if self.breeding or any(bred.values()) else rows

    def told(self, answers: Answers) -> str:  # noqa: ARG002
        """What was changed."""
        return "birth, calving or breed changed"
