"""Back after a while: when the last step was confirmed, how long ago, and what has gone stale since."""

from collections.abc import Iterator
from datetime import timedelta
from typing import ClassVar

from store.book.figures import MilkedFigure
from store.book.words import Fate, State
from store.round.cool import UNSETTLED
from store.round.overdue import overdue_calves
from store.round.steps import CoolStep, SoakCheckStep
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, large_lines, line, wrapped
from tui.place import Over
from tui.telling import entry_words
from tui.view import ENTER, SCROLL_KEYS, Key, go_back, go_out
from tui.walker import Walker
from tui.words import clock, hours

AWAY = timedelta(minutes=20)
"""Away for longer than this, the screen says first what the time has changed. Common practice."""
MILK_COLD_H = 0.5
"""Milk should be cold half an hour after milking (the good standard of extension leaflets). [h]"""


class Returned(Over):
    """The first key only wakes; Enter goes on."""

    def draw(self, size: Size) -> Page:
        """The last confirm, the time since, and what went stale."""
        body: list[Line] = [(), line(Span("  BACK AT THE BENCH", Role.STRONG)), ()]
        last = self.walker.last_confirmed()
        if last:
            gone_h = (self.walker.book.clock.now() - last.written_at).total_seconds() / 3600
            body += [(Span("  "), *row) for row in large_lines(hours(gone_h), Role.AMOUNT, size.width - 4)]
            body += [(), line(f"  since the last step: {entry_words(self.walker, last)}"), ()]
        for sentence in stale(self.walker):
            body += wrapped(sentence, size.width, Role.WARNING, "  ")
        return framed(self, body, size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "go on", "Goes on where the round stood.", go_back),
        Key(("q", "ctrl+c", "ctrl+q"), "Q", "leave", "Leaves; the round stays open.", go_out),
        *SCROLL_KEYS,
    )


def is_long_ago(walker: Walker) -> bool:
    """Whether the last step of this round was confirmed long ago, and the round goes on."""
    last = walker.last_confirmed()
    return last is not None and not walker.ended() and walker.book.clock.now() - last.written_at > AWAY


def stale(walker: Walker) -> Iterator[str]:
    """What the time has changed."""
    now, zone = walker.book.clock.now(), walker.farm.zone
    to_cool = any(isinstance(step, CoolStep) and step.state in UNSETTLED for step in walker.steps)
    for entry in walker.snapshot.counts().values() if to_cool else ():
        milked = entry.the(MilkedFigure)
        age_h = (now - entry.happened_at).total_seconds() / 3600
        if milked and milked.fate is Fate.HOUSE and entry.state is State.DONE and age_h > MILK_COLD_H:
            name = walker.snapshot.name_of(entry.subject)
            yield f"MILK  {name}: milked {clock(entry.happened_at, zone)}, in ice since?"
    for step in walker.steps:
        if isinstance(step, SoakCheckStep) and step.batch and step.limit and step.state is not State.DONE:
            age_h = (now - step.batch.started_at).total_seconds() / 3600
            if age_h > step.limit.most_h:
                yield f"SOAK  {step.feed.name}: {hours(age_h)}, your limit {step.limit.most_h:g} h"
    yield from late_calves(walker)


def late_calves(walker: Walker) -> Iterator[str]:
    """Calves past their longest time apart."""
    now = walker.book.clock.now()
    for late in overdue_calves(walker.snapshot, now):
        gone = hours((now - late.since).total_seconds() / 3600)
        yield f"CALF  {late.calf.name}: shut away {gone}, past your limit of {late.longest_h:g} h"
