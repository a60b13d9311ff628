"""The first screen of a keeper who has no book yet."""

from pathlib import Path
from typing import ClassVar

from store.book.clock import Clock
from tui.doorway.asking import PathAsking
from tui.doorway.first_form import FirstForm
from tui.frame import laid_out
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.view import Key, View, go_out

DEMO = "demo"
"""What was chosen, where it is no book."""
CHOICES = (
    ("D", "look around the demo farm", "an invented farm and a pretend morning; nothing of it is yours"),
    ("S", "set up my farm", "a pen, an animal, a feed, a scoop, and the round works; about ten minutes"),
    ("I", "read in a farm folder", "plain tables, as another Penwalk exported them"),
    (
        "O",
        "open a book from somewhere else",
        "a backup copy on a stick, the book of another laptop; a copy of it becomes yours",
    ),
)


class Doorway(View):
    """Four ways in. `chosen` is what was chosen: a book that is there now, or the demo."""

    def __init__(self, place: Path, clock: Clock) -> None:
        """place: where the book will lie."""
        super().__init__()
        self.place, self.clock = place, clock
        self.chosen: str | None = None

    def draw(self, size: Size) -> Page:
        """The four ways."""
        return laid_out(self, heading(self.clock), self._lines(size), [], size)

    def _lines(self, size: Size) -> list[Line]:
        body: list[Line] = [(), *wrapped("No farm book yet.", size.width, Role.STRONG, "  "), ()]
        for sign, words, more in CHOICES:
            body += [
                line("    ", Span(sign, Role.KEY), f"   {words}"),
                *wrapped(more, size.width, Role.QUIET, "        "),
            ]
        return [*body, (), *wrapped(f"Your book will be {self.place}.", size.width, Role.QUIET, "  ")]

    def choose(self, chosen: str) -> None:
        """Leave with what was chosen."""
        self.chosen = chosen

    def demo(self) -> None:
        """The pretend morning."""
        self.choose(DEMO)

    def set_up(self) -> View:
        """The first sheet."""
        return FirstForm(self, self.place, self.clock)

    def take_in(self) -> View:
        """A folder."""
        return PathAsking(self, "READ IN  the path of a farm folder, as /media/stick/my_farm", self._take_in)

    def open_other(self) -> View:
        """A book."""
        return PathAsking(self, "OPEN  the path of a book, as /media/stick/farm.penwalk", self._copy_in)

    def _take_in(self, path: Path) -> None:
        from store.book.folder.take_in import new_book_from  # noqa: PLC0415 heavy

        new_book_from(path, self.place)
        self.choose(str(self.place))

    def _copy_in(self, path: Path) -> None:
        from store.book.restoring import restore_book  # noqa: PLC0415

        restore_book(path, self.place, self.clock.now())
        self.choose(str(self.place))

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(("d",), "D", "demo farm", "A pretend morning on an invented farm.", lambda door: door.demo()),
        Key(("s",), "S", "set up my farm", "A new book.", lambda door: door.set_up()),
        Key(("i",), "I", "read in a folder", "A farm folder of plain tables.", lambda door: door.take_in()),
        Key(("o",), "O", "open a book", "A book that lies somewhere else.", lambda door: door.open_other()),
        Key(("q", "escape", "ctrl+c", "ctrl+q"), "Q", "leave", "Leaves; nothing is made.", go_out),
    )


def heading(clock: Clock) -> list[Line]:
    """The line at the top where there is no round."""
    return [line(Span(f" PENWALK   {clock.now().astimezone():%H:%M}", Role.HEADER)), ()]
