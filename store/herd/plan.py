"""What an animal, or each head of a pen, gets of a feed in the morning and in the evening."""

from collections.abc import Iterator, Sequence
from typing import Any
from uuid import UUID

from store.book.drafts import RowDraft, Subject
from store.book.facts.feed import Feed, Portion, Told
from store.book.register import Register, Values
from store.book.words import EVENING, MORNING
from store.herd.answers import a_count
from store.herd.feed import feeds_in_use
from store.herd.sheet import Answers, Choices, Question, Wrong, YardSheet, pick
from store.herd.step_limit import days_needed
from store.husbandry.change import given_at_kg
from store.round.amount import Unreadable, feed_amount
from store.round.change import days_on
from store.round.feed import ROUNDING, due_feed
from store.round.measured import IF_RIGHT, SURE, limit_of
from store.round.saying import exact

SLOTS = (MORNING, EVENING)
HAY_ASKED_KG = 25.0
"""More hay than this for one head at one feeding is asked about. [kg] Common practice."""
AS_WEIGHED = "what it was weighed with"
"""Told in the measure that was last weighed with the feed; by weight where none was."""


class PlanSheet(YardSheet):
    """One feed for one animal or pen."""

    def __init__(self, register: Register, subject: Subject, name: str, feed_id: UUID | None = None) -> None:
        """Of an animal or pen by its name; feed_id None: a feed it does not get yet."""
        super().__init__(register)
        self.of, self.name, self.feed_id = subject, name, feed_id

    @property
    def title(self) -> str:
        """Whose."""
        return f"{self.name} GETS  " + ("for each head" if self.of.pen_id else "beside what its pen gets as one")

    def subject(self) -> Subject:
        """The animal or pen."""
        return self.of

    def questions(self) -> tuple[Question, ...]:
        """Which feed, in which measure, how much when, and over how many days."""
        feeds = tuple((row["name"], row["feed_id"]) for row in feeds_in_use(self.register))
        plans = [self._plan(slot, self.feed_id) for slot in SLOTS]
        measure = next((plan["measure_id"] for plan in plans if plan), AS_WEIGHED)
        return (
            pick("feed_id", "feed", feeds, self.feed_id),
            pick("measure", "counted in", self._measures(), measure, "planned in weight, whatever it is counted in"),
            *(Question(slot, slot, str, "as 2, 1 1/2, 1.4 kg; empty: nothing", self._amount(slot)) for slot in SLOTS),
            Question("days", "spread over", a_count(1, 60, "days"), "days, in equal steps; 1: at once", "1"),
            self.question_from(),
            *self.question_coming(*self._coming()),
        )

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """A row for each step of each slot. Raises Wrong also where a step goes further than the farm lets it."""
        barred = self._barred(answers["feed_id"])
        if barred:
            raise Wrong("feed_id", barred)
        due = {slot: self._due_kg(slot, answers) for slot in SLOTS}
        self._ask(due, answers)
        if not any(due.values()) and not any(self._plan(slot, answers["feed_id"]) for slot in SLOTS):
            raise Wrong(MORNING, "Neither morning nor evening has an amount. Type one, or Esc goes back.")
        self._in_steps(due, answers)
        return [row for slot in SLOTS for row in self._slot(slot, due[slot], answers)]

    def told(self, answers: Answers) -> str:
        """What it gets now: in its measure, and in weight."""
        parts = (f"{slot} {self._words(slot, answers)}" for slot in SLOTS)
        over = f", in equal steps over {answers['days']} days" if answers["days"] > 1 else ""
        return f"gets {self.register.name('feed_as', answers['feed_id'])}: {', '.join(parts)}{over}"

    def _words(self, slot: str, answers: Answers) -> str:
        """`2 1/2 scoops = 1.70 kg`, `1.40 kg`, `none`."""
        kg = self._due_kg(slot, answers)
        if kg is None:
            return "none"
        told = self._told(self._measure(answers), answers["feed_id"])
        if told is None or not told.holds_kg:
            return exact(kg, self.units)
        return f"{exact(kg, self.units)} = {kg / told.holds_kg:.2f} {told.plural}"

    def _slot(self, slot: str, due_kg: float | None, answers: Answers) -> list[RowDraft]:
        before = self._plan(slot, answers["feed_id"])
        was_kg = before["due_kg"] if before else None
        same = self._same(slot, answers["feed_id"])
        if due_kg is None and was_kg is None and not self.coming("feed_plan", same):
            return []
        begins, days = answers.get(self.FROM) or self.register.at, answers["days"]
        told: dict[str, Any] = {
            "measure_id": self._measure(answers),
            "position": position_of(self.register, self.of, answers["feed_id"]),
        }
        between = (given_at_kg(was_kg or 0.0, due_kg or 0.0, day, days) for day in range(1, days))
        amounts = [*between, due_kg]
        steps = [(days_on(begins, day, self.zone), told | {"due_kg": kg}) for day, kg in enumerate(amounts)]
        return self.in_steps("feed_plan", answers, same, steps)

    def _same(self, slot: str, feed_id: UUID | None) -> dict[str, Any]:
        return {"animal_id": self.of.animal_id, "pen_id": self.of.pen_id, "slot": slot, "feed_id": feed_id}

    def _coming(self) -> Iterator[str]:
        """What is planned of this feed already."""
        for slot in SLOTS if self.feed_id else ():
            for row in self.coming("feed_plan", self._same(slot, self.feed_id)):
                kg = "none" if row["due_kg"] is None else exact(row["due_kg"], self.units)
                yield f"{slot} {kg} {self.from_words(row)}"

    def _ask(self, due: dict[str, float | None], answers: Answers) -> None:
        """More than a meal should be is asked about, as at the step; ! behind it is the answer."""
        feed = self.register.get("feed_as", answers["feed_id"]) or {}
        most = HAY_ASKED_KG if feed.get("baled") else limit_of(self.register.farm.meal_limit_kg)
        for slot, kg in due.items():
            if kg is not None and kg > most and not answers[slot].rstrip().endswith(SURE):
                found, limit = exact(kg, self.units), exact(most, self.units)
                raise Wrong(
                    slot, f"That is {found} for one head in the {slot}; up to {limit} is not asked about. {IF_RIGHT}"
                )

    def _in_steps(self, due: dict[str, float | None], answers: Answers) -> None:
        """A step beyond what the farm has set is refused, with the days it takes; ! lets a feed come down at once."""
        told = self._told(self._measure(answers), answers["feed_id"])
        for slot in SLOTS:
            was_kg = (self._plan(slot, answers["feed_id"]) or {}).get("due_kg") or 0.0
            more_kg = (due[slot] or 0.0) - was_kg
            is_sure = more_kg < 0 and answers[slot].rstrip().endswith(SURE)
            found = days_needed(
                self.register, answers["feed_id"], was_kg, was_kg + more_kg, told.holds_kg if told else None
            )
            if was_kg and found and answers["days"] < found[0] and not is_sure:
                raise Wrong("days", self._too_far(slot, more_kg, *found))

    def _too_far(self, slot: str, more_kg: float, days: int, step_kg: float) -> str:
        change = f"{exact(abs(more_kg), self.units)} {'more' if more_kg > 0 else 'less'}"
        sure = "" if more_kg > 0 else f" With {SURE} behind the amount it comes down at once."
        limit = exact(step_kg, self.units)
        return f"That is {change} in the {slot}; your limit for one step is {limit}. Type {days} days or more.{sure}"

    def _due_kg(self, slot: str, answers: Answers) -> float | None:
        plan = self._plan(slot, self.feed_id)
        if plan and answers["feed_id"] == self.feed_id and answers[slot] == self._amount(slot):
            same: float | None = plan["due_kg"]
            return same  # left as it stands: the very same weight
        if not answers[slot].strip():
            return None
        feed = self._feed(answers["feed_id"])
        try:
            return feed_amount(
                answers[slot].rstrip(f"{SURE} "), feed, self._told(self._measure(answers), feed.id), self.units
            ).kg
        except Unreadable as problem:
            raise Wrong(slot, str(problem)) from problem

    def _feed(self, feed_id: UUID) -> Feed:
        row = self.register.get("feed_as", feed_id) or {}
        return Feed(feed_id, row.get("name", ""), row.get("soaked", False))

    def _told(self, measure_id: UUID | None, feed_id: UUID) -> Told | None:
        row = self.register.get("measure_as", measure_id)
        if measure_id is None or row is None:
            return None
        weighed = self.register.get("weighing", measure_id, feed_id)
        return Told(measure_id, row["name"], row["plural"], weighed["holds_kg"] if weighed else None)

    def _plan(self, slot: str, feed_id: UUID | None) -> Values | None:
        return self.register.get("feed_plan", self.of.animal_id, self.of.pen_id, slot, feed_id)

    def _amount(self, slot: str) -> str:
        """What it gets now, as it can be typed again."""
        plan = self._plan(slot, self.feed_id)
        if plan is None or plan["due_kg"] is None:
            return ""
        told = self._told(plan["measure_id"], plan["feed_id"])
        due = due_feed(Portion(self._feed(plan["feed_id"]), plan["due_kg"], told), heads=1)
        if told is None or due.measures is None or abs(due.as_shown_kg - due.due_kg) > ROUNDING:
            return exact(plan["due_kg"], self.units)
        return f"{due.measures:g}"

    def _measures(self) -> Choices:
        found = ((row["name"], row["measure_id"]) for row in self.register.all("measure_as"))
        return ((AS_WEIGHED, AS_WEIGHED), *sorted(found), ("by weight", None))

    def _measure(self, answers: Answers) -> UUID | None:
        """The measure it is told in: the one that was last weighed with this feed, unless another is picked."""
        if answers["measure"] != AS_WEIGHED:
            picked: UUID | None = answers["measure"]
            return picked
        weighed = [row for row in self.register.all("weighing") if row["feed_id"] == answers["feed_id"]]
        last = max(weighed, key=lambda row: (row["begins_at"], row["written_at"]), default=None)
        return last["measure_id"] if last else None

    def _barred(self, feed_id: UUID) -> str | None:
        """Why nobody here may have it; None where they may."""
        animals = [row for row in self.register.all("animal_as") if row["kept"] and self._is_fed(row["animal_id"])]
        for row in animals:
            barred = self.register.get("not_for", feed_id, row["species"])
            if barred and barred["barred"]:
                feed = self.register.name("feed_as", feed_id)
                return (
                    f"{feed} is never for {row['species']}, and {row['name']} would get it. Pick another feed, or Esc."
                )
        return None

    def _is_fed(self, animal_id: UUID) -> bool:
        standing = self.register.get("standing", animal_id)
        here = bool(self.of.pen_id and standing and standing["pen_id"] == self.of.pen_id)
        return here or animal_id == self.of.animal_id


def position_of(register: Register, subject: Subject, feed_id: UUID) -> int:
    """Where a feed stands on the screen of whom it is for: as before, or behind the others."""
    plans = [row for row in register.all("feed_plan") if _same(row, subject) and row["due_kg"] is not None]
    own = (row["position"] for row in plans if row["feed_id"] == feed_id)
    return int(next(own, min(max((row["position"] for row in plans), default=0) + 1, 99)))


def _same(row: Values, subject: Subject) -> bool:
    return (row["animal_id"], row["pen_id"]) == (subject.animal_id, subject.pen_id)
