"""A list that a few letters narrow: Up and Down choose, Enter takes the marked line."""

from abc import abstractmethod
from collections.abc import Sequence
from typing import ClassVar, Generic, TypeVar

from tui.page import Line, Role, Size, Span, cut, line
from tui.place import Place, Rooms
from tui.scroll import Scroll
from tui.view import PAGE_KEYS, Key
from tui.yard.wording import Wording

Found = TypeVar("Found")


class Narrowing(Wording, Generic[Found]):
    """Letters narrow what is found; the mark stands on one line of it."""

    SHOWN: ClassVar[int]
    row = 0

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms, back)
        self.scroll = Scroll(follows=False, up="Page Up", down="Page Down")

    @abstractmethod
    def found(self) -> Sequence[Found]:
        """All that holds what is typed."""

    @abstractmethod
    def told(self, each: Found) -> str:
        """A line of the list, in words."""

    def marked(self) -> Found | None:
        """What the mark stands on; None where nothing is found."""
        found = self.found()
        return found[min(self.row, len(found) - 1)] if found else None

    def takes(self, character: str) -> bool:
        """A letter narrows the list, and marks its first line; no other key moves the mark."""
        taken = super().takes(character)
        self.row = 0 if taken else self.row
        self.scroll.seek()
        return taken

    def back(self) -> Place:
        """A letter less, and the first line again."""
        self.row = 0
        self.scroll.seek()
        return super().back()

    def choose(self, by: int) -> Place:
        """Another of what is found."""
        self.row = (self.row + by) % max(len(self.found()), 1)
        self.scroll.seek()
        return self

    def rows(self, size: Size) -> list[Line]:
        """As many of the lines as are shown, the marked one among them."""
        found = self.found()
        first = max(min(self.row - self.SHOWN // 2, len(found) - self.SHOWN), 0)
        return [self._row(at, each, size) for at, each in enumerate(found[first : first + self.SHOWN], first)]

    def _row(self, at: int, each: Found, size: Size) -> Line:
        words = f" {'>' if at == self.row else ' '} {self.told(each)} "
        return line("  ", Span(cut(words, size.width - 4), Role.HERE if at == self.row else Role.TEXT))

    KEYS: ClassVar[tuple[Key, ...]] = (
        *Wording.KEYS,
        Key(("up",), "Up Down", "choose", "Another of what is found.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
        *PAGE_KEYS,
    )
