"""A calf and its cow under the lamp: where it is, since when, and until when it may be apart."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from uuid import UUID

from store.book.facts.calves import Parting
from store.book.words import EVENING, Apart
from store.round.emptied import CALF_HAD_IT
from store.round.steps import ApartStep, MilkStep, SharedCalf
from store.round.tonight import nights_words, staying
from tui.page import Line, Role, Size, Span, beside, large_lines, line, width_of, wrapped
from tui.treated import sucks_words
from tui.walk.shown import Shown
from tui.walk.title import scale_for, title
from tui.words import age, clock, hours, when

BEFORE = "BEFORE  calf well? water, hay, dry bed? latch tried? If not: M"
FIRST = "FIRST NIGHT apart: look in once more tonight."
LATE_H = 0.1
"""Less than so much behind the hour of the rule is in time. [h]"""
UNKNOWN = "Where the calf was is not known: nothing was written, or it is on paper."


def apart_lines(shown: Shown, step: ApartStep, size: Size) -> list[Line]:
    """What is to be done with the calf, when, and how long it has been."""
    away = step.want is Apart.SHUT_AWAY
    what = f"SHUT AWAY from {step.cow.name}" if away else f"LET IN to {step.cow.name}"
    born = step.calf.calf.born_on
    facts = [what, step.place, f"{age(born, shown.today)} old" if born else ""]
    lines = [*title(step.name, facts, size), *_figure(shown, step, size), ()]
    for sucks in () if away else sucks_words(shown.walker, step.cow, step.calf.calf, shown.now):
        lines += wrapped(sucks, size.width, Role.WARNING, "  ")
    if step.first_night:
        lines += wrapped(FIRST, size.width, Role.WARNING, "  ")
    return [*lines, *(wrapped(BEFORE, size.width, Role.STRONG, "  ") if away else [])]


def staying_lines(shown: Shown, pen_id: UUID, size: Size) -> Iterator[Line]:
    """Calves of a pen, or of a cow in it, that are not shut away tonight, and why."""
    snapshot = shown.walker.snapshot
    for each in staying(snapshot) if snapshot.turn.slot == EVENING else ():
        if pen_id in (each.calf.pen_id, each.cow.pen_id):
            words = f"TONIGHT {each.calf.name} stays with {each.cow.name}: {each.why}"
            yield from wrapped(words, size.width, Role.STRONG, "  ")


def left_in_lines(step: MilkStep) -> Iterator[Line]:
    """That no milking is expected, and what Enter writes then."""
    if step.left_in:
        yield line(Span(f"  STAYED  {step.left_in}. No pail: Enter writes: {CALF_HAD_IT}", Role.STRONG))


def _figure(shown: Shown, step: ApartStep, size: Size) -> list[Line]:
    """The hour of its rule, large; else how long it has been where it is."""
    zone, last = shown.walker.zone, step.calf.last
    known = last is not None and last.state is not None
    elapsed_h = (shown.now - last.at).total_seconds() / 3600 if last else 0.0
    if step.shut_at:
        late = _too_long(step.calf, elapsed_h) if elapsed_h > step.calf.longest_h else []
        large, told = clock(step.shut_at, zone), [*_rule(shown, step), *_state(shown, step), *late]
    elif known:
        large, told = hours(elapsed_h), [*_state(shown, step), *_too_long(step.calf, elapsed_h)]
    else:
        return wrapped(UNKNOWN, size.width, Role.WARNING, "  ")
    figure = [(Span("  "), *row) for row in large_lines(large, Role.AMOUNT, 50, scale_for(size))]
    return beside(figure, told, max(map(width_of, figure)) + 3)


def _rule(shown: Shown, step: ApartStep) -> Iterator[Line]:
    rule, shut_at = step.calf.rule, step.shut_at
    if rule and shut_at:
        late_h = (shown.now - shut_at).total_seconds() / 3600
        late = f": {hours(late_h)} late" if late_h >= LATE_H else ""
        yield line(Span(f"shut it away, for {min(rule.apart_h, step.calf.longest_h):g} h{late}", Role.STRONG))
        yield line(f"your rule: from day {rule.from_day}, {nights_words(rule.nights)}")


def _state(shown: Shown, step: ApartStep) -> Iterator[Line]:
    """Where the calf is now."""
    last = step.calf.last
    if last is None or last.state is None:
        yield line(Span("where it was is not known", Role.WARNING))
        return
    yield line(Span(_named(last), Role.STRONG))
    yield line(_when(last, shown.now, shown.walker.zone))


def _named(last: Parting) -> str:
    state = "left with her" if last.state is Apart.TOGETHER else last.state.value if last.state else ""
    return f"{state}: {last.why}" if last.state is Apart.TOGETHER and last.why else state


def _when(last: Parting, now: datetime, zone: str) -> str:
    """Since when; of a calf that got out, between when and when."""
    found, apart = _at(last.at, now, zone), last.since and _at(last.since, now, zone)
    if last.state is not Apart.GOT_OUT:
        return f"since {found}"
    return f"between {apart} and {found}" if apart else f"found {found}"


def _at(moment: datetime, now: datetime, zone: str) -> str:
    """A time of the last night and day without its day."""
    return clock(moment, zone) if now - moment < timedelta(days=1) else when(moment, zone)


def _too_long(calf: SharedCalf, elapsed_h: float) -> list[Line]:
    if calf.last is None or calf.last.state is not Apart.SHUT_AWAY:
        return []
    if elapsed_h > calf.longest_h:
        return [line(Span(f"PAST your limit of {calf.longest_h:g} h", Role.WARNING))]
    return [line(f"your limit {calf.longest_h:g} h")]


def calf_words(calf: SharedCalf, now: datetime, zone: str) -> tuple[str, bool]:
    """Where a calf is, in a line for the milking; and whether that is as it should be."""
    name, last = calf.calf.name, calf.last
    if last is None or last.state is None:
        return f"{name}: where it was is not known", False
    if last.state is not Apart.SHUT_AWAY:
        return f"{name}: {_named(last)}, {_when(last, now, zone)}: not compared", False
    elapsed_h = (now - last.at).total_seconds() / 3600
    if last.cow_id:
        return f"{name}: with its other cow, apart from her since {_at(last.at, now, zone)}", True
    late = elapsed_h > calf.longest_h
    limit = f"{'PAST ' if late else ''}your limit {calf.longest_h:g} h"
    return f"{name}: shut away {_at(last.at, now, zone)}, {hours(elapsed_h)} ago, {limit}", not late
