"""A list that opens over a place: digits or arrows pick, Enter writes, Backspace goes back."""

from abc import abstractmethod
from typing import ClassVar, Self

from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, cut, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Over, Place, Rooms
from tui.typed import is_pick
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, go_back


class Picking(Over):
    """Something is picked from a numbered list; nothing is written before Enter."""

    TITLE = ""
    ENTER_WORDS = "write the picked one"

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms, back)
        self.row: int | None = None

    @abstractmethod
    def choices(self) -> list[str]:
        """What can be picked, in order."""

    @abstractmethod
    def picked(self, row: int) -> Place:
        """Write what was picked, and where to go on."""

    def heading(self) -> str:
        """Above the list."""
        return self.TITLE

    def above(self, size: Size) -> list[Line]:  # noqa: ARG002
        """What stands over the list."""
        return []

    def below(self, size: Size) -> list[Line]:  # noqa: ARG002
        """What stands under the list."""
        return []

    def takes(self, character: str) -> bool:
        """A digit picks."""
        if not is_pick(character) or int(character) > len(self.choices()):
            return False
        self.row = int(character) - 1
        return True

    def move(self, by: int) -> Self:
        """The line above or below."""
        if not self.choices():
            return self
        first = 0 if by > 0 else len(self.choices()) - 1
        self.row = first if self.row is None else (self.row + by) % len(self.choices())
        return self

    def enter(self) -> Place:
        """Write what is picked."""
        if self.row is None:
            return self.say("Nothing is picked yet. A digit or Up and Down pick, then Enter writes.")
        return self.picked(self.row)

    def draw(self, size: Size) -> Page:
        """The list, the picked line marked."""
        body: list[Line] = [(), *wrapped(self.heading(), size.width, Role.STRONG, "  "), ()]
        body += self.above(size)
        for row, choice in enumerate(self.choices()):
            here = row == self.row
            words = cut(f" {'>' if here else ' '} {row + 1}  {choice} ", size.width - 2)
            body.append(line(" ", Span(words, Role.HERE if here else Role.TEXT)))
        return framed(self, [*body, *self.below(size)], size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", lambda place: place.ENTER_WORDS, "Takes what is picked.", enter),
        Key((), "1-9", "pick", "Picks a line of the list."),
        Key(("up",), "Up Down", "line", "The line above or below.", lambda place: place.move(-1)),
        Key(("down",), "Down", "", "", lambda place: place.move(1)),
        Key((*BACKSPACE, "left", "escape"), "Backspace", "back", "Goes back; nothing is written.", go_back),
        *PAGE_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )  # fmt: skip
