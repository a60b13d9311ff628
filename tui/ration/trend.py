"""How the condition of an animal has gone: her last scores, and when the next one is due."""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from msgspec import Struct

from tui.words import day


class Score(Struct, frozen=True):
    """What was scored on a day. [points]"""

    on: date
    points: float


def trend_words(scores: Sequence[Score], every_days: int | None, today: date) -> Iterator[str]:
    """`CONDITION  2.5 on Wed 4 Mar, 3 on ...: down 0.5 in 14 days`, and since when a score is due. Oldest first."""
    if len(scores) > 1:
        before, last = scores[-2], scores[-1]
        change, days = last.points - before.points, (last.on - before.on).days
        went = f"{'up' if change > 0 else 'down'} {abs(change):g} in" if change else "the same for"
        told = f"{last.points:g} on {day(last.on)}, {before.points:g} on {day(before.on)}"
        yield f"CONDITION  {told}: {went} {days} {'day' if days == 1 else 'days'}."
    if every_days is None:
        return
    due = scores[-1].on + timedelta(days=every_days) if scores else today
    if due <= today:
        yield f"CONDITION  A score is due{f' since {day(due)}' if scores else ''}: M scores her."
