"""A place: something that takes every key and draws the whole screen. Only one place is shown at a time.

Each place has one table of keys; it drives what a key does, the key line, and the help.
"""

from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, ClassVar, Protocol

from tui.page import Page, Size
from tui.walker import Walker


@dataclass(frozen=True, slots=True)
class Key:
    """One row of a place's table.

    names: what the terminal calls the key, letters in lower case; none: typed characters, named for the help.
    sign: what the key line shows.
    words: what it does, for the key line; it may depend on what is shown.
    more: the same in a sentence, for the help.
    act: what it does; the answer is the place to show next, None leaves the program.
    """

    names: tuple[str, ...]
    sign: str
    words: str | Callable[[Any], str]
    more: str
    act: "Callable[[Any], Place | None] | None" = None

    def shown(self, place: "Place") -> str:
        """The words for the key line."""
        return self.words if isinstance(self.words, str) else self.words(place)


class Rooms(Protocol):
    """How one place leads to another, so that no place imports the next."""

    walker: Walker

    def lamp(self, index: int, *, taken_up: bool = True) -> "Place":
        """A step of the walk."""

    def closing(self) -> "Place":
        """The end of the walk."""

    def skipping(self, index: int, back: "Place") -> "Place":
        """The reasons for skipping a step."""

    def undoing(self, back: "Place") -> "Place":
        """What can be undone."""

    def help(self, back: "Place") -> "Place":
        """The keys of a place."""


class Place(ABC):
    """Where the keeper is."""

    KEYS: ClassVar[tuple[Key, ...]]

    def __init__(self, rooms: Rooms) -> None:
        """At the round at hand."""
        self.rooms = rooms
        self.walker = rooms.walker
        self.said = ""

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

    def press(self, name: str, character: str | None) -> "Place | None":
        """A key: first what is being typed, then the table. A key that is not in it changes nothing."""
        self.said = ""
        if character and self.takes(character):
            return self
        act = next((key.act for key in self.KEYS if name.lower() in key.names), None)
        return act(self) if act else self

    def say(self, sentence: str) -> "Place":
        """Stay, with a sentence for the keeper."""
        self.said = sentence
        return self

    def leave(self) -> "Place | None":
        """Leave the program, unless something is half typed; the round stays open."""
        if self.half_typed:
            return self.say(f"«{self.half_typed}» is typed and not written. Enter writes it, Backspace takes it away.")
        return None


ENTER = ("enter", "ctrl+j")
BACKSPACE = ("backspace", "ctrl+h", "delete")
UNDO_KEY = Key(("u",), "U", "undo", "Undoes what was written last, or before: shows it first, Enter undoes.",
               lambda place: place.rooms.undoing(place))  # fmt: skip
HELP_KEY = Key(("h", "question_mark"), "H", "help", "This list of keys.", lambda place: place.rooms.help(place))
LEAVE_KEY = Key(("q", "ctrl+c", "ctrl+q"), "Q", "leave", "Leaves. The round stays open; coming back goes on.",
                Place.leave)  # fmt: skip
