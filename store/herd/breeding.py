"""Served, in calf, due: the day is reckoned from the service and the breed, unless it is typed."""

from collections.abc import Iterator, Sequence
from datetime import date

from store.book.drafts import RowDraft
from store.book.words import Stage
from store.herd.animal import OneAnimal
from store.herd.bulling import short_day
from store.herd.counted_days import close_up_days, dry_days
from store.herd.days import day_words, maybe_day
from store.herd.sheet import Answers, Question, Wrong, yes_or_no
from store.husbandry.dates.gestation import (
    WINDOW_DAYS,
    Gestation,
    before,
    calved_by_percent,
    days_to_calving,
    due_on,
    gestation_of,
    window,
)
from store.husbandry.dates.heats import next_heat
from store.round.confirm import Hand
from store.round.dialect import said


class BreedingSheet(OneAnimal):
    """When she was served, and whether she is in calf."""

    @property
    def title(self) -> str:
        """Whose."""
        return f"{self.name}  served, in calf, due. {self._proposal_words()}"

    def questions(self) -> tuple[Question, ...]:
        """Served, in calf, and when she is due if somebody knows better."""
        served, due = self.breeding.get("served_on"), self.breeding.get("due_on")
        return (
            Question("served_on", "served on", maybe_day(self.today), "as 14 Jan 2026, yesterday; empty: not known",
                     day_words(served), was=served),
            yes_or_no("in_calf", "in calf", first=bool(due), hint="yes once a scan, or no heat since, says so"),
            Question("due_on", "due on", maybe_day(self.today, to_come=True),
                     "empty: reckoned from her service; typed, it wins", day_words(due), was=due),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """What she carries."""
        served = answers["served_on"]
        if served and served > self.today:
            raise Wrong("served_on", f"{day_words(served)} is still to come; she cannot have been served then.")
        found = {"served_on": served, "due_on": self._due(answers)}
        if not self.breeding and not any(found.values()):
            return []
        return self.dated("breeding", answers, {"animal_id": self.animal_id}, found)

    def told(self, answers: Answers) -> str:
        """`served 14 Jan 2026; in calf, due 24 Oct 2026`."""
        served, due = answers["served_on"], self._due(answers)
        parts = (f"served {day_words(served)}" if served else "", f"in calf, due {day_words(due)}" if due else "")
        return "; ".join(filter(None, parts)) or "not in calf, or not known"

    def says(self, answers: Answers, hand: Hand) -> Sequence[str]:  # noqa: ARG002
        """What follows from it, by the farm's own day counts."""
        return list(self._says(answers))

    def _says(self, answers: Answers) -> Iterator[str]:
        served, due = answers["served_on"], self._due(answers)
        if served:
            reckoned, carries = self._reckoned(served), self._carries.days(first_calf=self._first_calf)
            first, last = window(reckoned)
            left = days_to_calving(carries, (self.today - served).days)
            yield (f"by her service {carries} days ({self._carries.breed}): due {short_day(reckoned)}, "
                   f"{_in_days(int(left))}; 95 of 100 between {short_day(first)} and {short_day(last)}")  # fmt: skip
            if due and due != reckoned:
                yield f"the day that stands here is {abs((due - reckoned).days)} days {_side(due, reckoned)} that"
        if due:
            yield from self._before(due)
        elif served:
            first, last = next_heat(served)
            bulling = said("bulling", self.register.farm.dialect)
            yield f"if it did not hold, she is {bulling} again {short_day(first)} to {short_day(last)}"

    def _before(self, due: date) -> Iterator[str]:
        over = (self.today - due).days
        if abs(over) <= WINDOW_DAYS:
            yield f"by now {calved_by_percent(over):.0f} of 100 cows have calved"
        dry, close_up = dry_days(self.register), close_up_days(self.register)
        if self.row["stage"] is Stage.IN_MILK:
            yield f"dry off {day_words(before(due, dry))}, {dry} days before"
        yield f"fed for calving from {day_words(before(due, close_up))}, {close_up} days before"

    def _due(self, answers: Answers) -> date | None:
        """The typed day, else the reckoned one. Raises Wrong where in calf and due do not agree."""
        typed: date | None = answers["due_on"]
        if not answers["in_calf"]:
            if typed and typed != self.breeding.get("due_on"):
                raise Wrong("in_calf", "A day due is typed, and that she is not in calf. Pick yes, or empty the day.")
            return None
        if typed is None and answers["served_on"] is None:
            raise Wrong("due_on", "When she was served is not known. Type when she is due, as 24 Oct, or in 3 weeks.")
        return typed or self._reckoned(answers["served_on"])

    def _reckoned(self, served: date) -> date:
        return due_on(served, self._carries.days(first_calf=self._first_calf))

    def _proposal_words(self) -> str:
        served = self.breeding.get("served_on")
        return (
            f"By her service due {day_words(self._reckoned(served))}" if served else "Due is reckoned from her service"
        )

    @property
    def _carries(self) -> Gestation:
        return gestation_of(self.breeding.get("breed", ""))

    @property
    def _first_calf(self) -> bool:
        return self.row.get("stage") is Stage.HEIFER and self.row.get("calved_on") is None


def _side(day: date, of: date) -> str:
    return "before" if day < of else "after"


def _in_days(left: int) -> str:
    days = f"{abs(left)} {'day' if abs(left) == 1 else 'days'}"
    return f"in {days}" if left >= 0 else f"{days} ago"
