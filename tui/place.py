"""A place: something that takes every key and draws the whole screen. Only one place is shown at a time.

Each place has one table of keys; it drives what a key does, the key line, and the help.
"""

from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, ClassVar, Protocol, cast

from tui.page import Page, Size
from tui.scroll import Scroll
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

    @property
    def is_letter(self) -> bool:
        """Whether it is a letter, which belongs to an amount while one is typed."""
        return bool(self.names) and len(self.names[0]) == 1

    def shown(self, place: "Place") -> str:
        """The words for the key line."""
        return self.words if isinstance(self.words, str) else self.words(place)


class Rooms(Protocol):
    """How one place leads to another, so that no place imports the next."""

    walker: Walker

    def enter(self) -> "Place":
        """Where a sitting, or the next round of one, begins."""

    def first(self, after: int = -1) -> "Place":
        """The first step behind a place in the walk that is not recorded, or the closing."""

    def this_round(self) -> "Place":
        """The round of this moment, where it stands."""

    def lamp(self, index: int, *, taken_up: bool = True) -> "Place":
        """A step of the walk."""

    def closing(self) -> "Place":
        """The end of the walk."""

    def skipping(self, index: int, back: "Place") -> "Place":
        """The reasons for skipping a step."""

    def later(self, index: int, back: "Place") -> "Place":
        """When a step is to be done instead."""

    def more(self, back: Any) -> "Place":
        """What else can be done at a step."""

    def quarters(self, back: Any) -> "Place":
        """What is wrong with a quarter."""

    def why(self, back: Any) -> "Place":
        """What the numbers of a step are made of."""

    def reason(self, index: int, back: "Place") -> "Place":
        """A reason in the keeper's own words."""

    def left_over(self, back: Any, step: Any) -> "Place":
        """How much of a feed was left."""

    def new_scoop(self, back: Any, step: Any) -> "Place":
        """A measure weighed here and now."""

    def returned(self, back: "Place") -> "Place":
        """What the time away has changed."""

    def past_rounds(self, back: "Place") -> "Place":
        """Earlier rounds."""

    def on_paper(self, back: "Place") -> "Place":
        """The few times of a round that was done on paper."""

    def undoing(self, back: "Place") -> "Place":
        """What can be undone."""

    def going(self, back: "Place") -> "Place":
        """To a step by a few letters."""

    def noting(self, back: "Place") -> "Place":
        """A note."""

    def persons(self, back: "Place") -> "Place":
        """Who does the round."""

    def timing(self, back: "Place") -> "Place":
        """When it happened."""

    def keeping(self, back: "Place") -> "Place":
        """A copy of the book on a stick."""

    def vet(self, back: "Place") -> "Place":
        """Signs that mean call, the number, her facts."""

    def locked(self, back: "Place") -> "Place":
        """Keys that do nothing, for wiping the keyboard."""

    def buckets(self, back: "Place") -> "Place":
        """All buckets on one screen."""

    def whole_pen(self, back: Any) -> "Place":
        """All plain steps of a pen on one screen."""

    def printing(self, back: "Place") -> "Place":
        """The closing as a file, or on paper."""

    def ending(self, back: "Place") -> "Place":
        """Asks before the round is ended."""

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
        self.scroll = Scroll()

    @property
    def scrolls(self) -> bool:
        """Whether its keys move through a page that is longer than the window."""
        return any(key in PAGE_KEYS for key in self.KEYS)

    @abstractmethod
    def draw(self, size: Size) -> Page:
        """The whole screen. Drawing changes nothing of the round."""

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

    def move(self, lines: int) -> "Place":
        """Other lines of a page that is longer than the window."""
        self.scroll.move(lines)
        return self

    def leaf_page(self, pages: int) -> "Place":
        """The next window of it, or the one before."""
        self.scroll.leaf(pages)
        return self

    def leave(self) -> "Place | None":
        """Leave the program, unless something is half typed; the round stays open."""
        if self.half_typed:
            return self.say(f"«{self.half_typed}» is typed and not written. Enter writes it, Backspace takes it away.")
        return None


class Over(Place):
    """A place over another one, which it goes back to."""

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms)
        self.came_from = back

    @property
    def half_typed(self) -> str:
        """What is typed in the place below stays there."""
        return self.came_from.half_typed

    def back(self) -> Place:
        """Where we came from; nothing is written."""
        return self.came_from

    def leave(self) -> Place | None:
        """Leave, unless something is half typed in the place below: then back to it, where the keys for it are."""
        return self.came_from.leave() if self.half_typed else None


def go_back(place: Any) -> Place | None:
    """A key that goes back, whatever going back means at a place."""
    return cast("Place | None", place.back())


def go_out(place: Place) -> Place | None:
    """A key that leaves the program, whatever has to be asked at a place before."""
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
UNDO_KEY = Key(("u",), "U", "undo", "Undoes what was written last, or before: shows it first, Enter undoes.",
               lambda place: place.rooms.undoing(place))  # fmt: skip
GO_KEY = Key(("g",), "G", "go to", "To a pen, animal or step by a few letters; typing over a done one corrects it.",
             lambda place: place.rooms.going(place))  # fmt: skip
NOTE_KEY = Key(
    ("n",), "N", "note", "A note, for the book or for the next person.", lambda place: place.rooms.noting(place)
)
PERSON_KEY = Key(("p",), "P", "person", "Who does the round.", lambda place: place.rooms.persons(place))
TIME_KEY = Key(("t",), "T", "time", "When it happened, for the next entry.", lambda place: place.rooms.timing(place))
VET_KEY = Key(("v",), "V", "vet", "Signs that mean call the vet, the number, her facts.",
              lambda place: place.rooms.vet(place))  # fmt: skip
LOCK_KEY = Key(
    ("z",), "Z", "lock", "Locks the keys for wiping; `open` and Enter unlock.", lambda place: place.rooms.locked(place)
)
BUCKETS_KEY = Key(("b",), "B", "buckets", "All buckets on one screen.", lambda place: place.rooms.buckets(place))
HELP_KEY = Key(("h", "question_mark"), "H", "help", "This list of keys.", lambda place: place.rooms.help(place))
LEAVE_KEY = Key(("q", "ctrl+c", "ctrl+q"), "Q", "leave", "Leaves. The round stays open; coming back goes on.",
                go_out)  # fmt: skip
ROUNDS_KEY = Key(("r",), "R", "rounds", "Earlier rounds: to look at, type in, correct.",
                 lambda place: place.rooms.past_rounds(place))  # fmt: skip
KEEP_KEY = Key(("k",), "K", "", "Keeps a copy of the book on a stick, and reads it again.",
               lambda place: place.rooms.keeping(place))  # fmt: skip
YARD_KEYS = (
    BUCKETS_KEY, GO_KEY, NOTE_KEY, UNDO_KEY, PERSON_KEY, TIME_KEY, VET_KEY, ROUNDS_KEY, KEEP_KEY, HELP_KEY, LOCK_KEY,
    LEAVE_KEY,
)  # fmt: skip
