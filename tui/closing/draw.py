"""The closing screen, line by line: milk to throw away, what is not recorded, then skipped, then given otherwise."""

from collections.abc import Iterable, Iterator, Sequence
from textwrap import wrap

from msgspec.structs import replace

from store.book.figures import CountedFigure, MilkedFigure
from store.book.snapshot import Written, found_of, notes_of
from store.book.words import Units
from store.round.change import PLAN_CHANGED
from store.round.saying import exact, weight
from store.round.steps import CoolStep, Step
from store.round.summary import Change, Difference, MilkTotal, Summary
from store.round.together import AS_ONE
from tui.page import Line, Role, Span, line
from tui.pails import ice_words, mix_words, mixes, unsafe_words
from tui.telling import entry_words, figure, step_words, who
from tui.treated import unsafe_before_words
from tui.walker import Walker
from tui.words import clock, day, volume

INDENT = 14
CHANGES_MOST = 4
"""So many changes of the farm are told; a farm that is set up has more."""


Besides = Sequence[tuple[str, Sequence[str]]]
"""Headings, and what stands under each of them."""


def closing_lines(walker: Walker, summary: Summary, besides: Besides, row: int, width: int) -> list[Line]:
    """The body of the closing screen. besides: what is said of feeds that will not last, and of what comes."""
    lists = [*_not_recorded(walker, summary, row), *_lists(walker, summary, width)]
    first = list(_throw_away(walker, summary, width))
    return [*_head(walker, summary), *first, (), *lists, (), *_totals(walker, summary, besides, width)]


def _throw_away(walker: Walker, summary: Summary, width: int) -> Iterator[Line]:
    """Milk for people that is now known to be withheld, of this round and of those before it."""
    unsafe = (*unsafe_words(walker, summary.pails), *unsafe_before_words(walker))
    yield from _list(width, "THROW AWAY", unsafe, Role.WARNING)


def _head(walker: Walker, summary: Summary) -> list[Line]:
    times = sorted(step.entry.happened_at for step in (*summary.done, *summary.skipped) if step.entry)
    span = f"   {clock(times[0], walker.farm.zone)} to {clock(times[-1], walker.farm.zone)}" if times else ""
    counts = (
        f" {len(summary.steps)} steps = {len(summary.done)} done + {len(summary.skipped)} skipped"
        f"{_some(summary.moved_on, 'moved on')}{_some(summary.on_paper, 'on paper')}"
        f" + {len(summary.not_recorded)} NOT RECORDED{'   ENDED' if walker.ended() else ''}"
    )
    title = f" CLOSING THE {walker.turn.slot.upper()}   {day(walker.turn.day)}{span}   {walker.farm.name}"
    return [line(Span(title, Role.STRONG)), line(Span(counts, Role.STRONG))]


def _some(steps: Sequence[Step], words: str) -> str:
    return f" + {len(steps)} {words}" if steps else ""


def _not_recorded(walker: Walker, summary: Summary, row: int) -> Iterator[Line]:
    if not summary.steps:
        yield line(" Nothing is planned for this round. F opens my farm: pens, animals, feeds.")
    missing = summary.not_recorded
    row = min(row, len(missing) - 1)
    for at, step in enumerate(missing):
        words = f"{step.place:<12} {step_words(walker, step)}{_seen(step)}"
        yield line(
            Span(" NOT RECORDED " if at == 0 else " " * INDENT, Role.WARNING),
            Span(f"{'>' if at == row else ' '} {words} ", Role.HERE if at == row else Role.WARNING),
        )


def _seen(step: Step) -> str:
    """A count that was written and is short."""
    counted = step.entry.the(CountedFigure) if step.entry else None
    return f": {counted.heads_seen} of {counted.heads_due} seen" if counted and counted.missing else ""


def _lists(walker: Walker, summary: Summary, width: int) -> Iterator[Line]:
    yield from _list(width, "FOUND", (entry_words(walker, entry) for entry in found_of(walker.snapshot.entries)))
    yield from _list(width, "NOT MILKED", _not_milked(walker, summary))
    yield from _list(width, "SKIPPED", (_skipped(walker, step) for step in summary.skipped))
    yield from _list(width, "MOVED ON", (step_words(walker, step) for step in summary.moved_on))
    yield from _list(width, "ON PAPER", _together(summary.on_paper))
    yield from _list(width, "OTHERWISE", (_difference(walker, each) for each in summary.differences))
    yield from _list(width, "CHANGED", (filter(None, (_change(walker, each) for each in summary.changes))))
    yield from _list(width, "TOGETHER", _as_one(walker, summary))
    notes = notes_of(walker.snapshot.entries)
    yield from _list(width, "NOTES", (entry_words(walker, entry) for entry in notes if entry.reason != PLAN_CHANGED))
    changes = [entry_words(walker, entry) for entry in notes if entry.reason == PLAN_CHANGED]
    more = [f"and {len(changes) - CHANGES_MOST} more"] if len(changes) > CHANGES_MOST else []
    yield from _list(width, "MY FARM", [*changes[-CHANGES_MOST:], *more])


def _not_milked(walker: Walker, summary: Summary) -> Iterator[str]:
    """Cows left out on purpose: neither a zero nor a skip."""
    for step in summary.done:
        milked = step.entry.the(MilkedFigure) if step.entry else None
        if milked and milked.milk_kg is None and step.entry:
            yield f"{step.name}: {figure(walker, step.entry)}"


def _together(steps: Sequence[Step]) -> list[str]:
    return [f"{len(steps)} steps, to be typed in: R opens this round again"] if steps else []


def _as_one(walker: Walker, summary: Summary) -> Iterator[str]:
    """What one key wrote together, and between when and when it was done."""
    entries = [step.entry for step in summary.done if step.entry and step.entry.reason == AS_ONE]
    if entries:
        zone = walker.farm.zone
        first = min(entry.happened_from or entry.happened_at for entry in entries)
        last = max(entry.happened_at for entry in entries)
        yield f"{len(entries)} steps, done between {clock(first, zone)} and {clock(last, zone)}"


def _skipped(walker: Walker, step: Step) -> str:
    return f"{step_words(walker, step)}: {step.entry.reason if step.entry else ''}"


def _difference(walker: Walker, each: Difference) -> str:
    given, due, by = (exact(kg, walker.farm.units) for kg in (each.given_kg, each.due_kg, abs(each.by_kg)))
    sign = "+" if each.by_kg > 0 else "-"
    return f"{each.step.name}: {each.feed.name} {given}, plan {due} ({sign}{by})"


def _change(walker: Walker, each: Change) -> str:
    """What stands now and stood at first; empty where both are told alike."""
    now, first = (figure(walker, _what_changed(*pair)) for pair in ((each.now, each.first), (each.first, each.now)))
    if now == first:
        return ""
    when = f"{clock(each.first.happened_at, walker.farm.zone)} {who(walker, each.first)}"
    return f"{each.step.name}: {now}, first written as {first} ({when})"


def _what_changed(entry: Written, other: Written) -> Written:
    """An entry with only those feeds that stand otherwise in another one."""
    changed = tuple(figure for figure in entry.figures if figure not in other.figures)
    return replace(entry, figures=changed) if changed else entry


def _totals(walker: Walker, summary: Summary, besides: Besides, width: int) -> Iterator[Line]:
    units = walker.farm.units
    yield from _list(width, "MILK", (_milk(total, units) for total in summary.milk))
    yield from _list(width, "IN ICE", (ice_words(walker, step) for step in summary.done if isinstance(step, CoolStep)))
    yield from _list(width, "POURED", (mix_words(walker, each) for each in mixes(summary.pails)))
    for heading, lines in besides:
        yield from _list(width, heading, lines)
    fed = [f"{t.feed.name} {weight(t.given_kg, units)}{' dry' if t.feed.soaked else ''}" for t in summary.fed]
    yield from _list(width, "FED", ["   ".join(fed)] if fed else [])


def _milk(total: MilkTotal, units: Units) -> str:
    amount = f"{weight(total.milk_kg, units):>8}  {volume(total.milk_kg, units):>7}"
    return f"{total.fate.value:<14} {amount}  {', '.join(total.cows)}"


def _list(width: int, heading: str, entries: Iterable[str], role: Role = Role.QUIET) -> Iterator[Line]:
    """A heading, and under it every entry in as many rows as it needs."""
    for entry in entries:
        for row in wrap(entry, max(width - INDENT - 1, 10), replace_whitespace=False, drop_whitespace=True):
            yield line(Span(f" {heading:<{INDENT - 1}}", role), Span(row))
            heading = ""
