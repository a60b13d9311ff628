"""A view: something that takes every key and draws the whole screen. Only one view is shown at a time.

Each view has one table of keys; it drives what a key does, the key line, and the help.
"""

from abc import ABC, abstractmethod
from collections.abc import Callable
from typing import Any, ClassVar, Self, cast

from msgspec import Struct

from store.book.errors import BookError
from tui.page import Page, Size
from tui.scroll import Scroll


class Key(Struct, frozen=True):
    """One row of a view's table.

    names: what the terminal calls the key, letters in lower case; none: typed characters, named for the help.
    sign: what the key line shows.
    words: what it does, for the key line; it may depend on what is shown.
    more: the same in a sentence, for the help.
    act: what it does; the answer is the view to show next, None leaves the program.
    """

    names: tuple[str, ...]
    sign: str
    words: str | Callable[[Any], str]
    more: str
    act: "Callable[[Any], View | None] | None" = None

    @property
    def is_letter(self) -> bool:
        """Whether it is a letter, which belongs to an amount while one is typed."""
        return bool(self.names) and len(self.names[0]) == 1

    def shown(self, place: "View") -> str:
        """The words for the key line."""
        return self.words if isinstance(self.words, str) else self.words(place)


class View(ABC):
    """A screen that takes keys."""

    KEYS: ClassVar[tuple[Key, ...]]

    def __init__(self) -> None:
        """With nothing said yet."""
        self.said = ""
        self.scroll = Scroll()

    @property
    def scrolls(self) -> bool:
        """Whether its keys move through a page that is longer than the window."""
        return any(key in PAGE_KEYS for key in self.KEYS)

    @abstractmethod
    def draw(self, size: Size) -> Page:
        """The whole screen. Drawing changes nothing."""

    def takes(self, character: str) -> bool:  # noqa: ARG002 a place without an entry takes nothing
        """Whether a character belongs to something being typed here."""
        return False

    @property
    def half_typed(self) -> str:
        """What would be lost by leaving now."""
        return ""

    @property
    def typing(self) -> bool:
        """Whether letters belong to an amount just now."""
        return False

    def press(self, name: str, character: str | None) -> "View | None":
        """A key: first what is being typed, then the table. A key that is not in it changes nothing."""
        self.said = ""
        if character and self.takes(character):
            return self
        act = next((key.act for key in self.KEYS if name.lower() in key.names), None)
        return self.trying(lambda: _standing(act(self))) if act else self

    def trying(self, act: "Callable[[], View | None]") -> "View | None":
        """Do something; what the book refuses is said here, and what is typed stays."""
        try:
            return act()
        except BookError as error:
            return self.say(str(error))

    def standing(self) -> "View":
        """This view, when a key has led to it; another one where what it is about is gone. Raises BookError."""
        return self

    def say(self, sentence: str) -> Self:
        """Stay, with a sentence for the keeper."""
        self.said = sentence
        return self

    def move(self, lines: int) -> Self:
        """Other lines of a page that is longer than the window."""
        self.scroll.move(lines)
        return self

    def leaf_page(self, pages: int) -> Self:
        """The next window of it, or the one before."""
        self.scroll.leaf(pages)
        return self

    def minute(self) -> bool:
        """A minute of the clock has begun while this is shown: whether the bell is to ring."""
        return False

    @property
    def waits(self) -> bool:
        """Whether something that takes long is still to be done: it is drawn first that it is, then it is done."""
        return False

    def finish(self) -> None:  # noqa: B027 most views wait for nothing
        """Do what waits."""

    def leave(self) -> "View | None":
        """Leave the program, unless something is half typed."""
        return self.say(self.unwritten()) if self.half_typed else None

    def unwritten(self) -> str:
        """What would be lost by leaving now, and how it is written or taken away."""
        return f"«{self.half_typed}» is typed and not written. Enter writes it, Backspace takes it away."


def _standing(view: View | None) -> View | None:
    return view.standing() if view else None


def go_back(place: Any) -> View | None:
    """A key that goes back, whatever going back means at a view."""
    return cast("View | None", place.back())


def go_out(place: View) -> View | None:
    """A key that leaves the program, whatever has to be asked at a view before."""
    return place.leave()


PAGE_KEYS = (
    Key(("pageup",), "Page Up", "", "", lambda place: place.leaf_page(-1)),
    Key(("pagedown",), "Page Up Dn", "", "A whole window of such a page.", lambda place: place.leaf_page(1)),
)
SCROLL_KEYS = (
    Key(("up",), "Up Down", "", "More lines, where a page is longer than the window.", lambda place: place.move(-1)),
    Key(("down",), "Down", "", "", lambda place: place.move(1)),
    *PAGE_KEYS,
)
ENTER = ("enter", "ctrl+j")
BACKSPACE = ("backspace", "ctrl+h", "delete")
