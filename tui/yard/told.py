"""What the last person left for the next: it has to be paged past before the round begins."""

from typing import ClassVar

from store.book.figures import NotedFigure
from store.book.snapshot import Written
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import ENTER, Key, Over, go_back, go_out
from tui.telling import who
from tui.walker import Walker
from tui.words import clock


class Told(Over):
    """The notes marked for the next person. What was moved on stands in the walk."""

    def draw(self, size: Size) -> Page:
        """Each note with who wrote it and when."""
        body: list[Line] = [(), line(Span("  LEFT FOR YOU", Role.NAME)), ()]
        for entry in to_tell(self.walker):
            words = " ".join(note.words for note in entry.of(NotedFigure))
            about = self.walker.snapshot.name_of(entry.subject) or "the whole yard"
            when = clock(entry.happened_at, self.walker.farm.zone)
            body += wrapped(f"{about}: {words}", size.width, Role.STRONG, "  ")
            body.append(line(Span(f"    {when} {who(self.walker, entry)}", Role.QUIET)))
        return framed(self, body, size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "read, begin the round", "Begins the round.", go_back),
        Key(("q", "ctrl+c", "ctrl+q"), "Q", "leave", "Leaves.", go_out),
    )


def to_tell(walker: Walker) -> list[Written]:
    """The notes of the round before that are for the next person; none once this round has begun."""
    if walker.snapshot.entries:
        return []
    return [entry for entry in walker.snapshot.notes if any(note.tell for note in entry.of(NotedFigure))]
