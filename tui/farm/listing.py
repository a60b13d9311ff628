"""A list of what is set up: Enter opens one, A begins a new one."""

from collections.abc import Callable, Sequence
from typing import ClassVar

from msgspec import Struct

from store.book.register import Register, read_register
from tui.place import Place, Rooms
from tui.view import Key, View
from tui.walk.picking import Picking


class Entry(Struct, frozen=True):
    """One line of a list, and what opens behind it."""

    words: str
    open: "Callable[[Listing], Place]"


class Chapter(Struct, frozen=True):
    """What a list shows: its title, its lines as the book stands, what a new one asks, and what fills it when empty.

    new: raises LookupError with a sentence where something else has to be there first.
    """

    title: str
    entries: Callable[[Register], Sequence[Entry]]
    empty: str = ""
    new: "Callable[[Listing], Place] | None" = None
    count: Callable[[Register], int] | None = None  # where not every line counts

    def held(self, register: Register) -> int:
        """How many it holds."""
        return self.count(register) if self.count else len(self.entries(register))


class Listing(Picking):
    """A chapter of the farm. It reads the book again once something was changed."""

    ENTER_WORDS = "open"

    def __init__(self, rooms: Rooms, back: Place, chapter: Chapter) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms, back)
        self.chapter = chapter
        self.row = 0
        self._read()

    def _read(self) -> None:
        self.seen = self.walker.looked_at
        self.register = read_register(self.walker.book.desk, self.walker.book.clock.now())
        self._entries = list(self.chapter.entries(self.register))

    def up_to_date(self) -> Register:
        """The book as it stands."""
        if self.seen != self.walker.looked_at:
            self._read()
        return self.register

    @property
    def entries(self) -> list[Entry]:
        """The lines, as the book stands."""
        self.up_to_date()
        return self._entries

    def choices(self) -> list[str]:
        """Their words."""
        return [entry.words for entry in self.entries]

    def heading(self) -> str:
        """What it is a list of, and what fills it."""
        return self.chapter.title if self.entries else f"{self.chapter.title}: none yet. {self.chapter.empty}"

    def picked(self, row: int) -> Place:
        """Open it."""
        return self.entries[row].open(self)

    def enter(self) -> View:
        """Open the picked one; in an empty list, a new one."""
        return super().enter() if self.entries else self.add()

    def add(self) -> Place:
        """A new one."""
        if self.chapter.new is None:
            return self.say("Nothing is added here.")
        try:
            return self.chapter.new(self)
        except LookupError as problem:
            return self.say(str(problem.args[0]))

    def add_words(self) -> str:
        """What A does."""
        return "a new one" if self.chapter.new else ""

    KEYS: ClassVar[tuple[Key, ...]] = (
        *Picking.KEYS[:1],
        Key(("a",), "A", add_words, "A new one of these.", add),
        Key(("u",), "U", "take back", "Takes back what was changed last here: shows it first.",
            lambda listing: listing.rooms.taking_back(listing)),
        *Picking.KEYS[1:],
    )  # fmt: skip


def opened(listing: Listing) -> Place:
    """A list that is empty opens its first new one at once."""
    return listing if listing.entries or listing.chapter.new is None else listing.add()
