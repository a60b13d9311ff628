"""The closing as a text file, which any printer program takes; and on paper, where the system has `lp`."""

import shutil
from collections.abc import Sequence
from pathlib import Path

from store.book.opening import is_address
from store.round.summary import summarise
from tui.bench.coming import Coming
from tui.closing.draw import closing_lines
from tui.closing.short import besides, short
from tui.page import Line
from tui.place import Place
from tui.walk.picking import Picking
from tui.walker import Walker

WIDTH = 78
NO_MARK = -1
LP = "lp"
LP_MOST_S = 10


class Printing(Picking):
    """A file always; paper where there is a way to it."""

    def heading(self) -> str:
        """Where the file will be."""
        return f"PRINT  this page, all of it, into {self.place()}"

    def place(self) -> Path:
        """The file."""
        return place_of(self.walker)

    def text(self) -> str:
        """What is in it."""
        return closing_text(self.walker)

    def choices(self) -> list[str]:
        """What can be done here."""
        paper = ["on paper, and as that file"] if shutil.which(LP) else []
        return ["as a text file", *paper]

    def picked(self, row: int) -> Place:
        """Write the file; then send it to the printer."""
        place = self.place()
        try:
            place.write_text(self.text(), encoding="utf-8")
        except OSError as error:
            return self.say(f"Nothing was printed: {place} cannot be written: {error.strerror}.")
        problem = _to_paper(place) if row else ""
        return self.came_from.say(problem or f"Written: {place}")


def place_of(walker: Walker) -> Path:
    """Beside the book; for a book on a server in the home folder."""
    book = Path.home() / "penwalk" if is_address(walker.book.desk.place) else Path(walker.book.desk.place)
    return book.with_name(f"{book.stem}-{walker.turn.day.isoformat()}-{walker.turn.slot}.txt")


def closing_text(walker: Walker) -> str:
    """The closing as the book holds it, with every line of it."""
    told = besides(short(walker), walker, Coming())
    lines = closing_lines(walker, summarise(walker.snapshot, walker.steps), told, NO_MARK, WIDTH)
    return text_of(lines)


def text_of(lines: Sequence[Line]) -> str:
    """Lines as plain text."""
    return "\n".join("".join(span.text for span in line).rstrip() for line in lines) + "\n"


def _to_paper(place: Path) -> str:
    """What went wrong, in words; empty if the printer took it."""
    import subprocess  # noqa: PLC0415 nothing else needs it, and the first frame must not wait for it

    try:
        subprocess.run([LP, str(place)], check=True, capture_output=True, timeout=LP_MOST_S)  # noqa: S603 no shell
    except (OSError, subprocess.SubprocessError):
        return f"The printer did not take it. The page is in {place}."
    return ""
