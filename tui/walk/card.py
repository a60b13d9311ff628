"""The step under the lamp, drawn. One drawing for each kind of step."""

from store.book.words import State
from store.round.steps import FeedStep, MilkStep
from tui.page import Line, Role, Size, wrapped
from tui.telling import entry_words
from tui.walk.feed_card import feed_lines
from tui.walk.milk_card import milk_lines
from tui.walk.shown import Shown
from tui.walk.task_card import task_lines


def card(shown: Shown, size: Size) -> list[Line]:
    """The body of the screen for a step."""
    if isinstance(shown.step, FeedStep):
        body = feed_lines(shown, shown.step, size)
    elif isinstance(shown.step, MilkStep):
        body = milk_lines(shown, shown.step, size)
    else:
        body = task_lines(shown.step, size)
    return [(), *body, *_already(shown, size)]


def _already(shown: Shown, size: Size) -> list[Line]:
    """What the book holds for this step already."""
    entry = shown.step.entry
    if entry is None or entry.state is State.OPEN:
        return []
    words = f"{entry_words(shown.walker, entry)}. Type an amount to correct it, U undoes it."
    return wrapped(words, size.width, Role.STRONG, "  ")
