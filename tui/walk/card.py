"""The step under the lamp, drawn: the drawing of its kind, and what the book holds for it already."""

from store.book.words import State
from tui.page import Line, Role, Size, Span, line, wrapped
from tui.telling import entry_words, turn_words
from tui.walk.job import AnyJob
from tui.walk.shown import Shown


def card(shown: Shown, job: AnyJob, size: Size) -> list[Line]:
    """The body of the screen for a step."""
    body = job.lines(shown, shown.step, size)
    return [(), *_flags(shown, size), *body, *_already(shown, size)]


def _flags(shown: Shown, size: Size) -> list[Line]:
    """Where it comes from if it was moved on, and who must not do it alone."""
    step = shown.step
    moved = [line(Span(f"  MOVED ON from {turn_words(step.moved_from)}", Role.STRONG))] if step.moved_from else []
    flagged = [step, *(animal for animal in shown.walker.snapshot.animals if animal.id == step.subject.animal_id)]
    words = []
    if any(getattr(each, "two_people", False) for each in flagged):
        words.append("TWO PEOPLE. Alone: S skips, that is honourable.")
    if any(getattr(each, "adult_only", False) for each in flagged):
        words.append("WORK FOR AN ADULT." if shown.walker.person.adult else "WORK FOR AN ADULT: fetch one, or S skips.")
    return [*moved, *(wrapped(" ".join(words), size.width, Role.WARNING, "  ") if words else [])]


def _already(shown: Shown, size: Size) -> list[Line]:
    """What the book holds for this step already."""
    entry = shown.step.entry
    if entry is None or entry.state is State.OPEN:
        return []
    words = f"{entry_words(shown.walker, entry)}. Typing over it corrects it, U undoes it."
    return wrapped(words, size.width, Role.STRONG, "  ")
