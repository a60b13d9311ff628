"""M at a feed step whose amount is being changed: hold it, step back, end it here, what it is for."""

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import islice

from msgspec.structs import replace

from store.book.facts.feed import PlanRow
from store.book.reading.plan_notes import plan_notes
from store.book.register import read_register
from store.book.words import State
from store.herd.taking_back import as_before
from store.husbandry.why import Value, given
from store.ration.following import Act, Here, Meal, changed_by, course_of, drafts, under_way
from store.round.change import PLAN_CHANGED, with_rows
from store.round.confirm import noted
from store.round.saying import exact
from store.round.steps import FeedStep
from tui.changed import Changed
from tui.page import Line, Role, Size, wrapped
from tui.place import Place, Rooms
from tui.ration.starting import STARTED
from tui.walk.lamp import Lamp
from tui.walk.picking import Picking
from tui.words import day, in_quarters, measured, when
from tui.yard.wording import Wording

ACTS = {
    Act.HOLD: "Hold it for a day: as the last time, each later step a day later",
    Act.BACK: "Step back: as before the step fed last, that one again a day later",
    Act.END: "End it here: it stays at this amount, no later step comes",
}
REASON = "What it is for: type it"
NOTES_MOST, NOTES_READ, NOTES_BACK = 4, 60, timedelta(days=60)
"""So much of what was said of their plan is shown, and looked through; no change is longer. Common practice."""
IS_FOR, WAS = "the change is for", ": the change was"
"""What the notes of a change say, besides how they are started."""
STEPS_SHOWN = 6
PLANNED = "the feed plan, as the change wrote it"
ANEW = "The plan has moved on since this was shown. It is shown anew, and nothing is written yet."


def is_of_change(words: str) -> bool:
    """Whether a note of the plan is of a change: others are of anything else that was set up for her."""
    return words.startswith((IS_FOR, STARTED)) or WAS in words


class Following(Picking):
    """Each meal of the change as it is planned; below, as it would be. Nothing is written before Enter."""

    ENTER_WORDS = "write it"

    def __init__(self, rooms: Rooms, lamp: Lamp, step: FeedStep) -> None:
        """Over a lamp at a feed step. Raises BookError."""
        super().__init__(rooms, lamp)
        self.lamp, self.step = lamp, step
        self._look()
        self.here = Here(self.walker.turn, step.state is State.DONE, self.walker.zone)

    def _look(self) -> None:
        """Its meals as the book stands now, and what was said of them."""
        book, now = self.walker.book, self.walker.book.clock.now()
        self.register = read_register(book.desk, now)
        self.meals = under_way(self.register, self.step.subject, now)
        said = plan_notes(book.desk, self.step.subject, now - NOTES_BACK, NOTES_READ)
        self.notes = [note for note in said if is_of_change(note.words)][:NOTES_MOST]

    def heading(self) -> str:
        """Whose change."""
        each = ", a head" if len(self.step.heads) > 1 else ""
        return f"CHANGE  {self.step.name}{each}, every meal of it"

    def choices(self) -> list[str]:
        """What can be done."""
        return [*ACTS.values(), REASON]

    def above(self, size: Size) -> list[Line]:
        """What was said of it, and the steps to come."""
        said = (f"{note.words}  ({when(note.at, self.walker.zone)} {self.walker.name_of(note.person_id)})"
                for note in self.notes)  # fmt: skip
        rows = [row for each in said for row in wrapped(each, size.width, Role.QUIET, "  ")]
        planned = (self._course(meal, ()) for meal in self.meals)
        return [*rows, *(row for each in planned for row in wrapped(each, size.width, Role.TEXT, "  ")), ()]

    def below(self, size: Size) -> list[Line]:
        """What the marked line makes of it."""
        act = self.act
        if act is None:
            return []
        words = (f"THEN  {self._course(meal, added)}" for meal, added in self._rows(act))
        return [(), *(row for each in words for row in wrapped(each, size.width, Role.STRONG, "  "))]

    @property
    def act(self) -> Act | None:
        """The marked one; None: no line is marked, or the last."""
        return list(ACTS)[self.row] if self.row is not None and self.row < len(ACTS) else None

    def _rows(self, act: Act) -> Iterator[tuple[Meal, tuple[PlanRow, ...]]]:
        return zip(self.meals, changed_by(act, self.meals, self.here), strict=True)

    def _course(self, meal: Meal, added: tuple[PlanRow, ...]) -> str:
        """`dairy nuts, morning: Wed 11 Mar 1 1/2 scoops, Thu 12 Mar 1 3/4 scoops`."""
        shown = self._days(meal, added)
        more = ", ..." if len(shown) > STEPS_SHOWN else ""
        words = ", ".join(f"{day(on)} {self._amount(meal, kg)}" for on, kg in shown[:STEPS_SHOWN])
        return f"{meal.name}, {meal.slot}: {words}{more}"

    def _days(self, meal: Meal, added: tuple[PlanRow, ...]) -> list[tuple[date, float]]:
        """The first days on which it is otherwise, one more than are shown. [kg]"""
        rows, now = with_rows(meal.rows, added), self.register.at
        return list(islice(course_of(rows, meal.slot, self.here.first, now, self.walker.zone), STEPS_SHOWN + 1))

    def numbers(self) -> tuple[Value, ...]:
        """What each meal gives from each day on, as it is planned."""
        return tuple(
            given(kg, f"{meal.name}, {meal.slot}, from {day(on)} on", "kg", PLANNED)
            for meal in self.meals
            for on, kg in self._days(meal, ())[:STEPS_SHOWN]
        )

    def numbers_of(self) -> str:
        """Whose."""
        return f"the change of {self.step.name}"

    def _amount(self, meal: Meal, kg: float) -> str:
        number = round(kg / meal.told.holds_kg, 2) if meal.told and meal.told.holds_kg else None
        if not kg:
            return "none"
        even = meal.told and number is not None and in_quarters(number)
        return measured(number, meal.told) if even and meal.told and number else exact(kg, self.walker.farm.units)

    def picked(self, row: int) -> Place:
        """Write it, with a note for the next person; the last line asks for words."""
        return self._write(list(ACTS)[row]) if row < len(ACTS) else ChangeReason(self)

    def _write(self, act: Act) -> Place:
        subject, shown = self.step.subject, self.meals
        self._look()
        if self.meals != shown:
            return self.say(ANEW)
        rows = [row for meal, added in self._rows(act) for row in drafts(self.register, subject, meal, added)]
        if not rows:
            return self.say("There is no later step to change. Backspace goes back.")
        names = ", ".join(dict.fromkeys(meal.name for meal in self.meals))
        words = f"{names}{WAS} {act.value}"
        before = tuple(as_before(self.register, rows))
        unread = self.walker.change(rows, subject, words, tell=True)
        self.walker.changes.append(Changed(words, subject, before))
        return self.stood().say(unread or f"{names}: {act.value}. F, then U takes it back.")

    def stood(self) -> Place:
        """The step, drawn anew."""
        return self.rooms.step_or(self.step.step_id, self.rooms.first())


class ChangeReason(Wording):
    """What a change under way is for."""

    MOST = 80

    def __init__(self, following: Following) -> None:
        """Over what can be done with it."""
        super().__init__(following.rooms, following)
        self.following = following

    def heading(self) -> str:
        """Whose."""
        return f"CHANGE of {self.following.step.name}: what it is for, as less milk, dry in three weeks"

    def enter(self) -> Place:
        """Keep it with the plan."""
        if not self.text.strip():
            return self.say("Nothing is typed. Type what it is for, or Esc goes back.")
        note = noted(self.walker.hand(), self.following.step.subject, f"{IS_FOR} {self.text.strip()}", tell=False)
        problem = self.walker.write(replace(note, reason=PLAN_CHANGED))
        return self.say(problem) if problem else self.following.stood().say("Kept with the change.")
