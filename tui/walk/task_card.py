"""A standing job: what to do, large."""

from textwrap import wrap

from store.round.steps import Step, TaskStep
from tui.page import Line, Role, Size, Span, large_lines, line
from tui.walk.title import scale_for

DOTS_A_LETTER = 5


def task_lines(step: Step, size: Size) -> list[Line]:
    """The body of a task step."""
    scale = scale_for(size)
    place = line(Span(f"  {step.place}", Role.STRONG))
    besides = "Written beside the plan, or dropped from it since."
    end = "Enter when it is done." if isinstance(step, TaskStep) else besides
    lines: list[Line] = [place, ()]
    for words in wrap(step.name, max((size.width - 4) // (DOTS_A_LETTER * scale), 1)):
        lines += [(Span("  "), *row) for row in large_lines(words, Role.NAME, size.width - 4, scale)]
    return [*lines, (), line(Span(f"  {end}"))]
