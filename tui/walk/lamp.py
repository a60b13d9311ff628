"""The lamp: one step of the round, and what a key does to it."""

from typing import ClassVar
from uuid import UUID

from store.book.drafts import Draft
from store.book.words import Fate, State
from store.round.amount import Unreadable
from store.round.confirm import done, fed, milked
from store.round.steps import FeedStep, MilkStep, Step
from tui.frame import framed
from tui.page import Page, Size
from tui.place import BACKSPACE, ENTER, HELP_KEY, LEAVE_KEY, UNDO_KEY, Key, Place, Rooms
from tui.typed import Typed
from tui.walk.card import card
from tui.walk.shown import Shown


class Lamp(Place):
    """The step under the lamp. Enter writes it; digits change it first; nothing else writes."""

    def __init__(self, rooms: Rooms, index: int, *, taken_up: bool = True) -> None:
        """At a step. taken_up: False after leafing, so that the first Enter only takes it up."""
        super().__init__(rooms)
        self.index = index
        self.taken_up = taken_up
        self.row = self._row_written()
        self.typed: dict[int, Typed] = {}

    def _row_written(self) -> int:
        """The use of the milk that the book holds already, so that a correction of the weight keeps it."""
        milked = self.step.entry.milked if self.step.entry else None
        return tuple(Fate).index(milked.fate) if milked and milked.fate else 0

    @property
    def step(self) -> Step:
        """The step we stand at."""
        return self.walker.steps[self.index]

    @property
    def rows(self) -> int:
        """How many lines Up and Down choose from: the feeds of a feed step, the uses of a pail."""
        if isinstance(self.step, FeedStep):
            return len(self.step.due)
        return len(Fate) if isinstance(self.step, MilkStep) else 1

    @property
    def entry(self) -> Typed:
        """What is being typed at the chosen line."""
        return self.typed.setdefault(self.row if isinstance(self.step, FeedStep) else 0, Typed())

    @property
    def fate(self) -> Fate:
        """Where the pail goes."""
        return tuple(Fate)[self.row]

    @property
    def half_typed(self) -> str:
        """Everything typed and not yet written."""
        return " ".join(typed.text for typed in self.typed.values() if typed.text)

    def takes(self, character: str) -> bool:
        """Amounts are typed at feed and milk steps."""
        return isinstance(self.step, FeedStep | MilkStep) and self.entry.takes(character)

    def draw(self, size: Size) -> Page:
        """The step, large."""
        shown = Shown(self.walker, self.step, {row: typed.text for row, typed in self.typed.items()}, self.row)
        body = card(shown, size)
        return framed(self, body, size, self.step)

    def enter(self) -> Place:
        """Write what is shown, then go on to the next open step."""
        if not self.taken_up and not self.half_typed:
            self.taken_up = True
            return self.say("This step is taken up. Enter again writes what is shown.")
        if self.step.state is not State.OPEN and not self.half_typed:
            return self._next()
        try:
            draft = self._draft()
        except Unreadable as problem:
            return self.say(str(problem))
        problem_words = self.walker.write(draft)
        return self.say(problem_words) if problem_words else self._next()

    def leaf(self, by: int) -> Place:
        """Another step, or the closing behind the last; nothing is written."""
        if self.half_typed:
            return self.leave() or self
        index = self.index + by
        if index < 0:
            return self.say("This is the first step of the round.")
        if index >= len(self.walker.steps):
            return self.rooms.closing()
        return self.rooms.lamp(index, taken_up=False)

    def choose(self, by: int) -> Place:
        """Another line of this step."""
        self.row = (self.row + by) % self.rows
        return self

    def back(self) -> Place:
        """Take the last typed character away."""
        return self if self.entry.backspace() else self.say("Nothing is typed here.")

    def skip(self) -> Place:
        """Ask for the reason."""
        return self.rooms.skipping(self.index, self)

    def _draft(self) -> Draft:
        hand, step = self.walker.hand(), self.step
        if isinstance(step, FeedStep):
            return fed(hand, step, self._typed_by_feed(step))
        if isinstance(step, MilkStep):
            if not self.entry.text:
                raise Unreadable("Milk is never as shown. Type what the scale says, or S to skip.")
            return milked(hand, step, self.entry.text, self.fate)
        return done(hand, step)

    def _typed_by_feed(self, step: FeedStep) -> dict[UUID, str]:
        return {step.due[row].feed.id: typed.text for row, typed in self.typed.items() if typed.text}

    def _next(self) -> Place:
        index = self.walker.first_open(self.index)
        return self.rooms.closing() if index is None else self.rooms.lamp(index)

    def enter_words(self) -> str:
        """What Enter would write now."""
        if self.step.state is not State.OPEN and not self.half_typed:
            return "go on, written already"
        if isinstance(self.step, MilkStep):
            return f"write to {self.fate.upper()}"
        return "given as shown" if isinstance(self.step, FeedStep) and not self.half_typed else "write it"

    def amount_words(self) -> str:
        """Where nothing is measured there is no amount."""
        return {FeedStep: "other amount", MilkStep: "the scale"}.get(type(self.step), "")

    def back_words(self) -> str:
        """Only while something is typed."""
        return "take back" if self.half_typed else ""

    def rows_words(self) -> str:
        """Only where there is more than one line."""
        return "line" if self.rows > 1 else ""

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(
            ENTER,
            "Enter",
            enter_words,
            "Writes what is shown and goes on. Milk needs its weight typed first.",
            enter,
        ),
        Key(
            (),
            "0-9",
            amount_words,
            "An amount: 3.5, 3 1/2 or 7,4, with a unit if you like: 16 lb, 2 gal, 3 scoops.",
        ),
        Key(
            BACKSPACE,
            "Backspace",
            back_words,
            "Takes the last typed character away.",
            back,
        ),
        Key(
            ("up",),
            "Up Down",
            rows_words,
            "The line above or below: another feed, another use of the milk.",
            lambda lamp: lamp.choose(-1),
        ),
        Key(("down",), "Down", "", "", lambda lamp: lamp.choose(1)),
        Key(
            ("left",),
            "Left Right",
            "leaf",
            "The step before or after; nothing is written.",
            lambda lamp: lamp.leaf(-1),
        ),
        Key(("right",), "Right", "", "", lambda lamp: lamp.leaf(1)),
        Key(("s",), "S", "skip", "Skips this step with a reason: a digit picks it, Enter writes.", skip),
        UNDO_KEY,
        HELP_KEY,
        LEAVE_KEY,
    )
