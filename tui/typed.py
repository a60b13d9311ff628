"""What is being typed. Once a digit stands, letters belong to it until Enter or until it is empty."""

from pathlib import Path

from store.book.errors import BookError
from store.round.measured import SURE

MOST = 20
_STARTS = set("0123456789.,½¼¾")


def is_pick(character: str) -> bool:
    """Whether a character picks a line of a list: a plain digit from 1 on, no other that counts as one."""
    return character in set("123456789")


def begins_amount(character: str) -> bool:
    """Whether a character is the first of an amount."""
    return character in _STARTS


def is_number(text: str) -> bool:
    """Whether some digits are the number of a line: plain ones, from 1 on."""
    return is_pick(text[:1]) and set(text) <= set("0123456789")


def path_of(text: str) -> Path:
    """A path as it is typed; `~` is the own folder, `~ann` another person's. Raises BookError for somebody unknown."""
    try:
        return Path(text).expanduser()
    except RuntimeError as error:
        raise BookError(f"«{text}»: this laptop knows nobody of that name. Type ~/ for your own folder.") from error


class Typed:
    """One line of typing."""

    def __init__(self, most: int = MOST) -> None:
        """Nothing typed. most: so many characters have room."""
        self.text, self.most = "", most

    @property
    def is_full(self) -> bool:
        """Whether there is room for no more."""
        return len(self.text) >= self.most

    def takes(self, character: str, *, asked: bool = False) -> bool:
        """Whether this character belongs to the entry; then it is added (a full line takes it and drops it).

        asked: it says that what is shown is right, and may stand alone.
        """
        if len(character) != 1 or not character.isprintable():
            return False
        if not (self.text or asked or begins_amount(character)):
            return False
        self.text = (self.text + character)[: self.most]
        return True

    @property
    def amount(self) -> str:
        """What is typed, without the word that it is right."""
        return self.text.rstrip(SURE)

    @property
    def sure(self) -> bool:
        """Whether it was said to be right."""
        return self.text.endswith(SURE)

    def backspace(self) -> bool:
        """Take the last character away; whether there was one."""
        had = bool(self.text)
        self.text = self.text[:-1]
        return had

    def clear(self) -> None:
        """Empty it."""
        self.text = ""
