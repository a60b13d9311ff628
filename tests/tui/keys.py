"""A sitting without a terminal: keys in, pages out, through the very places and tables that the program uses."""

from typing import Self

from store.book.snapshot import Written
from store.book.words import State
from tui.page import Size
from tui.rooms import House
from tui.view import View

NAMED = {
    " ": "space",
    ".": "full_stop",
    ",": "comma",
    "/": "slash",
    "?": "question_mark",
    "=": "equals_sign",
    "+": "plus",
}
CHARACTERS = {"enter": "\r", "escape": "\x1b", "backspace": "\x7f"}
"""What the terminal sends for a named key, where it is a character too."""
WORDS = {"enter", "backspace", "up", "down", "left", "right", "escape", "pageup", "pagedown"}


class Keys:
    """Presses keys at a view, and goes where they lead."""

    def __init__(self, view: View) -> None:
        """At a first view."""
        self.place: View | None = view
        self.presses = 0

    def press(self, *keys: str) -> Self:
        """Keys by name (`enter`), or text typed a letter at a time (`7.2`)."""
        for key in keys:
            for each in [key] if key in WORDS else list(key):
                assert self.place is not None, "the keeper has left"
                self.presses += 1
                self.place = self.place.press(NAMED.get(each, each), CHARACTERS.get(each) if each in WORDS else each)
                if self.place and self.place.waits:
                    self.place.finish()
        return self

    @property
    def said(self) -> str:
        """The sentence on the screen."""
        assert self.place is not None, "the keeper has left"
        return self.place.said

    def text(self, width: int = 80, height: int = 24) -> str:
        """The page as plain text."""
        assert self.place is not None, "the keeper has left"
        return self.place.draw(Size(width, height)).text()


class Sitting(Keys):
    """A sitting of one keeper with one book."""

    def __init__(self, house: House) -> None:
        """At the first place of the sitting."""
        super().__init__(house.first())
        self.house = house
        self.walker = house.walker

    def begin(self) -> "Sitting":
        """Where a sitting of this moment begins."""
        self.place = self.house.enter()
        return self

    def newest(self) -> Written:
        """The entry written last."""
        return self.walker.snapshot.entries[-1]

    def written(self) -> int:
        """How many entries this round has."""
        return len(self.walker.snapshot.entries)

    def to_step(self, name: str, kind: str, which: int = 0) -> "Sitting":
        """Stand at a step, ready to write; the first of that name and kind, or a later one."""
        found = [at for at, step in enumerate(self.walker.steps) if (step.name, step.kind) == (name, kind)]
        self.place = self.house.lamp(found[which])
        return self

    def looked(self) -> "Sitting":
        """The soak was looked at, and is fit."""
        return self.to_step("lucerne pellets", "soak").press("enter")

    def states(self) -> list[State]:
        """What became of each step."""
        return [step.state for step in self.walker.steps]
