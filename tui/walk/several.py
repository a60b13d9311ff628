"""A page over a place where digits pick several things and Enter writes them all; no pick is lost without a word."""

from abc import abstractmethod

from tui.page import cut
from tui.place import Over, Place, Rooms
from tui.view import View
from tui.yard.wording import SAID_MOST


class Several(Over):
    """What is picked counts as half typed."""

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms, back)
        self.leaving = False

    @abstractmethod
    def picked_words(self) -> str:
        """What is picked and not written yet; empty for nothing."""

    @property
    def half_typed(self) -> str:
        """The picks; what is typed in the place below stays there."""
        return self.picked_words() or super().half_typed

    def unwritten(self) -> str:
        """How picks are written or taken away."""
        return f"{self._told()} Enter writes it, the same digit takes it away."

    def _told(self) -> str:
        return f"«{cut(self.picked_words(), SAID_MOST)}» is picked and not written."

    def leave(self) -> View | None:
        """Leave, unless something is picked here or half typed below."""
        return Place.leave(self) if self.picked_words() else super().leave()

    def press(self, name: str, character: str | None) -> View | None:
        """Only the very next key is the same one again."""
        before = self.leaving
        there = super().press(name, character)
        self.leaving = self.leaving and not before
        return there

    def back(self) -> Place:
        """Where we came from; what is picked is said first."""
        if self.picked_words() and not self.leaving:
            self.leaving = True
            return self.say(f"{self._told()} Enter writes it, the same key again leaves it.")
        return self.came_from
