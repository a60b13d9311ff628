"""The bench between two rounds: what comes next by the clock. It may stand for days; the first key only wakes it."""

from datetime import timedelta
from typing import ClassVar
from uuid import UUID

from store.husbandry.why import Value
from store.round.item import Item
from tui.bench.coming import Coming
from tui.bench.draw import header, list_lines, next_large, not_known_lines
from tui.bench.not_known import NotKnown
from tui.frame import laid_out, last_written
from tui.page import Page, Role, Size, Span, line
from tui.place import WHY_KEY, YARD_KEYS, Place, Rooms
from tui.telling import turn_words
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, View, go_back
from tui.words import at_hour

LOOK_EVERY = timedelta(minutes=5)
"""How often the book is read while nobody presses a key: another bench may write in it, and days begin."""
WAKES = " The first key only wakes the screen."
LATER = "No step of this round is for it: the round in which it falls due asks for it."
MISSED = "The {} asks for it, and nothing is written there: R opens that round."


class Bench(Place):
    """Of the round of this hour. Up and Down mark a line, Enter leads to where it is done."""

    def __init__(self, rooms: Rooms, step_id: UUID | None = None) -> None:
        """What is due already has been seen: no bell rings for it. step_id: the step where it was opened."""
        super().__init__(rooms)
        self.opened_at = self.walker.turn, self.walker.live, step_id
        self.row = 0
        self.coming = Coming()
        self.not_known = NotKnown()
        self.asleep, self.touched = False, True
        self.read = self.walker.turn
        if self.walker.turn != self.walker.this():
            self._look()
        self.rung = self._due()

    @property
    def items(self) -> tuple[Item, ...]:
        """The agenda of this moment."""
        return self.coming.items(self.walker)

    def _look(self) -> None:
        """Read the book again; the round of this hour may be another one."""
        if self.walker.turn == self.walker.this():
            self.walker.look()
        else:
            self.walker.open_turn(self.walker.this())

    def minute(self) -> bool:
        """Read the book again if that is long ago; whether something has fallen due for which no bell rang yet."""
        self.asleep, self.touched = not self.touched, False
        old = self.walker.book.clock.now() - self.walker.looked_at
        if not timedelta(0) <= old < LOOK_EVERY or self.walker.turn != self.walker.this():
            self._look()
            self.said = ""
        return self._rings()

    def _rings(self) -> bool:
        due = self._due()
        rings = not due <= self.rung
        self.rung = (self.rung & {_name(item) for item in self.items}) | due
        return rings

    def _due(self) -> set[tuple[object, ...]]:
        now = self.walker.book.clock.now()
        return {_name(item) for item in self.items if item.is_due(now)}

    def press(self, name: str, character: str | None) -> View | None:
        """After a time without a key, and in another round, the first one only wakes: it shows what the book holds."""
        self.touched = True
        if not self.asleep and self.read == self.walker.turn:
            return super().press(name, character)
        self.asleep, self.said = False, ""
        return self.trying(self._woken)

    def _woken(self) -> Place:
        self._look()
        return self.told_first()

    def told_first(self) -> Place:
        """In another round than the last key was pressed in, what was left for it is read first."""
        if self.read == self.walker.turn:
            return self
        self.read = self.walker.turn
        return self.rooms.left_for_you(self)

    def draw(self, size: Size) -> Page:
        """The next thing large, the list under it, and what is not known."""
        items = self.items
        top = [header(self.walker, size.width), *next_large(self.walker, items, size)]
        below = not_known_lines(self.not_known.told(self.walker), size.width)
        last = line(Span(WAKES, Role.STRONG)) if self.asleep else last_written(self.walker, size.width)
        return laid_out(
            self, top, list_lines(self.walker, items, self._row_of(items), size.width), [*below, last], size
        )

    def _row_of(self, items: tuple[Item, ...]) -> int:
        """The marked line; the last one where the list has become shorter."""
        return min(self.row, max(len(items) - 1, 0))

    def choose(self, by: int) -> Place:
        """Mark another line."""
        self.row = max(self._row_of(self.items) + by, 0)
        self.scroll.moved = 0
        return self

    def enter(self) -> Place:
        """To where the marked thing is done."""
        if not self.items:
            return self.say("Nothing is due. R lists the rounds.")
        item = self.items[self._row_of(self.items)]
        if item.watch:
            return self.rooms.looking_again(self, item.watch.step_id)
        index = next((at for at, step in enumerate(self.walker.steps) if _is(item, step.step_id)), None)
        if index is not None:
            return self.rooms.lamp(index)
        if item.turn and item.turn != self.walker.turn:
            return self._to_round(item)
        if item.is_round:
            return self.rooms.enter()
        return self.say(MISSED.format(turn_words(item.missed)) if item.missed else LATER)

    def _to_round(self, item: Item) -> Place:
        """To a midday or night round; the next feeding round is not there yet."""
        turn = item.turn
        if turn is None or item.step is None:
            hour = at_hour(item.at, self.walker.book.clock.now(), self.walker.zone)
            return self.say(f"That round begins at {hour}; what is to be done before it stands above.")
        self.walker.open_turn(turn, live=self.walker.is_now(turn))
        return self.rooms.at_step(item.step.step_id)

    def back(self) -> Place:
        """To the step where it was opened, in a past round too; else, or once that round is over, the closing."""
        turn, live, step_id = self.opened_at
        if turn != self.walker.turn and (not live or self.walker.is_now(turn)):
            self.walker.open_turn(turn, live=live)
        return self.rooms.step_or(step_id, self.rooms.closing())

    def numbers(self) -> tuple[Value, ...]:
        """The hour of each line."""
        from store.round.whys.bench import coming_numbers  # noqa: PLC0415 not on the way to the first frame

        return tuple(coming_numbers(self.as_asked(), self.items))

    def numbers_of(self) -> str:
        """The bench."""
        return "what comes by the clock"

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "go there", "Goes to where the marked thing is done.", enter),
        Key(("up",), "Up Down", "line", "Marks the line above or below.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
        Key(("escape", *BACKSPACE), "Esc", "back", "Back to the step where it was opened, or the closing.", go_back),
        *PAGE_KEYS,
        Key(("e", "left"), "E", "closing", "To the closing of the round of this hour.",
            lambda place: place.rooms.closing()),
        WHY_KEY,
        *(key for key in YARD_KEYS if key.sign not in ("B", "I")),
    )  # fmt: skip


def _is(item: Item, step_id: object) -> bool:
    return item.step is not None and item.step.step_id == step_id


def _name(item: Item) -> tuple[object, ...]:
    """What makes it the same thing at the next look."""
    return item.words, item.at
