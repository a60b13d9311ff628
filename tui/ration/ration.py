"""The ration of an animal, or of a pen fed as one: amounts are tried here, nothing is written before it is started."""

from collections.abc import Callable
from typing import ClassVar

from msgspec.structs import replace

from store.book.drafts import Subject
from store.husbandry.why import Value
from tui.frame import framed
from tui.page import Page, Size
from tui.place import FARM_KEY, FEED_ROOM_KEY, HELP_KEY, LEAVE_KEY, LOCK_KEY, NOTE_KEY, VET_KEY, WHY_KEY, Place
from tui.ration.adding import Adding
from tui.ration.foot import care_words
from tui.ration.more import RationMore
from tui.ration.numbers import all_numbers
from tui.ration.page import ration_lines
from tui.ration.starting import StartChange
from tui.ration.trial import changed
from tui.ration.trying import Trying
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, View, go_back

TRIED = "New amounts are tried here and not started. Enter starts them on a day, = puts back what is given now"
NOTHING = "Nothing is changed yet. Digits try another amount."


class Ration(Trying):
    """Digits try an amount; what it does to the balance is seen at once."""

    READS_ANEW = True
    leaving = False
    """Whether it was said already that tried amounts would be left."""

    @property
    def half_typed(self) -> str:
        """What is typed or tried here, or in the place below."""
        return self.entry.text or (TRIED if changed(self.case, self.tried) else "") or self.came_from.half_typed

    def leave(self) -> View | None:
        """Leave, unless something is typed or tried here, or typed in the place below."""
        return Place.leave(self) if self.typing or changed(self.case, self.tried) else super().leave()

    def unwritten(self) -> str:
        """Tried amounts are started or put back; a typed one is taken first."""
        if self.typing:
            return f"«{self.entry.text}» is typed and not taken yet. Enter takes it, Backspace takes it away."
        return f"{TRIED}."

    def draw(self, size: Size) -> Page:
        """The page; where the book was written since, as it stands now."""
        self.look_again()
        return framed(self, ration_lines(self.seen, size), size)

    def press(self, name: str, character: str | None) -> View | None:
        """Every other key takes the asking back."""
        self.leaving = self.leaving and name == "escape"
        return super().press(name, character)

    def enter(self) -> Place:
        """Take what is typed; then start what is tried on a day."""
        if self.typing:
            self.take()
            return self
        if not changed(self.case, self.tried):
            return self.say(NOTHING)
        cares = tuple(care_words(self.seen, other=False))
        return StartChange(self, self.case, self.seen.new, after=self.came_from, cares=cares)

    def enter_words(self) -> str:
        """What Enter does now."""
        if self.typing:
            return "take it"
        return "start it" if changed(self.case, self.tried) else ""

    def back(self) -> Place:
        """A character back."""
        if not self.entry.backspace():
            return self.say("Nothing is typed here. Esc goes back.")
        self.reckon()
        return self

    def escape(self) -> Place:
        """Out of what is typed; then out of the place, asked about once where amounts are tried."""
        if self.typing:
            self.entry.clear()
            self.reckon()
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
        Key(ENTER, "Enter", enter_words, "Takes what is typed; then starts what is tried on a day, in safe steps.",
            enter),
        Key((), "0-9", "amount", "The marked meal: 3 1/2, 1.2 kg, 3 lb; 4 + 4 for both meals."),
        Key(BACKSPACE, "Backspace", "", "Takes a character back.", go_back),
        Key(("up",), "Up Down", "feed", "Another feed.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
        Key(("left",), "Left Right", "meal", "Another meal of the feed.", lambda place: place.choose_meal(-1)),
        Key(("right",), "Right", "", "", lambda place: place.choose_meal(1)),
        Key(("equals_sign",), "=", "as now", "Takes away all that is tried.", put_back),
        Key(("a",), "A", "add", "Another feed on hand, and why one must not be given.",
            lambda place: place.opening(Adding)),
        Key(("m",), "M", "mix, more", "Finds a mix that fits; a first step; weighs or scores her.",
            lambda place: place.opening(RationMore)),
        WHY_KEY,
        Key(("escape", "j"), "Esc", "back", "Takes away what is typed; then back.", lambda place: place.escape()),
        *PAGE_KEYS,
        replace(FARM_KEY, act=lambda place: place.opening(place.rooms.my_farm)),
        FEED_ROOM_KEY, replace(NOTE_KEY, words=""), VET_KEY, HELP_KEY, LOCK_KEY, LEAVE_KEY,
    )  # fmt: skip
