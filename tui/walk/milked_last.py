"""What the head of a milk step says of a cow that is milked last."""

from store.round.dialect import said
from store.round.milked_last import is_last
from store.round.steps import MilkStep
from tui.telling import lately
from tui.walker import Walker


def milk_title(walker: Walker, step: MilkStep) -> str:
    """`MILK`, or `MILK LAST: left hind hard, hot since Mon evening`; that it is withheld the card says itself."""
    if not is_last(step, walker.farm.usually_begins(walker.turn)):
        return "MILK"
    dialect, today = walker.farm.dialect, walker.turn.day
    marks = [
        f"{said(mark.quarter.value, dialect)} {', '.join(mark.signs)} since {lately(mark.since, today)}"
        for mark in step.marked
    ]
    return f"MILK LAST: {'; '.join(marks)}" if marks else "MILK LAST"
