"""The closing screen, line by line: not recorded first, then skipped, then what was given otherwise."""

from collections.abc import Iterable, Iterator

from store.book.snapshot import Written
from store.round.summary import Summary
from tui.page import Line, Role, Size, Span, clean, cut, line
from tui.walker import Walker
from tui.words import clock, day, volume, weight


def closing_lines(walker: Walker, summary: Summary, row: int, size: Size) -> list[Line]:
    """The body of the closing screen."""
    lines = [*_head(walker, summary), (), *_not_recorded(summary, row), *_lists(walker, summary), (), *_totals(walker, summary)]
    return [tuple(Span(cut(span.text, size.width - 1), span.role) for span in each) for each in lines]


def _head(walker: Walker, summary: Summary) -> list[Line]:
    times = sorted(step.entry.happened_at for step in (*summary.done, *summary.skipped) if step.entry)
    span = f"   {clock(times[0], walker.farm.zone)} to {clock(times[-1], walker.farm.zone)}" if times else ""
    counts = (
        f" {len(summary.steps)} steps = {len(summary.done)} done + {len(summary.skipped)} skipped"
        f" + {len(summary.not_recorded)} NOT RECORDED"
    )
    title = f" CLOSING THE {walker.turn.slot.upper()}   {day(walker.turn.day)}{span}   {clean(walker.farm.name)}"
    return [line(Span(title, Role.STRONG)), line(Span(counts, Role.STRONG))]


def _not_recorded(summary: Summary, row: int) -> Iterator[Line]:
    if not summary.steps:
        yield line(Span(" Nothing is planned for this round. Feeding plans, milkings and tasks in the farm folder fill it."))
    for at, step in enumerate(summary.not_recorded):
        words = f"{clean(step.place):<12} {clean(step.name)}{_kind(step.kind.value)}"
        marked = at == min(row, len(summary.not_recorded) - 1)
        yield line(
            Span(" NOT RECORDED " if at == 0 else " " * 14, Role.WARNING),
            Span(f"{'>' if marked else ' '} {words} ", Role.HERE if marked else Role.WARNING),
        )


def _lists(walker: Walker, summary: Summary) -> Iterator[Line]:
    zone = walker.farm.zone
    yield from _list("SKIPPED", (
        f"{clean(step.name)}{_kind(step.kind.value)}: {clean(step.entry.reason)}" for step in summary.skipped if step.entry
    ))  # fmt: skip
    yield from _list("OTHERWISE", (
        f"{clean(each.step.name)}: {clean(each.feed.name)} {weight(each.given_kg, walker.farm.units)}, "
        f"plan {weight(each.due_kg, walker.farm.units)}"
        for each in summary.differences
    ))  # fmt: skip
    yield from _list("CHANGED", (
        f"{clean(each.step.name)}: {_figure(walker, each.now)}, first written as {_figure(walker, each.first)}"
        f" ({clock(each.first.happened_at, zone)} {walker.name_of(each.first.person_id)})"
        for each in summary.changes
    ))  # fmt: skip


def _totals(walker: Walker, summary: Summary) -> Iterator[Line]:
    units = walker.farm.units
    yield from _list("MILK", (
        f"{total.fate.value:<14} {weight(total.milk_kg, units):>8}  {volume(total.milk_kg, units):>7}  {clean(', '.join(total.cows))}"
        for total in summary.milk
    ))  # fmt: skip
    fed = [f"{clean(t.feed.name)} {weight(t.given_kg, units)}{' dry' if t.feed.soaked else ''}" for t in summary.fed]
    yield from _list("FED", ["   ".join(fed)] if fed else [])


def _list(heading: str, entries: Iterable[str]) -> Iterator[Line]:
    for at, words in enumerate(entries):
        yield line(Span(f" {heading if at == 0 else '':<13}", Role.QUIET), Span(words))


def _kind(kind: str) -> str:
    return "" if kind == "task" else f" ({kind})"


def _figure(walker: Walker, entry: Written) -> str:
    """An entry's figures in a few words."""
    units = walker.farm.units
    if entry.milked and entry.milked.milk_kg is not None:
        return weight(entry.milked.milk_kg, units)
    given = [f"{clean(walker.snapshot.feeds[f.feed_id].name)} {weight(f.given_kg, units)}" for f in entry.fed if f.given_kg is not None]
    return " + ".join(given) if given else entry.state.value
