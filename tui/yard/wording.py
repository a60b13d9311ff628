"""A line of words is typed: every character belongs to it until Enter; Backspace on an empty line goes back."""

from abc import abstractmethod
from typing import ClassVar

from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, cut, line, wrapped
from tui.place import Over, Place, Rooms
from tui.view import BACKSPACE, ENTER, Key, View, go_back, go_out

SAID_MOST = 30
"""So many cells of a long text are enough to know it again."""


class Wording(Over):
    """Something is typed in words."""

    MOST: ClassVar[int] = 60

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms, back)
        self.text = ""
        self.leaving = False

    @abstractmethod
    def heading(self) -> str:
        """What is asked."""

    @abstractmethod
    def enter(self) -> Place | None:
        """Enter: take what is typed."""

    def below(self, size: Size) -> list[Line]:  # noqa: ARG002
        """What stands under the line."""
        return []

    @property
    def half_typed(self) -> str:
        """The words so far."""
        return self.text

    def leave(self) -> View | None:
        """Leave, unless a line is half typed here or something in the place below."""
        return Place.leave(self) if self.text else super().leave()

    def takes(self, character: str) -> bool:
        """Every character that can be printed."""
        if len(character) != 1 or not character.isprintable():
            return False
        self.leaving = False
        if len(self.text) >= self.MOST:
            self.say(f"No more than {self.MOST} letters fit here; «{character}» was left out.")
        self.text = (self.text + character)[: self.MOST]
        return True

    def back(self) -> Place:
        """Take the last character away; from an empty line, back."""
        if not self.text:
            return self.came_from
        self.text = self.text[:-1]
        return self

    def escape(self) -> Place:
        """Out; what is typed and not taken yet is said first."""
        if self.half_typed and not self.leaving:
            self.leaving = True
            return self.say(f"«{cut(self.half_typed, SAID_MOST)}» is typed and not taken yet. Esc again leaves it.")
        return self.came_from

    def draw(self, size: Size) -> Page:
        """The question, the line, and what is under it."""
        shown = cut(self.text[-(size.width - 8) :] + "_", size.width - 4)
        body: list[Line] = [(), *wrapped(self.heading(), size.width, Role.STRONG, "  "), ()]
        body += [line("  ", Span(shown, Role.TYPED)), ()]
        return framed(self, [*body, *self.below(size)], size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "take it", "Takes what is typed.", lambda place: place.enter()),
        Key((), "letters", "type", "Every letter and digit belongs to the line."),
        Key(
            BACKSPACE,
            "Backspace",
            "a letter back, or out",
            "A letter back; from an empty line back.",
            go_back,
        ),
        Key(("escape",), "Esc", "out", "Out; nothing is written.", lambda place: place.escape()),
        Key(("ctrl+c", "ctrl+q"), "Ctrl+Q", "", "", go_out),
    )
