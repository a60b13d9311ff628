"""The first sheet on the screen: it makes the book."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import pendulum
from pendulum.tz import get_local_timezone

from store.book.clock import Clock
from store.book.drafts import RowDraft
from store.herd.first import FirstSheet
from store.herd.sheet import Answers
from tui.farm.form import Form
from tui.frame import laid_out
from tui.page import Page, Role, Size, Span, line
from tui.view import View

if TYPE_CHECKING:
    from tui.doorway.doorway import Doorway


class FirstForm(Form):
    """Name, person, units, clock."""

    def __init__(self, door: "Doorway", place: Path, clock: Clock) -> None:
        """Over the door."""
        super().__init__()
        self.first_sheet = FirstSheet(own_zone())
        self.ask(self.first_sheet)
        self.door, self.place, self.clock = door, place, clock

    def draw(self, size: Size) -> Page:
        """The sheet."""
        top = [line(Span(" PENWALK   set up my farm", Role.HEADER)), ()]
        return laid_out(self, top, self.lines(size), [], size)

    def out(self) -> View:
        """Back to the door."""
        return self.door

    def what_changes(self, rows: Sequence[RowDraft], answers: Answers) -> list[str]:  # noqa: ARG002
        """Where the book will lie."""
        return [f"makes the book {self.place}", "then: pens, animals, feeds, scoops, and who gets what"]

    def write(self, rows: Sequence[RowDraft], answers: Answers) -> None:  # noqa: ARG002
        """Make the book, and leave the door with it. Raises BookError."""
        from store.book.beginning import begin_book  # noqa: PLC0415 heavy

        begin_book(self.place, self.first_sheet.settings(answers), answers["person"], self.clock)
        self.door.choose(str(self.place))


def own_zone() -> str:
    """The time zone of this laptop, where it says one that is known; else UTC."""
    name = get_local_timezone().name
    return name if name in pendulum.timezones() else "UTC"
