"""Help: every key of the place we came from, in a sentence each; from the same table that drives them."""

from typing import ClassVar

from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, cut, line
from tui.place import Key, Place, Rooms


class Help(Place):
    """The keys of a place."""

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it explains."""
        super().__init__(rooms)
        self.came_from = back

    @property
    def half_typed(self) -> str:
        """What is typed in the place below stays there."""
        return self.came_from.half_typed

    def back(self) -> Place:
        """Where we came from."""
        return self.came_from

    def draw(self, size: Size) -> Page:
        """One line for each key."""
        body: list[Line] = [(), line(Span("  KEYS HERE", Role.STRONG))]
        for key in self.came_from.KEYS:
            body.append(line("  ", Span(f"{key.sign:<10}", Role.KEY), cut(key.more, size.width - 13)))
        body += [(), line(Span(cut("  A letter opens, a digit picks or starts an amount, Enter writes. The comma is a decimal point.", size.width - 1)))]
        body += [line(Span(cut("  Local rules and your vet decide. Penwalk only shows and keeps what you plan and do.", size.width - 1), Role.QUIET))]
        return framed(self, body, size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(("enter", "ctrl+j", "backspace", "ctrl+h", "h", "question_mark", "left", "escape"), "Enter", "back to the round", "Back; nothing is written.", back),
        Key(("q", "ctrl+c", "ctrl+q"), "Q", "leave", "Leaves.", Place.leave),
    )  # fmt: skip
