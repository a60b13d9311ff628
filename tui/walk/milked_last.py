"""What the head of a milk step says of a cow that is milked last."""

from store.round.dialect import said
from store.round.milked_last import is_last
from store.round.steps import MilkStep
from tui.page import Line, Role, Size, wrapped
from tui.telling import lately
from tui.walker import Walker


def milk_title(walker: Walker, step: MilkStep) -> str:
    """`MILK`, or `MILK LAST`; that it is withheld the card says itself."""
    return "MILK LAST" if is_last(step, walker.farm.usually_begins(walker.turn)) else "MILK"


def last_lines(walker: Walker, step: MilkStep, size: Size) -> list[Line]:
    """`MILK LAST: left hind hard, hot since Mon evening`; nothing where no quarter is marked."""
    dialect, today = walker.farm.dialect, walker.turn.day
    marks = [
        f"{said(mark.quarter.value, dialect)} {', '.join(mark.signs)} since {lately(mark.since, today)}"
        for mark in step.marked
    ]
    return wrapped(f"MILK LAST: {'; '.join(marks)}", size.width, Role.WARNING, "  ") if marks else []
