"""A calving that was another time, or another number, than was written: it is written again, and the clocks follow."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from uuid import UUID

from store.book.drafts import Draft, RowDraft
from store.book.facts.calves import Birth
from store.book.reading.births import KnownBirth
from store.book.reading.watches import Watch
from store.book.register import Register
from store.book.turn import local
from store.book.words import FEEDING
from store.herd.animal import OneAnimal, kept
from store.herd.answers import NAME_MOST, words
from store.herd.birth import LOOK_NAME, SECOND, looked_until
from store.herd.birth_words import after_words, typed_when, when_words
from store.herd.leaving import LeavingSheet
from store.herd.moments import HOW, Happened, happened
from store.herd.newborn import ALIVE, DEAD, YOUNG, Newborn, nameless, newborn_rows
from store.herd.sheet import Answers, Choices, Question, Wrong, pick
from store.round.calving import born, looks_after, moved_looks
from store.round.confirm import Hand

LIVES: Choices = ((ALIVE, ALIVE), (DEAD, DEAD))


class CalvingAgain(OneAnimal):
    """When, who of them lives, and one more."""

    KEPT = True

    def __init__(self, register: Register, animal_id: UUID, known: KnownBirth, watches: Sequence[Watch]) -> None:
        """Of a mother, with what is written. watches: what is still to be looked at."""
        super().__init__(register, animal_id)
        self.mother_id, self.known, self.more_id = animal_id, known, self.new_id()
        self.waiting: Mapping[UUID, Watch] = {watch.step_id: watch for watch in watches}
        self.was = Happened(known.birth.at, known.birth.since)
        self.young = YOUNG.get(self.row["species"], "young one")

    @property
    def title(self) -> str:
        """Whose calving."""
        return f"{self.name}'s calving, {when_words(self.was, self.zone)}: what was otherwise? Both stay in the book"

    def questions(self) -> tuple[Question, ...]:
        """When; each that was written as alive; one more."""
        now, zone = self.register.at, self.zone
        lives = (pick(id_.hex, name, LIVES) for id_, name in self._calves().items())
        return (
            Question("when", "when", lambda text: happened(text, now, zone), f"as {HOW}",
                     typed_when(self.was, zone), was=self.was),
            *lives,
            pick("more", "one more was born", SECOND),
            Question("name", "its name", lambda text: words(text, NAME_MOST), "may be left empty"),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """Who does not live is not kept; one more is; the day, where that is another one. Raises Wrong."""
        if answers["when"] == self.was and self._birth(answers) == self.known.birth:
            raise Wrong("when", "Nothing here differs from what the book holds. Type when it was, or Esc leaves.")
        return list(self._rows(answers))

    def entries(self, answers: Answers, hand: Hand) -> Sequence[Draft]:
        """The calving again, under its own step, and what nobody has looked at yet by its new time."""
        birth, step_id, farm = self._birth(answers), self.known.step_id, self.register.farm
        after = looks_after(hand, self.mother_id, birth, step_id, farm)
        again = born(hand, self.mother_id, birth, step_id, self.known.entry_id)
        return [again, *moved_looks(self._before(hand), after, self.waiting)]

    def entries_back(self, answers: Answers, hand: Hand) -> Sequence[Draft]:
        """As it was written before."""
        known, before = self.known, {each.step_id: each for each in self._before(hand)}
        back = [before.get(each.step_id) for each in self.entries(answers, hand)[1:]]
        new = [each for each in super().entries_back(answers, hand)[1:] if each.step_id not in before]
        return [born(hand, self.mother_id, known.birth, known.step_id), *filter(None, back), *new]

    def says(self, answers: Answers, hand: Hand) -> Sequence[str]:
        """By when what has to be looked at."""
        named = self._calves() | ({self.more_id: self._more_name(answers)} if answers["more"] == ALIVE else {})
        return after_words(self.register, self.entries(answers, hand)[1:], named)

    def told(self, answers: Answers) -> str:
        """What differs: when it was, who was born dead, who else was born."""
        when: Happened = answers["when"]
        moved = f"calved {when_words(when, self.zone)}, not {when_words(self.was, self.zone)}"
        dead = [f"{name} was born dead" for id_, name in self._calves().items() if answers[id_.hex] == DEAD]
        more = {ALIVE: f"{self._more_name(answers)} was born too", DEAD: "one more was born dead"}
        return "; ".join([*([] if when == self.was else [moved]), *dead, *filter(None, [more.get(answers["more"])])])

    def _calves(self) -> dict[UUID, str]:
        """Those that were written as alive and are here."""
        here = {row["animal_id"]: row["name"] for row in kept(self.register)}
        return {id_: here[id_] for id_, alive in self.known.birth.calves if id_ and alive and id_ in here}

    def _birth(self, answers: Answers) -> Birth:
        when: Happened = answers["when"]
        was = self.known.birth.calves
        again = tuple((id_, alive and (id_ is None or answers.get(id_.hex, ALIVE) == ALIVE)) for id_, alive in was)
        more = {ALIVE: ((self.more_id, True),), DEAD: ((None, False),)}.get(answers["more"], ())
        return Birth(when.since, when.at, (*again, *more))

    def _before(self, hand: Hand) -> tuple[Draft, ...]:
        return looks_after(hand, self.mother_id, self.known.birth, self.known.step_id, self.register.farm)

    def _rows(self, answers: Answers) -> Iterator[RowDraft]:
        day = local(answers["when"].at, self.zone).date()
        lives = {id_: name for id_, name in self._calves().items() if answers[id_.hex] == ALIVE}
        for id_ in self._calves():
            if id_ not in lives:
                gone = LeavingSheet(self.register, id_)
                yield from gone.rows({"how": "died", "words": ""})
        if day != local(self.was.at, self.zone).date():
            yield from self.dated("animal_as", answers, {"animal_id": self.mother_id}, {"calved_on": day})
            for id_ in lives:
                yield from self.dated("animal_as", answers, {"animal_id": id_}, {"born_on": day})
        yield from self._looks(answers)
        yield from self._more(answers, day)

    def _looks(self, answers: Answers) -> Iterator[RowDraft]:
        """The looks at her in every round end with the four days."""
        was, last = (looked_until(each, self.zone) for each in (self.was, answers["when"]))
        hers = (row for row in self.register.all("look_as") if row["animal_id"] == self.mother_id)
        for row in hers:
            if row["name"] == LOOK_NAME and row["until_on"] == was:
                yield from self.dated("look_as", answers, {"look_id": row["look_id"]}, {"until_on": last})

    def _more(self, answers: Answers, day: date) -> Iterator[RowDraft]:
        name = self._more_name(answers)
        if answers["more"] != ALIVE:
            return
        if any(row["name"].lower() == name.lower() for row in kept(self.register)):
            raise Wrong("name", f"There is an animal {name} already. Type another name.")
        yield from newborn_rows(
            Newborn(self.more_id, name, "", day, None, self._milked()), self.mother_id, self.register
        )

    def _milked(self) -> bool:
        plans = (self.register.get("milk_plan", self.mother_id, slot) for slot in FEEDING)
        return any(plan and plan["milked"] for plan in plans)

    def _more_name(self, answers: Answers) -> str:
        return str(answers["name"]) or nameless(self.register, self.name, self.young, set())
