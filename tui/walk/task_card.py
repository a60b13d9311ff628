"""A standing job: what to do, large; and when it comes, where that is not every day."""

from collections.abc import Iterator
from datetime import date
from textwrap import wrap

from store.book.facts.jobs import Job
from store.round.steps import Step, TaskStep
from tui.page import Line, Role, Size, Span, large_lines, line, wrapped
from tui.walk.title import scale_for
from tui.words import day

DOTS_A_LETTER = 5


def task_lines(step: Step, today: date, size: Size) -> list[Line]:
    """The body of a task step."""
    scale = scale_for(size)
    place = line(Span(f"  {step.place}", Role.STRONG))
    besides = "Written beside the plan, or dropped from it since."
    end = "Enter when it is done." if isinstance(step, TaskStep) else besides
    lines: list[Line] = [place, ()]
    for words in wrap(step.name, max((size.width - 4) // (DOTS_A_LETTER * scale), 1)):
        lines += [(Span("  "), *row) for row in large_lines(words, Role.NAME, size.width - 4, scale)]
    comes = (
        ", ".join(_comes(step.job, today)) if isinstance(step, TaskStep) and step.job and not step.moved_from else ""
    )
    told = wrapped(f"COMES   {comes}", size.width, Role.TEXT, "  ") if comes else []
    return [*lines, (), line(Span(f"  {end}")), *told]


def _comes(job: Job, today: date) -> Iterator[str]:
    """When it comes: `every 3 days, last Sun 8 Mar`, `day 12 of its season`."""
    due = job.due
    if due.once:
        yield "once, until it is done"
    elif due.every_days > 1:
        yield f"every {due.every_days} days, {f'last {day(job.last_on)}' if job.last_on else 'not done yet'}"
    if due.season:
        yield f"day {due.day_of_season(today)} of its season"
    if due.until_on:
        yield f"until {day(due.until_on)}"
    if due.stage:
        yield f"while one is there that is: {due.stage.value}"
