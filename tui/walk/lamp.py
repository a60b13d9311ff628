"""The lamp: one step of the round, and what a key does to it."""

from typing import ClassVar

from store.book.drafts import Draft, Subject
from store.book.words import State
from store.husbandry.why import Value
from store.round.amount import Unreadable
from store.round.confirm import Doubtful
from store.round.measured import SURE
from store.round.steps import Step
from tui.frame import framed
from tui.page import Page, Size
from tui.place import WHY_KEY, YARD_KEYS, Place, Rooms, unless_half_typed
from tui.scroll import Scroll
from tui.telling import step_words
from tui.typed import Typed, begins_amount, is_pick
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, View, go_back
from tui.walk.card import card
from tui.walk.job import More
from tui.walk.jobs import job_for
from tui.walk.shown import Shown
from tui.words import span_words

UNWRITTEN = (State.OPEN, State.ON_PAPER)
"""What Enter writes without anything typed."""
PICKED = "What is picked or marked here"
GONE = "That step is not in this round any more."


class Lamp(Place):
    """The step under the lamp. Enter writes it; digits change it first; nothing else writes."""

    def __init__(self, rooms: Rooms, index: int, *, taken_up: bool = True) -> None:
        """At a step. taken_up: False after leafing, so that the first Enter only takes it up."""
        super().__init__(rooms)
        self.scroll = Scroll(follows=False, up="Page Up", down="Page Down")
        self.step_id, self.came_up_at = self.walker.steps[index].step_id, index
        self.behind = frozenset(
            step.step_id for step in self.walker.steps[: index + 1]
        )  # an entry may change the order
        self.taken_up = taken_up
        self.job = job_for(self.step)
        self.row = self.first_row = self.job.first_row(self.step)
        self.typed: dict[int, Typed] = {}
        self.marks = self.first_marks = self.job.first_marks(self.step)

    @property
    def index(self) -> int:
        """Where the step stands in the walk now; while it is in no walk any more, where it came up."""
        found = (at for at, each in enumerate(self.walker.steps) if each.step_id == self.step_id)
        return next(found, min(self.came_up_at, len(self.walker.steps) - 1))

    def standing(self) -> Place:
        """Here; where the step is not planned any more, at the first that is not recorded."""
        planned = any(each.step_id == self.step_id for each in self.walker.steps)
        return self if planned else self.rooms.first().say(self.said or GONE)

    @property
    def step(self) -> Step:
        """The step we stand at."""
        return self.walker.steps[self.index]

    @property
    def shown(self) -> Shown:
        """The step as it stands on the screen."""
        typed = {row: entry.amount for row, entry in self.typed.items()}
        sure = any(entry.sure for entry in self.typed.values())
        return Shown(self.walker, self.step, typed, self.row, self.marks, sure)

    @property
    def entry(self) -> Typed:
        """What is being typed at the chosen line."""
        return self.typed.setdefault(self.job.typed_row(self.row), Typed())

    @property
    def half_typed(self) -> str:
        """Everything typed, picked or marked here since the step came up, and not yet written."""
        text = " ".join(typed.text for typed in self.typed.values() if typed.text)
        picked = (self.job.ROW_COUNTS and self.row != self.first_row) or self.marks != self.first_marks
        return text or (PICKED if picked else "")

    @property
    def typing(self) -> bool:
        """While an amount is half typed; beside a pick or a mark, letters still open."""
        return any(typed.text for typed in self.typed.values())

    def unwritten(self) -> str:
        """A pick or a mark goes as it came: Esc takes it away."""
        return super().unwritten() if self.typing else f"{PICKED} is not written. Enter writes it, Esc takes it away."

    @property
    def _stands(self) -> bool:
        """Whether the step is written, and nothing is changed here."""
        return (self.step.state not in UNWRITTEN or self.job.is_half_done(self.step)) and not self.half_typed

    @property
    def _is_written(self) -> bool:
        """Whether Enter has nothing to write and goes on; a time that was set is something to write."""
        return self._stands and self.walker.set_at is None

    def takes(self, character: str) -> bool:
        """A digit starts an amount, or picks a line."""
        if self.job.PICKS:
            return is_pick(character) and self._pick(int(character))
        if self.job.TOGGLES:
            return is_pick(character) and self._toggle(int(character))
        asked = self.job.ASKS and character == SURE
        if self.job.DIGITS or asked:
            return self.entry.takes(character, asked=asked)
        return begins_amount(character) and self._no_figure(character)

    def _no_figure(self, character: str) -> bool:
        """A figure at a step that asks for none is not lost in silence."""
        self.say(f"«{character}» is left out: nothing is typed here. Enter: {self.enter_words()}. N writes a note.")
        return True

    def draw(self, size: Size) -> Page:
        """The step, large."""
        return framed(self, card(self.shown, self.job, size), size, self.step)

    def enter(self) -> Place:
        """Write what is shown, then go on to the next open step."""
        if not self.taken_up and not self.half_typed:
            self.taken_up = True
            return self.say("This step is taken up. Enter again writes what is shown.")
        if self._is_written:
            return self.rooms.first(self.index)
        shown, step = self.shown, self.step
        try:
            draft = (self.job.again if self._stands else self.job.draft)(self.walker.hand(), shown, step)
        except (Doubtful, Unreadable) as problem:
            return self.say(str(problem))
        there = self.write(draft)
        return there if there is self else self.job.behind(shown, step, draft, there)

    def write(self, draft: Draft, *, stay: bool = False) -> Place:
        """Write a draft; then the next open step, or this one again, wherever it stands now."""
        problem = self.walker.write(draft)
        if problem:
            return self.say(problem)
        if stay:
            self._stays()
            still = "" if self.step.state is State.DONE else " This step is still to do."
            return self.say(f"Written.{still}")
        if self.step.state is State.OPEN:
            return self.rooms.lamp(self.index).say("Written. This step stays open; Enter alone goes on.")
        return self._go_on()

    def _stays(self) -> None:
        """The line that is chosen at first, as what was written may change it; what a digit picked stays."""
        first = self.job.first_row(self.step)
        self.row = self.row if self.job.PICKS and self.row != self.first_row else first
        self.first_row = first

    def _go_on(self) -> Place:
        """The next open step of those that were ahead when this one came up, or the closing."""
        ahead = (at for at, step in enumerate(self.walker.steps) if step.step_id not in self.behind)
        index = next((at for at in ahead if self.walker.steps[at].state in UNWRITTEN), None)
        return self.rooms.closing() if index is None else self.rooms.lamp(index)

    def leaf(self, by: int) -> View:
        """Another step, or the closing behind the last; nothing is written."""
        return unless_half_typed(self, lambda: self._at(self.index + by))

    def _at(self, index: int) -> Place:
        if index < 0:
            return self.say("This is the first step of the round.")
        if index >= len(self.walker.steps):
            return self.rooms.closing()
        return self.rooms.lamp(index, taken_up=False)

    def choose(self, by: int) -> Place:
        """Another line of this step."""
        rows = self.job.rows(self.shown, self.step)
        self.row = (max(self.row, -1 if by > 0 else 0) + by) % rows
        return self

    def back(self) -> Place:
        """Take the last typed character away."""
        return self if self.entry.backspace() else self.say("Nothing is typed here.")

    def clear(self) -> Place:
        """Take everything away that is typed, picked or marked here."""
        self.typed.clear()
        self.marks = self.first_marks
        if self.job.ROW_COUNTS:
            self.row = self.first_row
        return self

    def mark(self, word: str) -> Place:
        """Mark what is about to be written, or take the mark away."""
        self.marks ^= {word}
        return self

    def offers(self) -> tuple[More, ...]:
        """What M offers at this step."""
        return self.job.more(self.shown, self.step)

    def _pick(self, number: int) -> bool:
        if not 1 <= number <= self.job.rows(self.shown, self.step):
            return False
        self.row = number - 1
        return True

    def _toggle(self, number: int) -> bool:
        self.marks = self.job.toggled(self.marks, number)
        return True

    def enter_words(self) -> str:
        """What Enter would write now."""
        if self._is_written:
            return "go on, written already"
        walker = self.walker
        if self._stands and walker.set_at:
            return f"write it at {span_words(walker.set_from, walker.set_at, walker.zone, walker.turn.day)}"
        words = self.job.enter_words(self.shown, self.step)
        return f"{words}, it is right" if self.shown.sure else words

    def more(self) -> View:
        """What else can be done at this step."""
        if not self.offers():
            return self.say("There is nothing more at this step.")
        return self.rooms.more(self) if not self.typing else self.leave() or self

    def skip(self) -> View:
        """The reasons for skipping it."""
        return unless_half_typed(self, lambda: self.rooms.skipping(self.index, self))

    def later(self) -> View:
        """When it is to be done instead."""
        return unless_half_typed(self, lambda: self.rooms.later(self.index, self))

    def closing(self) -> View:
        """To the end of the walk; nothing is written."""
        return unless_half_typed(self, self.rooms.closing)

    def whole_pen(self) -> View:
        """The plain steps of this pen together."""
        return unless_half_typed(self, lambda: self.rooms.whole_pen(self))

    def concerns(self) -> Subject:
        """What the step is about."""
        return self.step.subject

    def numbers(self) -> tuple[Value, ...]:
        """Those of the step, by the plan as it stands."""
        from store.round.whys import step_numbers  # noqa: PLC0415 not on the way to the first frame

        return step_numbers(self.as_asked(), self.step)

    def numbers_of(self) -> str:
        """The step."""
        return step_words(self.walker, self.step)

    def more_words(self) -> str:
        """Only where there is more."""
        return "more" if self.offers() else ""

    def rows_words(self) -> str:
        """Only where there is more than one line."""
        return "line" if self.job.rows(self.shown, self.step) > 1 else ""

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", enter_words, "Writes what is shown and goes on. Milk and counts need a figure.", enter),
        Key((), "0-9", lambda lamp: lamp.job.DIGITS, "An amount: 3.5, 3 1/2, 7,4, 16 lb, 2 gal, 3 scoops."),
        Key(
            BACKSPACE,
            "Backspace",
            lambda lamp: "back" if lamp.typing else "",
            "Takes a character back.",
            go_back,
        ),
        Key(("escape",), "Esc", "", "Takes away what is typed, picked or marked.", clear),
        Key(("up",), "Up Down", rows_words, "Another line: a feed, a use of milk.", lambda lamp: lamp.choose(-1)),
        Key(("down",), "Down", "", "", lambda lamp: lamp.choose(1)),
        Key(("left",), "Left Right", "", "The step before or after; nothing is written.", lambda lamp: lamp.leaf(-1)),
        Key(("right",), "Right", "", "", lambda lamp: lamp.leaf(1)),
        Key(("m",), "M", more_words, "What else can be done at this step.", more),
        Key(("s",), "S", "skip", "Skips with a reason.", skip),
        Key(("l",), "L", "later", "Later, or moved on.", later),
        WHY_KEY,
        Key(("a",), "A", "pen", "The plain steps of this pen together.", whole_pen),
        Key(("e",), "E", "", "To the closing, where E ends the round; nothing is written.", closing),
        *PAGE_KEYS,
        *YARD_KEYS,
    )
