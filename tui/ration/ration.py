"""The ration of an animal, or of a pen fed as one: amounts are tried here, and nothing is written before it is started.

The case is read when the place opens and once more after each change of the book; a key only reckons what it changed.
"""

from collections.abc import Callable, Mapping
from typing import ClassVar

from msgspec.structs import replace

from store.book.drafts import Subject
from store.husbandry.why import Value
from store.ration.balance import balance
from store.ration.parts import Case, RationFeed
from store.round.amount import Unreadable
from tui.frame import framed
from tui.page import Page, Size
from tui.place import (
    FARM_KEY,
    FEED_ROOM_KEY,
    HELP_KEY,
    LEAVE_KEY,
    LOCK_KEY,
    NOTE_KEY,
    VET_KEY,
    WHY_KEY,
    Over,
    Place,
    Rooms,
)  # fmt: skip
from tui.ration.adding import Adding
from tui.ration.more import RationMore
from tui.ration.numbers import all_numbers
from tui.ration.page import ration_lines
from tui.ration.seen import Farm, Reading, Seen
from tui.ration.starting import StartChange
from tui.ration.trial import Cell, changed, read, rows
from tui.scroll import Scroll
from tui.typed import Typed, begins_amount
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, View, go_back

TRIED = "New amounts are tried here, and nothing is written. = puts back what is given now"
NOTHING = "Nothing is changed yet. Digits try another amount."
FREE = "{} stands free: nothing is measured out. F sets where a feed stands free."
NO_ROW = "There is no feed to change yet. A adds one of those on hand."


class Ration(Over):
    """Digits try an amount; what it does to the balance is seen at once."""

    READS_ANEW = True

    def __init__(self, rooms: Rooms, back: Place, reads: Callable[[], tuple[Case, Farm]]) -> None:
        """Over the place that it goes back to. reads: the case as the book stands, and what the farm has set."""
        super().__init__(rooms, back)
        self.scroll = Scroll(follows=False, up="Page Up", down="Page Down")
        self.reads = reads
        self.row = self.meal = 0
        self.entry = Typed()
        self.tried: dict[Cell, float] = {}
        self.leaving = False
        self._look()

    def _look(self) -> None:
        """Read the case, and how what is given now balances."""
        self.looked_at = self.walker.snapshot
        self.case, self.farm = self.reads()
        self.before = balance(self.case, self.case.now)
        self._reckon()

    def _reckon(self) -> None:
        """How it balances with what is tried, and what is typed where that can be read."""
        reading = self._reading()
        new = {**self.case.now, **self.tried, **reading.amounts}
        after = self.before if not self.tried and not reading.amounts else balance(self.case, new)
        self.seen = Seen(
            self.case, self.farm, self.before, after, dict(self.tried), self.row, self.meal, self.entry.text, reading
        )

    def _reading(self) -> Reading:
        feed = self.feed
        if not self.entry.text or feed is None:
            return Reading()
        try:
            slots = self.case.slots
            return Reading(read(self.entry.text, feed, slots, slots[self.meal], self.farm.units))
        except Unreadable as problem:
            return Reading(problem=str(problem))

    @property
    def feed(self) -> RationFeed | None:
        """The marked feed."""
        found = rows(self.case, self.tried)
        return found[min(self.row, len(found) - 1)] if found else None

    @property
    def half_typed(self) -> str:
        """What is typed or tried here, or in the place below."""
        return self.entry.text or (TRIED if changed(self.case, self.tried) else "") or self.came_from.half_typed

    @property
    def typing(self) -> bool:
        """While an amount is being typed."""
        return bool(self.entry.text)

    def leave(self) -> View | None:
        """Leave, unless something is typed or tried here, or typed in the place below."""
        return Place.leave(self) if self.typing or self.tried else super().leave()

    def unwritten(self) -> str:
        """Tried amounts are started or put back; a typed one is taken first."""
        if self.typing:
            return f"«{self.entry.text}» is typed and not taken yet. Enter takes it, Backspace takes it away."
        return f"{TRIED}."

    def draw(self, size: Size) -> Page:
        """The page; where the book was written since, as it stands now."""
        if self.looked_at is not self.walker.snapshot:
            self._look()
        return framed(self, ration_lines(self.seen, size), size)

    def press(self, name: str, character: str | None) -> View | None:
        """Every other key takes the asking back."""
        self.leaving = self.leaving and name == "escape"
        return super().press(name, character)

    def takes(self, character: str) -> bool:
        """A digit starts an amount of the marked meal; + goes on with the next meal."""
        if not self.typing and not begins_amount(character):
            return False
        feed = self.feed
        if feed is None or feed.free:
            self.say(NO_ROW if feed is None else FREE.format(feed.feed.name))
            return True
        taken = self.entry.takes(character)
        self._reckon()
        return taken

    def take(self) -> bool:
        """What is typed counts as tried; whether it could be read, else that is said and it stays."""
        reading = self._reading()
        if reading.problem:
            self.say(reading.problem)
            return False
        self.try_out(reading.amounts)
        return True

    def try_out(self, amounts: Mapping[Cell, float]) -> None:
        """Amounts that count as tried. [kg]"""
        self.entry.clear()
        self.tried.update(amounts)
        self._reckon()

    def add(self, feed: RationFeed) -> None:
        """A line for a feed, with nothing given yet, and the mark on it."""
        self.tried.update(dict.fromkeys(((slot, feed.feed.id) for slot in self.case.slots), 0.0))
        self.row = rows(self.case, self.tried).index(feed)
        self._reckon()

    def choose(self, by: int) -> Place:
        """Another feed; what is typed is taken first."""
        if self.take():
            self.row = (self.row + by) % max(len(self.seen.rows), 1)
            self._reckon()
        return self

    def choose_meal(self, by: int) -> Place:
        """Another meal of the feed; what is typed is taken first."""
        if self.take():
            self.meal = (self.meal + by) % len(self.case.slots)
            self._reckon()
        return self

    def enter(self) -> Place:
        """Take what is typed; then start what is tried on a day."""
        if self.typing:
            self.take()
            return self
        if not changed(self.case, self.tried):
            return self.say(NOTHING)
        return StartChange(self.rooms, self, self.case, {**self.case.now, **self.tried}, after=self.came_from)

    def enter_words(self) -> str:
        """What Enter does now."""
        return "take it" if self.typing else "start it" if changed(self.case, self.tried) else ""

    def back(self) -> Place:
        """A character back."""
        if not self.entry.backspace():
            return self.say("Nothing is typed here. Esc goes back.")
        self._reckon()
        return self

    def escape(self) -> Place:
        """Out of what is typed; then out of the place, asked about once where amounts are tried."""
        if self.typing:
            self.entry.clear()
            self._reckon()
            return self
        if changed(self.case, self.tried) and not self.leaving:
            self.leaving = True
            return self.say(f"{TRIED}, Esc again leaves them.")
        return self.came_from

    def put_back(self) -> Place:
        """What is given now, everywhere."""
        self.tried.clear()
        self.try_out({})
        return self.say("New is what is given now.")

    def opening(self, place: Callable[["Ration"], Place]) -> Place:
        """Another place over this one; what is typed is taken first."""
        return place(self) if self.take() else self

    def concerns(self) -> Subject:
        """The animal or the pen."""
        return self.case.subject

    def numbers(self) -> tuple[Value, ...]:
        """Of the balance, of what the needs hang on, and of the marked feed."""
        return tuple(all_numbers(self.seen))

    def numbers_of(self) -> str:
        """Whose ration."""
        return f"{self.case.name}, ration"

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", enter_words, "Takes what is typed; then shows the steps of the change.", enter),
        Key((), "0-9", "try amount", "The marked meal: 3 1/2, 1.2 kg, 3 lb; 4 + 4 for both meals."),
        Key(BACKSPACE, "Backspace", "", "Takes a character back.", go_back),
        Key(("up",), "Up Down", "feed", "Another feed.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
        Key(("left",), "Left Right", "meal", "Another meal of the feed.", lambda place: place.choose_meal(-1)),
        Key(("right",), "Right", "", "", lambda place: place.choose_meal(1)),
        Key(("equals_sign",), "=", "as now", "Takes away all that is tried.", put_back),
        Key(("a",), "A", "add feed", "Another feed on hand, and why one must not be given.",
            lambda place: place.opening(Adding)),
        Key(("m",), "M", "mix, more", "Finds a mix that fits; a first step; weighs or scores her.",
            lambda place: place.opening(RationMore)),
        WHY_KEY,
        Key(("escape", "j"), "Esc", "back", "Takes away what is typed; then back.", lambda place: place.escape()),
        *PAGE_KEYS,
        replace(FARM_KEY, act=lambda place: place.opening(place.rooms.my_farm)),
        FEED_ROOM_KEY, replace(NOTE_KEY, words=""), VET_KEY, HELP_KEY, replace(LOCK_KEY, words=""), LEAVE_KEY,
    )  # fmt: skip
