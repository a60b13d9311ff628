"""What is looked at again, in words: whose it is, when, how it was."""

from datetime import datetime

from store.book.drafts import Subject
from store.book.figures import WatchedFigure
from store.book.reading.watches import Looked, Watch
from tui.walker import Walker
from tui.words import clock, near


def whose(walker: Walker, subject: Subject) -> str:
    """The name of what is looked at."""
    return walker.snapshot.name_of(subject) or "the whole yard"


def due_words(watch: Watch, now: datetime, zone: str) -> str:
    """`at 14:30`, `14:30-17:50`, `NOW, until 17:50`, `LATE, was 06:30`."""
    at = near(watch.due_at, now, zone)
    until = near(watch.due_until, now, zone) if watch.due_until else ""
    if watch.is_late(now):
        return f"LATE, was {until or at}"
    if watch.is_due(now):
        return f"NOW, until {until}"
    return f"{at}-{clock(watch.due_until, zone)}" if watch.due_until else f"at {at}"


def watch_words(walker: Walker, watch: Watch) -> str:
    """`LATE, was 06:30  Fennel: left hind foot, the same at 04:30`."""
    now, zone = walker.book.clock.now(), walker.zone
    last = f", {watch.looks.value} at {near(watch.seen_at, now, zone)}" if watch.looks else ""
    return f"{due_words(watch, now, zone)}  {whose(walker, watch.subject)}: {watch.words}{last}"


def looked_words(walker: Walker, looked: Looked) -> str:
    """`06:31 Fennel: left hind foot, worse, again at 08:31`."""
    at = near(looked.at, walker.book.clock.now(), walker.zone)
    return f"{at}  {whose(walker, looked.subject)}: {looked.figure.words}, {figure_words(walker, looked.figure)}"


def figure_words(walker: Walker, figure: WatchedFigure) -> str:
    """`worse, again at 08:31`; `all right, no more`."""
    now, zone = walker.book.clock.now(), walker.zone
    again = f"again at {near(figure.due_at, now, zone)}" if figure.due_at else "no more"
    return f"{figure.looks.value}, {again}" if figure.looks else again
