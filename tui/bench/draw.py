"""The bench between rounds, line by line: the next thing large, how much of what, then the list by the clock."""

from collections.abc import Sequence
from datetime import datetime

from store.book.turn import local
from store.book.words import State
from store.round.item import Item
from tui.bench.amount import amount_of
from tui.bench.left import left_words
from tui.frame import SMALL, WHOLE
from tui.page import Line, Role, Size, Span, apart, beside, cut, large_lines, line, width_of, wrapped
from tui.walk.title import scale_for
from tui.walker import Walker
from tui.words import at_hour, clock, day

NOTHING_COMES = (
    "Nothing is due by the clock. When your rounds begin stands under F, settings; soak and calves are told by it."
)

UNKNOWN = 13
"""Cells that the heading of what is not known takes."""
WORDS_MOST = 120
"""More of what the next thing is stands in the list only: the list must keep its room."""


def header(walker: Walker, width: int) -> Line:
    """Where we are, what time it is, who is here, and how the round of this hour stands."""
    now = walker.book.clock.now()
    which = "DEMO, PRETEND BENCH" if walker.pretend else "BENCH"
    who = f" {which}  {day(local(now, walker.zone))}  {clock(now, walker.zone)}  {walker.person.name}"
    return line(Span(apart(who, f"{_round(walker)} ", width), Role.HEADER))


def _round(walker: Walker) -> str:
    slot, left = walker.turn.slot, sum(step.state is State.OPEN for step in walker.steps)
    if not walker.snapshot.entries:
        return f"{slot} round not begun"
    if not walker.ended():
        return f"{slot} round: {left} to do"
    return f"{slot} round: {left} not recorded" if left else f"{slot} round ended"


def next_large(walker: Walker, items: Sequence[Item], size: Size) -> list[Line]:
    """The next thing that is asked for: its time, large; what it is, how long is left; and how much of what."""
    first = next((item for item in items if item.asks), None)
    if first is None:
        return [(), *wrapped(NOTHING_COMES, size.width, Role.STRONG, "  "), ()]
    now = walker.book.clock.now()
    if size.height < SMALL.height:
        words = f" {at_hour(first.at, now, walker.zone)} {left_words(first, now)}: {first.words}"
        return [line(Span(cut(words, size.width - 1), _role(first, now)))]
    lines = [(), *_time(walker, first, now, size), (), *_amount(walker, first, size)]
    return lines if size.height >= WHOLE.height else [each for each in lines if each]


def _time(walker: Walker, first: Item, now: datetime, size: Size) -> list[Line]:
    role = Role.WARNING if first.is_late(now) else Role.AMOUNT
    drawn = large_lines(at_hour(first.at, now, walker.zone), role, size.width // 2, scale_for(size))
    figure = [(Span("  "), *row) for row in drawn]
    taken = max(map(width_of, figure)) + 3
    told = wrapped(cut(first.words.upper(), WORDS_MOST), size.width - taken, Role.NAME, "")
    told.append(line(Span(left_words(first, now), Role.WARNING if first.is_late(now) else Role.STRONG)))
    told += wrapped(first.note, size.width - taken, Role.TEXT, "") if first.note else []
    if first.is_round and not first.is_late(now):
        told.append(line("nothing is due before it"))
    return beside(figure, told, taken)


def _amount(walker: Walker, first: Item, size: Size) -> list[Line]:
    much, rest = amount_of(walker, first)
    if not much:
        return []
    drawn = large_lines(much, Role.AMOUNT, size.width - 4, scale_for(size))
    if size.height < WHOLE.height:
        drawn = [line(Span(much, Role.AMOUNT))]
    lines = [(Span("  "), *row) for row in drawn]
    return [*lines, *(wrapped(rest, size.width, Role.STRONG, "  ") if rest else []), ()]


def list_lines(walker: Walker, items: Sequence[Item], row: int, width: int) -> list[Line]:
    """A line for each thing: when, what, and how long is left. One is marked; what is late is in warning words."""
    now = walker.book.clock.now()
    hours = [at_hour(item.at, now, walker.zone) for item in items]
    column = max(map(len, hours), default=0) + 2
    lines = []
    for at, (item, hour) in enumerate(zip(items, hours, strict=True)):
        words = f"{'>' if at == row else ' '} {hour:<{column}}{item.words}"
        note = f"{words}  ({item.note})" if item.note else words
        told = left_words(item, now)
        words = note if len(note) + len(told) + 4 < width else words
        text = apart(words, f" {told} ", width - 2)
        lines.append(line(" ", Span(text, Role.HERE if at == row else _role(item, now))))
    return lines


def _role(item: Item, now: datetime) -> Role:
    return Role.WARNING if item.is_late(now) else Role.TEXT


def not_known_lines(words: str, width: int) -> list[Line]:
    """What nobody has written of the last round, in at most two rows."""
    if not words:
        return []
    first, *rest = wrapped(words, width - UNKNOWN - 4, Role.WARNING, "")
    more = [(Span(" " * UNKNOWN), *rest[0], Span(" ..." if rest[1:] else "", Role.WARNING))] if rest else []
    return [(Span(f" {'NOT KNOWN':<{UNKNOWN - 1}}", Role.WARNING), *first), *more]
