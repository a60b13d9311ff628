"""Help: every key of the place we came from, in a sentence each; from the same table that drives them."""

from typing import ClassVar

from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import LEAVE_KEY, Over
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back

SIGN_CELLS = 12
SENTENCES = (
    "A letter opens, a digit picks or starts an amount, Enter writes. The comma is a decimal point.",
    "Penwalk shows and keeps what you plan and do. Local rules and your vet decide.",
)


class Help(Over):
    """The keys of a place."""

    def draw(self, size: Size) -> Page:
        """One line for each key."""
        return framed(self, [(), line(Span("  KEYS HERE", Role.STRONG)), *self._lines(size)], size)

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
        *SCROLL_KEYS,
        LEAVE_KEY,
    )  # fmt: skip
