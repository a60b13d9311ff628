"""A list that opens over a place: digits or arrows pick, Enter writes, Backspace goes back.

A second digit goes on with the number while there is a line of it, so that a long list is picked from in the same way.
"""

from abc import abstractmethod
from typing import ClassVar, Self

from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, cut, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, WHY_KEY, Over, Place, Rooms
from tui.typed import is_number
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, View


class Picking(Over):
    """Something is picked from a numbered list; nothing is written before Enter."""

    TITLE = ""
    ENTER_WORDS = "write the picked one"

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms, back)
        self.row: int | None = None
        self.number = ""
        """The digits that picked the marked line; none where something else did."""

    @abstractmethod
    def choices(self) -> list[str]:
        """What can be picked, in order."""

    @abstractmethod
    def picked(self, row: int) -> View:
        """Write what was picked, and where to go on."""

    def heading(self) -> str:
        """Above the list."""
        return self.TITLE

    def above(self, size: Size) -> list[Line]:  # noqa: ARG002
        """What stands over the list."""
        return []

    def group(self, row: int) -> str:  # noqa: ARG002
        """What a line belongs to, said over the first of its kind; empty: nothing is said."""
        return ""

    def below(self, size: Size) -> list[Line]:  # noqa: ARG002
        """What stands under the list."""
        return []

    def takes(self, character: str) -> bool:
        """A digit picks, or goes on with the number that picked."""
        lines = len(self.choices())
        numbers = (each for each in (self.number + character, character) if is_number(each) and int(each) <= lines)
        number = next(numbers, "")
        if number:
            self.mark(int(number) - 1, number)
        return bool(number)

    def mark(self, row: int | None, number: str = "") -> None:
        """Another line is the marked one. number: the digits that picked it."""
        self.row, self.number = row, number

    def move(self, by: int) -> Self:
        """The line above or below."""
        if not self.choices():
            return self
        first = 0 if by > 0 else len(self.choices()) - 1
        self.mark(first if self.row is None else (self.row + by) % len(self.choices()))
        return self

    def unpick(self) -> Place:
        """The number that picked is taken away; without one, back."""
        if not self.number:
            return self.back()
        self.mark(None)
        return self

    def enter(self) -> View:
        """Write what is picked."""
        self.number = ""
        if self.row is None or self.row >= len(self.choices()):
            return self.say("Nothing is picked yet. Digits or Up and Down pick, then Enter writes.")
        return self.picked(self.row)

    def draw(self, size: Size) -> Page:
        """The list, the picked line marked."""
        body: list[Line] = [(), *wrapped(self.heading(), size.width, Role.STRONG, "  "), ()]
        body += self.above(size)
        group, choices = "", self.choices()
        for row, choice in enumerate(choices):
            if group != (group := self.group(row)):
                body.append(line(Span(f"  {group}", Role.STRONG)))
            here = row == self.row
            words = cut(f" {'>' if here else ' '} {row + 1:>{len(str(len(choices)))}}  {choice} ", size.width - 2)
            body.append(line(" ", Span(words, Role.HERE if here else Role.TEXT)))
        return framed(self, [*body, *self.below(size)], size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", lambda place: place.ENTER_WORDS, "Takes what is picked.", lambda place: place.enter()),
        Key((), "digits", "pick", "Pick a line of the list by its number; Backspace takes the number away."),
        Key(("up",), "Up Down", "line", "The line above or below.", lambda place: place.move(-1)),
        Key(("down",), "Down", "", "", lambda place: place.move(1)),
        Key((*BACKSPACE, "left", "escape"), "Backspace", "back", "Goes back; nothing is written.",
            lambda place: place.unpick()),
        *PAGE_KEYS,
        WHY_KEY,
        HELP_KEY,
        LEAVE_KEY,
    )  # fmt: skip
