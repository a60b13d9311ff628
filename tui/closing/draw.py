"""The closing screen, line by line: not recorded first, then skipped, then what was given otherwise."""

from collections.abc import Iterable, Iterator

from store.book.words import Units
from store.round.steps import Step
from store.round.summary import Change, Difference, MilkTotal, Summary
from tui.page import Line, Role, Size, Span, cut, line
from tui.telling import figure, who
from tui.walker import Walker
from tui.words import clock, day, volume, weight


def closing_lines(walker: Walker, summary: Summary, row: int, size: Size) -> list[Line]:
    """The body of the closing screen."""
    lines = [
        *_head(walker, summary),
        (),
        *_not_recorded(summary, row),
        *_lists(walker, summary),
        (),
        *_totals(walker, summary),
    ]
    return [tuple(Span(cut(span.text, size.width - 1), span.role) for span in each) for each in lines]


def _head(walker: Walker, summary: Summary) -> list[Line]:
    times = sorted(step.entry.happened_at for step in (*summary.done, *summary.skipped) if step.entry)
    span = f"   {clock(times[0], walker.farm.zone)} to {clock(times[-1], walker.farm.zone)}" if times else ""
    counts = (
        f" {len(summary.steps)} steps = {len(summary.done)} done + {len(summary.skipped)} skipped"
        f" + {len(summary.not_recorded)} NOT RECORDED"
    )
    title = f" CLOSING THE {walker.turn.slot.upper()}   {day(walker.turn.day)}{span}   {walker.farm.name}"
    return [line(Span(title, Role.STRONG)), line(Span(counts, Role.STRONG))]


def _not_recorded(summary: Summary, row: int) -> Iterator[Line]:
    if not summary.steps:
        yield line(
            Span(" Nothing is planned for this round. Feeding plans, milkings and tasks in the farm folder fill it.")
        )
    for at, step in enumerate(summary.not_recorded):
        words = f"{step.place:<12} {step.name}{_kind(step.kind.value)}"
        marked = at == min(row, len(summary.not_recorded) - 1)
        yield line(
            Span(" NOT RECORDED " if at == 0 else " " * 14, Role.WARNING),
            Span(f"{'>' if marked else ' '} {words} ", Role.HERE if marked else Role.WARNING),
        )


def _lists(walker: Walker, summary: Summary) -> Iterator[Line]:
    yield from _list("SKIPPED", (_skipped(step) for step in summary.skipped))
    yield from _list("OTHERWISE", (_difference(walker, each) for each in summary.differences))
    yield from _list("CHANGED", (_change(walker, each) for each in summary.changes))


def _skipped(step: Step) -> str:
    return f"{step.name}{_kind(step.kind.value)}: {step.entry.reason if step.entry else ''}"


def _difference(walker: Walker, each: Difference) -> str:
    given, due = (weight(kg, walker.farm.units) for kg in (each.given_kg, each.due_kg))
    return f"{each.step.name}: {each.feed.name} {given}, plan {due}"


def _change(walker: Walker, each: Change) -> str:
    now, first = figure(walker, each.now), figure(walker, each.first)
    when = clock(each.first.happened_at, walker.farm.zone)
    return f"{each.step.name}: {now}, first written as {first} ({when} {who(walker, each.first)})"


def _totals(walker: Walker, summary: Summary) -> Iterator[Line]:
    units = walker.farm.units
    yield from _list("MILK", (_milk(total, units) for total in summary.milk))
    fed = [f"{t.feed.name} {weight(t.given_kg, units)}{' dry' if t.feed.soaked else ''}" for t in summary.fed]
    yield from _list("FED", ["   ".join(fed)] if fed else [])


def _milk(total: MilkTotal, units: Units) -> str:
    amount = f"{weight(total.milk_kg, units):>8}  {volume(total.milk_kg, units):>7}"
    return f"{total.fate.value:<14} {amount}  {', '.join(total.cows)}"


def _list(heading: str, entries: Iterable[str]) -> Iterator[Line]:
    for at, words in enumerate(entries):
        yield line(Span(f" {heading if at == 0 else '':<13}", Role.QUIET), Span(words))


def _kind(kind: str) -> str:
    return "" if kind == "task" else f" ({kind})"
