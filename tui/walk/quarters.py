"""M, a quarter: which one, then what was found. Drawn as one sees them from behind; several can be marked at once."""

from typing import ClassVar

from store.book.words import Quarter, Sign
from store.round.care import quarters_found
from store.round.dialect import said
from store.round.quarters import toggled
from tui.frame import framed
from tui.page import Line, Page, Role, Size, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Place, Rooms
from tui.typed import is_pick
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, go_back
from tui.walk.lamp import Lamp
from tui.walk.quarter_cards import sign_lines, udder_drawing
from tui.walk.several import Several

QUARTERS, SIGNS = tuple(Quarter), tuple(Sign)
NO_COW = "No animal stands here."


class QuarterPage(Several):
    """First a digit picks the quarter, then digits pick its signs; Enter writes all that is picked as one entry."""

    def __init__(self, rooms: Rooms, lamp: Lamp) -> None:
        """Over a lamp at a cow."""
        super().__init__(rooms, lamp)
        self.lamp = lamp
        self.here: Quarter | None = None
        self.signs: dict[Quarter, frozenset[Sign]] = {}

    def takes(self, character: str) -> bool:
        """A quarter, or a sign of the quarter that is picked."""
        if not is_pick(character):
            return False
        number = int(character)
        if self.here is not None:
            self.signs[self.here] = toggled(self.signs.get(self.here, frozenset()), SIGNS[number - 1])
        elif number <= len(QUARTERS):
            self.here = QUARTERS[number - 1]
        return self.here is not None

    def turn_to(self, by: int) -> Place:
        """The quarter beside it, or the one behind or before it, as they are drawn; what is picked stays."""
        at = 0 if self.here is None else (QUARTERS.index(self.here) + by) % len(QUARTERS)
        self.here = QUARTERS[at]
        return self

    def back(self) -> Place:
        """To another quarter, then to the step; nothing is written."""
        if self.here is None:
            return super().back()
        self.here = None
        return self

    def picked_words(self) -> str:
        """`left hind: clots, hard; right hind: hot`."""
        dialect = self.walker.farm.dialect
        told = (
            f"{said(at, dialect)}: {', '.join(sign for sign in Sign if sign in signs)}"
            for at, signs in self.signs.items()
            if signs
        )
        return "; ".join(told)

    def enter(self) -> Place:
        """Write it, whether she is milked or not, and stay at her."""
        if not any(self.signs.values()):
            return self.say("Nothing is picked yet. A digit picks the quarter, then digits what is wrong with it.")
        cow_id = self.lamp.step.subject.animal_id
        if cow_id is None:
            return self.lamp.say(NO_COW)
        found = {quarter: signs for quarter, signs in self.signs.items() if signs}
        return self.lamp.write(quarters_found(self.walker.hand(), cow_id, found), stay=True)

    def draw(self, size: Size) -> Page:
        """The four quarters, and the signs of the one that is picked."""
        cow_id = self.lamp.step.subject.animal_id
        if cow_id is None:
            return framed(self, [(), *wrapped(NO_COW, size.width, Role.WARNING, "  ")], size)
        body: list[Line] = [(), *wrapped(self._asks(), size.width, Role.STRONG, "  "), ()]
        body += udder_drawing(self.walker, cow_id, self.signs, self.here, size)
        if self.here is not None:
            body += [(), *sign_lines(self.signs.get(self.here, ()), size)]
        return framed(self, body, size)

    def _asks(self) -> str:
        if self.here is None:
            return f"QUARTER of {self.lamp.step.name}: which one? 1 to 4"
        quarter = said(self.here.value, self.walker.farm.dialect).upper()
        return f"{quarter} QUARTER of {self.lamp.step.name}: what is it? Several digits, then Enter."

    def enter_words(self) -> str:
        """Once a sign is picked."""
        return "write it" if any(self.signs.values()) else "once a sign is picked"

    def digit_words(self) -> str:
        """A quarter, then signs."""
        return "which quarter" if self.here is None else "what it is"

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", enter_words, "Writes what is picked of all quarters as one entry.", enter),
        Key((), "1-9", digit_words, "Picks the quarter, then what is wrong with it."),
        Key(("left",), "Arrows", "another quarter", "Another quarter; what is picked stays.",
            lambda place: place.turn_to(-1)),
        Key(("right",), "Right", "", "", lambda place: place.turn_to(1)),
        Key(("up",), "Up", "", "", lambda place: place.turn_to(-2)),
        Key(("down",), "Down", "", "", lambda place: place.turn_to(2)),
        Key((*BACKSPACE, "escape"), "Backspace", "back", "To the four, then back; nothing is written.", go_back),
        *PAGE_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )  # fmt: skip
