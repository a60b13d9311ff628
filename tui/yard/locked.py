"""Locked for wiping the keyboard: no key does anything; `open` and Enter unlock."""

from typing import ClassVar

from tui.place import Place
from tui.view import BACKSPACE, ENTER, Key, go_back
from tui.yard.wording import Wording

WORD = "open"


class Locked(Wording):
    """Nothing is written, whatever is pressed."""

    MOST = 20

    def heading(self) -> str:
        """How to unlock."""
        return f"LOCKED  wipe the keyboard; nothing is written. Type {WORD} and press Enter to go on"

    def takes(self, character: str) -> bool:
        """Keeps the last letters, so that wiping does not bury the word."""
        taken = super().takes(character)
        self.text = self.text[-len(WORD) :]
        return taken

    def enter(self) -> Place:
        """Unlock with the word."""
        if self.text.lower() == WORD:
            return self.came_from.say("The keys are open again.")
        self.text = ""
        return self

    def back(self) -> Place:
        """Stays locked."""
        self.text = self.text[:-1]
        return self

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key((), "letters", f"type {WORD}", "No other key does anything."),
        Key(ENTER, "Enter", "unlock, once it is typed", "Unlocks with the word.", lambda place: place.enter()),
        Key(BACKSPACE, "Backspace", "", "", go_back),
    )
