"""A note: words about this step's animal or pen, with a mark for the next person."""

from typing import ClassVar

from store.book.drafts import Subject
from store.round.confirm import noted
from tui.page import Line, Role, Size, Span, line
from tui.place import Place, Rooms
from tui.view import Key
from tui.yard.wording import Wording


class Noting(Wording):
    """Enter writes the note; Down marks it for the next person."""

    MOST: ClassVar[int] = 500

    def __init__(self, rooms: Rooms, back: Place, subject: Subject, name: str) -> None:
        """About something, or about the whole yard."""
        super().__init__(rooms, back)
        self.subject = subject
        self.name = name
        self.tell = False

    def heading(self) -> str:
        """About whom."""
        return f"NOTE  {self.name or 'the whole yard'}"

    def turn_mark(self) -> Place:
        """For the next person, or not."""
        self.tell = not self.tell
        return self

    def enter(self) -> Place:
        """Write it."""
        if not self.text.strip():
            return self.say("Nothing is typed. Type the note, or Esc goes back.")
        problem = self.walker.write(noted(self.walker.hand(), self.subject, self.text.strip(), tell=self.tell))
        return self.say(problem) if problem else self.came_from.say("The note is written.")

    def below(self, size: Size) -> list[Line]:  # noqa: ARG002
        """The mark."""
        words = " > TELL the next person before the round begins " if self.tell else "   for the book "
        return [line("  ", Span(words, Role.HERE if self.tell else Role.TEXT))]

    KEYS: ClassVar[tuple[Key, ...]] = (
        *Wording.KEYS,
        Key(("up", "down"), "Up Down", "tell the next person", "Marks it for the next person.", turn_mark),
    )
