"""The path of a folder or a book is typed."""

from collections.abc import Callable
from pathlib import Path
from typing import ClassVar

from store.book.errors import BookError
from tui.frame import laid_out
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.typed import path_of
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, View, go_back, go_out

MOST = 400


class PathAsking(View):
    """Every character belongs to the path; Enter takes it, or says what is wrong with what lies there."""

    def __init__(self, door: View, asked: str, act: Callable[[Path], None]) -> None:
        """Over the door. act: takes what lies at the path. Raises BookError."""
        super().__init__()
        self.door, self.asked, self.act = door, asked, act
        self.text = ""
        self.wrong: list[str] = []

    @property
    def half_typed(self) -> str:
        """The path so far."""
        return self.text

    def takes(self, character: str) -> bool:
        """Every character that can be printed."""
        if len(character) != 1 or not character.isprintable():
            return False
        self.text = (self.text + character)[:MOST]
        return True

    def back(self) -> View:
        """A character back; from an empty line, out."""
        if not self.text:
            return self.door
        self.text = self.text[:-1]
        return self

    def enter(self) -> View | None:
        """Take it; every mistake is listed, and what was typed stays."""
        if not self.text.strip():
            return self.say("No path is typed. Type where it lies, or Esc goes back.")
        try:
            self.act(path_of(self.text.strip()))
        except (BookError, OSError) as error:
            self.wrong = str(error).splitlines()
            return self.say("Nothing was taken in. What was found stands above; mend it, or type another path.")
        return None

    def draw(self, size: Size) -> Page:
        """The question, the line, and what was wrong."""
        shown = self.text[-(size.width - 8) :] + "_"
        body: list[Line] = [
            *wrapped(self.asked, size.width, Role.STRONG, "  "),
            (),
            line("  ", Span(shown, Role.TYPED)),
            (),
        ]
        for each in self.wrong:
            body += wrapped(each, size.width, Role.TEXT, "  ")
        top = [line(Span(" PENWALK", Role.HEADER)), ()]
        return laid_out(self, top, body, [], size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "take it", "Takes what lies there.", lambda view: view.enter()),
        Key((), "letters", "type", "Every letter belongs to the path."),
        Key(BACKSPACE, "Backspace", "a letter back, or out", "A letter back; from an empty line out.", go_back),
        Key(("escape",), "Esc", "out", "Out; nothing is taken in.", lambda view: view.door),
        *SCROLL_KEYS,
        Key(("ctrl+c", "ctrl+q"), "Ctrl+Q", "", "", go_out),
    )
