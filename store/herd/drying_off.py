"""A cow is dried off: her last milking, how it steps down before, and what is watched behind it."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime, timedelta
from typing import Any

from store.book.drafts import RowDraft
from store.book.register import Values
from store.book.turn import from_wall
from store.book.words import EVENING, MORNING, Asks, Stage
from store.herd.animal import OneAnimal
from store.herd.answers import words
from store.herd.counted_days import dry_days
from store.herd.dating import Step
from store.herd.days import day_words, maybe_day
from store.herd.sheet import Answers, Choices, Question, Wrong, pick
from store.husbandry.dates.gestation import DRY_LEAST_DAYS, before

WATCHED_DAYS = 14
"""Her udder is looked at so long behind the last milking. Common practice. [d]"""
STEPS: Choices = (
    ("every other milking in the last 7 days", 7),
    ("every other milking in the last 4 days", 4),
    ("each milking until the last", 0),
)
"""Common practice: milked less often, she makes less before she is left. [d]"""
WATCHED = "udder, drying off"
SLOTS = (MORNING, EVENING)


class DryingOffSheet(OneAnimal):
    """Last milking, steps, tubes."""

    @property
    def title(self) -> str:
        """Which cow."""
        return f"DRYING OFF {self.name}  her last milking; tubes and sealants only as your vet says, local rules decide"

    def questions(self) -> tuple[Question, ...]:
        """When, how, and what the vet said of tubes."""
        return (
            Question("last_on", "last milking on", maybe_day(self.today, to_come=True), self._why(),
                     day_words(self._proposed())),
            pick("days", "before that", STEPS, hint="less grain with it: her plan"),
            Question("tubes", "tubes, sealant", lambda text: words(text, 120),
                     "in your vet's words, or empty; how long to withhold: her treatments"),
            *self.question_coming(*(f"dry {self.from_words(row)}" for row in self._planned())),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """She steps down, is milked no more, is dry, and is looked at. Raises Wrong without a day."""
        last_on = answers["last_on"]
        if last_on is None or last_on < self.today:
            raise Wrong("last_on", "The day of her last milking is needed, today or later. Type it as 5 Mar 2026.")
        return list(self._rows(answers))

    def told(self, answers: Answers) -> str:
        """When, how long she is dry, and what the vet said."""
        tubes = f"; tubes: {answers['tubes']}" if answers["tubes"] else ""
        return f"dries off, last milking {day_words(answers['last_on'])}{self._dry_words(answers['last_on'])}{tubes}"

    def _due_on(self) -> date | None:
        due_on: date | None = self.breeding.get("due_on")
        return due_on

    def _proposed(self) -> date | None:
        due_on = self._due_on()
        return max(before(due_on, dry_days(self.register)), self.today) if due_on else None

    def _why(self) -> str:
        due_on = self._due_on()
        if due_on is None:
            return "a day; when she is due is not known"
        days = dry_days(self.register)
        return f"due {day_words(due_on)}, {days} days before are counted here; under {DRY_LEAST_DAYS} is short"

    def _dry_words(self, last_on: date) -> str:
        due_on = self._due_on()
        if due_on is None:
            return ""
        days = (due_on - last_on).days
        return f", {days} days before she is due{' (short)' if days < DRY_LEAST_DAYS else ''}"

    def _planned(self) -> Iterator[Values]:
        """What is planned already of her being dry."""
        rows = self.coming("animal_as", {"animal_id": self.animal_id})
        return (row for row in rows if row["stage"] is Stage.DRY)

    def _rows(self, answers: Answers) -> Iterator[RowDraft]:
        same, last_on, days = {"animal_id": self.animal_id}, answers["last_on"], answers["days"]
        ends = self._begins(last_on + timedelta(days=1))
        if days:
            steps_down = max(self._begins(last_on - timedelta(days=days)), self.register.at)
            yield from self._from(answers, "milk_rhythm", same, (steps_down, {"every": 2}), (ends, {"every": 1}))
        for slot in SLOTS:
            if self.register.get("milk_plan", self.animal_id, slot):
                no_more = {"milked": False, "pail_id": None}
                yield from self._from(answers, "milk_plan", {**same, "slot": slot}, (ends, no_more))
        yield from self._from(answers, "animal_as", same, (ends, {"stage": Stage.DRY}))
        yield from self._watched(answers, ends)

    def _watched(self, answers: Answers, ends: datetime) -> Iterator[RowDraft]:
        """The look that she had when she was dried off before, or a new one."""
        hers = (row for row in self.register.all("look_as") if row["animal_id"] == self.animal_id)
        found = next((row["look_id"] for row in hers if row["name"] == WATCHED), None)
        look_id = found or self.new_id()
        if found is None:
            yield RowDraft("look", {"id": look_id})
        asked = {"name": WATCHED, "asks": Asks.HOW, "slot": MORNING, "every_days": 1, "in_use": True}
        until = {"until_on": answers["last_on"] + timedelta(days=WATCHED_DAYS), "animal_id": self.animal_id}
        yield from self._from(answers, "look_as", {"look_id": look_id}, (ends, asked | until))

    def _from(self, answers: Answers, table: str, same: Mapping[str, Any], *steps: Step) -> list[RowDraft]:
        """As it is until the first step; what was planned otherwise before it is taken back, where that is asked."""
        return self.in_steps(table, answers, same, [(self.register.at, {}), *steps])

    def _begins(self, day: date) -> datetime:
        return from_wall(datetime(day.year, day.month, day.day), self.zone)  # noqa: DTZ001 wall time
