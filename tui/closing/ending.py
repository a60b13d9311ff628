"""Ending the round: what is open stays open in the book, with what was due, and the round is closed."""

from typing import ClassVar

from msgspec.structs import replace

from store.book.words import Kind, State
from store.round.confirm import ended, left_open
from store.round.steps import Step
from tui.frame import framed
from tui.page import Page, Role, Size, Span, line, wrapped
from tui.place import Over, Place
from tui.view import BACKSPACE, ENTER, Key, go_back, go_out
from tui.walker import Walker


class Ending(Over):
    """Asks once; Enter ends the round."""

    def enter(self) -> Place:
        """Write every open step as left open, then that the round is ended."""
        problem = end_round(self.walker)
        return self.came_from.say(problem or "The round is ended.")

    def draw(self, size: Size) -> Page:
        """What would be left."""
        missing = open_steps(self.walker)
        words = f"END THE {self.walker.turn.slot.upper()} with {len(missing)} not recorded?"
        body = [(), line(Span(f"  {words}", Role.NAME)), ()]
        body += wrapped("Enter ends it. What is not recorded stays so, with what was due; it can be typed in later.",
                        size.width, Role.TEXT, "  ")  # fmt: skip
        return framed(self, body, size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "end it", "Ends the round.", enter),
        Key((*BACKSPACE, "left", "escape"), "Backspace", "not yet", "Back to the closing.", go_back),
        Key(
            ("q", "ctrl+c", "ctrl+q"),
            "Q",
            "leave, it stays open",
            "Leaves; the round stays open.",
            go_out,
        ),
    )


def open_steps(walker: Walker) -> tuple[Step, ...]:
    """What is not recorded."""
    return tuple(step for step in walker.steps if step.state is State.OPEN)


def end_round(walker: Walker, state: State = State.OPEN) -> str | None:
    """Write what was due of every open step, as not recorded or as on paper; then the end. What went wrong in words."""
    hand = replace(walker.hand(), now=walker.latest())
    step_id = walker.turn.step_id(walker.farm.id, Kind.ROUND, walker.farm.id)
    shown = walker.snapshot.counts().get(step_id)
    as_of = walker.turn.day_begins(walker.zone)
    drafts = [replace(left_open(hand, step, state), as_of=None if step.entry else as_of) for step in open_steps(walker)]
    return walker.write(*drafts, ended(hand, step_id, shown.id if shown else None))
