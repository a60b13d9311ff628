"""Help: every key of the place we came from, in a sentence each; from the same table that drives them."""

from typing import ClassVar

from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import BACKSPACE, ENTER, LEAVE_KEY, Key, Over, Place, go_back

SIGN_CELLS, ROWS_OF_THE_FRAME = 12, 7
SENTENCES = (
    "A letter opens, a digit picks or starts an amount, Enter writes. The comma is a decimal point.",
    "Penwalk shows and keeps what you plan and do. Local rules and your vet decide.",
)


class Help(Over):
    """The keys of a place."""

    first = 0

    def draw(self, size: Size) -> Page:
        """One line for each key; Down leafs on where they do not fit."""
        lines = self._lines(size)
        room = max(size.height - ROWS_OF_THE_FRAME, 3)
        first = max(min(self.first * (room - 1), len(lines) - room), 0)
        more = len(lines) - first - room
        words = f"  KEYS HERE{f'   Down: {more} more lines' if more > 0 else ''}"
        return framed(self, [(), line(Span(words, Role.STRONG)), *lines[first : first + room]], size)

    def leaf(self, by: int) -> Place:
        """The next part of the list, or the one before."""
        self.first = max(self.first + by, 0)
        return self

    def _lines(self, size: Size) -> list[Line]:
        body: list[Line] = []
        for sentence in SENTENCES:
            body += wrapped(sentence, size.width, Role.QUIET, "  ")
        for key in self.came_from.KEYS:
            if key.more:
                first, *rest = wrapped(key.more, size.width - SIGN_CELLS)
                body.append(line("  ", Span(f"{key.sign:<{SIGN_CELLS - 2}}", Role.KEY), *first))
                body += [line(" " * SIGN_CELLS, *row) for row in rest]
        return body

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key((*ENTER, *BACKSPACE, "h", "question_mark", "left", "escape"), "Enter", "back to the round",
            "Back; nothing is written.", go_back),
        Key(("down",), "Up Down", "leaf", "More of this list.", lambda place: place.leaf(1)),
        Key(("up",), "Up", "", "", lambda place: place.leaf(-1)),
        LEAVE_KEY,
    )  # fmt: skip
