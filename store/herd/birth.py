"""A calf, lamb or kid is born, alive or dead: its mother has calved, it stands with her, and clocks run from then."""

from collections.abc import Iterator, Sequence
from datetime import date
from uuid import UUID

from store.book.drafts import Draft, RowDraft
from store.book.facts.calves import Birth
from store.book.register import Register
from store.book.turn import local
from store.book.words import FEEDING, Asks, Species, Stage
from store.herd.animal import OneAnimal, kept, stages
from store.herd.answers import NAME_MOST, a_count, maybe, words
from store.herd.birth_words import after_words, when_words
from store.herd.moments import HOW, Happened, happened
from store.herd.newborn import ALIVE, DEAD, NONE, YOUNG, Newborn, nameless, newborn_rows
from store.herd.sheet import Answers, Choices, Question, Wrong, pick, yes_or_no
from store.round.amount import Unreadable
from store.round.calving import JUST_CALVED, born, looks_after
from store.round.confirm import Hand

MOTHERS = (Stage.IN_MILK, Stage.SUCKLER, Stage.OTHER)
LIVES: Choices = tuple((each, each) for each in (ALIVE, DEAD, NONE))
SECOND: Choices = (("no", None), (ALIVE, ALIVE), (DEAD, DEAD))
LOOK_NAME = "just calved: up, ears, cleansing, quarters, calf"
MILKED: Choices = (
    ("not yet", ()),
    ("morning and evening", FEEDING),
    *((f"in the {slot}", (slot,)) for slot in FEEDING),
)


def looked_until(calved: Happened, zone: str) -> date:
    """The last day on which she is asked about as one that has just calved."""
    return local(calved.at + JUST_CALVED, zone).date()


class BirthSheet(OneAnimal):
    """When, what was born of whom, and what becomes of the mother."""

    def __init__(self, register: Register, animal_id: UUID | None) -> None:
        """Of one mother; what is about to be written has its ids already, so that rows and entries agree."""
        super().__init__(register, animal_id)
        self.step_id, self.calf_ids = self.new_id(), (self.new_id(), self.new_id())
        self.young = YOUNG.get(self.row["species"], "young one")

    @property
    def title(self) -> str:
        """Whose."""
        return f"{self.name} HAS CALVED  up, licked dry, and has it sucked? See that first"

    def questions(self) -> tuple[Question, ...]:
        """When, the young, then the mother."""
        name = f"may be left empty: {nameless(self.register, self.name, self.young, set())}"
        first = Stage.SUCKLER if self.row["stage"] is Stage.SUCKLER else Stage.IN_MILK
        mother = first if self.row["species"] is Species.CATTLE else Stage.OTHER
        milked = self._milked_now() or (self._of_others() if mother is Stage.IN_MILK else ())
        return (
            Question("when", "when", self._when, f"as {HOW}"),
            pick("first", f"the {self.young}", LIVES, hint="of one that is dead nothing is set up"),
            Question("name", "its name", lambda text: words(text, NAME_MOST), name),
            Question("tag", "ear tag", lambda text: words(text, 40), "may be left empty"),
            pick("second", "a second one", SECOND),
            Question("second_name", "its name", lambda text: words(text, NAME_MOST), "may be left empty"),
            pick("mother", "she is now", self._classes(), mother),
            pick("milked", "she is milked", MILKED, milked, "from the next such round on"),
            Question("from_day", "shut away at night from", maybe(a_count(0, 400, "days")),
                     "day of its life; many wait 2 to 4 weeks; empty: in no night yet"),
            yes_or_no("looks", "looked at in every round", first=True, hint="for four days; it asks how she is"),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The young that live, their mother, her milking, and the looks at her."""
        young = [row for each in self._young(answers) for row in newborn_rows(each, self._id, self.register)]
        return [*young, *self._mother(answers), *self._milking(answers), *self._looks(answers)]

    def entries(self, answers: Answers, hand: Hand) -> Sequence[Draft]:
        """The calving, and what is looked at after it."""
        birth = self._birth(answers)
        after = looks_after(hand, self._id, birth, self.step_id, self.register.farm)
        return [born(hand, self._id, birth, self.step_id), *after]

    def says(self, answers: Answers, hand: Hand) -> Sequence[str]:
        """By when what has to be looked at."""
        return after_words(self.register, self.entries(answers, hand)[1:], self._names(answers))

    def told(self, answers: Answers) -> str:
        """When, and what was born."""
        lives = list(self._names(answers).values())
        dead = sum(answers[each] == DEAD for each in ("first", "second"))
        found = ", ".join((*lives, *([f"{dead} dead"] if dead else [])))
        return f"has calved {when_words(answers['when'], self.zone)}: {found or NONE}"

    @property
    def _id(self) -> UUID:
        assert self.animal_id is not None  # noqa: S101 a mother is there
        return self.animal_id

    def _when(self, text: str) -> Happened:
        if not text.strip():
            raise Unreadable(f"When she calved is needed, if only about. Type it as {HOW}.")
        return happened(text, self.register.at, self.zone)

    def _classes(self) -> Choices:
        offered = (*MOTHERS, self.row["stage"])
        return tuple(each for each in stages(self.register) if each[1] in offered)

    def _born_on(self, answers: Answers) -> date:
        return local(answers["when"].at, self.zone).date()

    def _alive(self, answers: Answers) -> Iterator[tuple[UUID, str, str]]:
        """Each that lives: its id, the name typed, the tag."""
        asked = (("first", "name", "tag"), ("second", "second_name", None))
        for id_, (which, name, tag) in zip(self.calf_ids, asked, strict=True):
            if answers[which] == ALIVE:
                yield id_, answers[name], answers[tag] if tag else ""

    def _names(self, answers: Answers) -> dict[UUID, str]:
        found: dict[UUID, str] = {}
        for id_, name, _ in self._alive(answers):
            found[id_] = name or nameless(self.register, self.name, self.young, set(found.values()))
        return found

    def _birth(self, answers: Answers) -> Birth:
        when: Happened = answers["when"]
        alive = [(id_, True) for id_ in self._names(answers)]
        dead = [(None, False)] * sum(answers[each] == DEAD for each in ("first", "second"))
        return Birth(when.since, when.at, (*alive, *dead) or ((None, False),))

    def _young(self, answers: Answers) -> Iterator[Newborn]:
        names = self._names(answers)
        taken = {row["name"].lower() for row in kept(self.register)}
        for id_, typed, tag in self._alive(answers):
            name = names[id_]
            if name.lower() in taken:
                which = "name" if id_ == self.calf_ids[0] else "second_name"
                raise Wrong(which, f"There is an animal {typed} already. Type another name.")
            taken.add(name.lower())
            shares = bool(answers["milked"]) or answers["from_day"] is not None
            yield Newborn(id_, name, tag, self._born_on(answers), answers["from_day"], shares)

    def _mother(self, answers: Answers) -> Iterator[RowDraft]:
        same = {"animal_id": self._id}
        yield from self.dated(
            "animal_as", answers, same, {"stage": answers["mother"], "calved_on": self._born_on(answers)}
        )
        if self.breeding.get("due_on"):
            yield from self.dated("breeding", answers, same, {"due_on": None, "served_on": None})

    def _milking(self, answers: Answers) -> Iterator[RowDraft]:
        """The plan of each slot that changes; the pail of her last plan, else the one that another cow has."""
        plans = [self.register.get("milk_plan", self._id, slot) for slot in FEEDING]
        others = [row for row in self.register.all("milk_plan") if row["milked"]]
        pail_id = next((row["pail_id"] for row in (*plans, *others) if row and row["pail_id"]), None)
        for slot, plan in zip(FEEDING, plans, strict=True):
            milked = slot in answers["milked"]
            if milked != bool(plan and plan["milked"]):
                values = {"milked": milked, "pail_id": pail_id if milked else None}
                yield from self.dated("milk_plan", answers, {"animal_id": self._id, "slot": slot}, values)

    def _looks(self, answers: Answers) -> Iterator[RowDraft]:
        """One look in either round, until she is no more just calved."""
        last = looked_until(answers["when"], self.zone)
        for slot in FEEDING if answers["looks"] and last >= self.today else ():
            look_id = self.new_id()
            values = {"name": LOOK_NAME, "asks": Asks.HOW, "slot": slot, "every_days": 1, "until_on": last}
            yield RowDraft("look", {"id": look_id})
            yield RowDraft("look_as", {**values, "look_id": look_id, "animal_id": self._id, "in_use": True})

    def _milked_now(self) -> tuple[str, ...]:
        plans = {slot: self.register.get("milk_plan", self._id, slot) for slot in FEEDING}
        return tuple(slot for slot, plan in plans.items() if plan and plan["milked"])

    def _of_others(self) -> tuple[str, ...]:
        """When the farm milks: the slots in which it milks any cow."""
        return tuple(
            slot for slot in FEEDING if any(r["milked"] and r["slot"] == slot for r in self.register.all("milk_plan"))
        )
