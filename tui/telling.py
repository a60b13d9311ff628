"""An entry in words: when, who, whose step, and its figures."""

from collections.abc import Iterator

from store.book.figures import (
    CountedFigure,
    FedFigure,
    FeltFigure,
    MilkedFigure,
    NotedFigure,
    PartedFigure,
    SoakedFigure,
    StrungFigure,
)
from store.book.snapshot import Written
from store.book.words import Kind, State
from store.round.steps import ApartStep, SoakCheckStep, SoakStartStep, Step
from tui.walker import Walker
from tui.words import clock, weight


def entry_words(walker: Walker, entry: Written) -> str:
    """`06:42 Ann   Fennel: dairy nuts 2.4 kg + lucerne pellets 0.90 kg dry`."""
    when = clock(entry.happened_at, walker.farm.zone)
    return f"{when} {who(walker, entry)}   {name(walker, entry)}: {figure(walker, entry)}"


def step_words(step: Step) -> str:
    """Whose step, and what it asks: `Hazel (milk)`, `Rook (let in)`; a task is its own name."""
    if step.kind is Kind.TASK:
        return step.name
    if isinstance(step, ApartStep):
        return f"{step.name} ({step.want.value})"
    soak = {SoakCheckStep: "soaked, fit?", SoakStartStep: "start soak"}
    return f"{step.name} ({soak.get(type(step), step.kind.value)})"


def who(walker: Walker, entry: Written) -> str:
    """The name of who wrote it."""
    return walker.name_of(entry.person_id)


def name(walker: Walker, entry: Written) -> str:
    """Whose step it is."""
    step = next((step for step in walker.steps if step.step_id == entry.step_id), None)
    return step.name if step else walker.snapshot.name_of(entry.subject) or f"the {entry.kind.value}"


def figure(walker: Walker, entry: Written) -> str:
    """What an entry says, in a few words."""
    plain = {
        State.OPEN: _still_open(entry),
        State.SKIPPED: f"skipped, {entry.reason}",
        State.MOVED_ON: "moved on to the next round",
        State.ON_PAPER: "on paper",
    }
    if entry.kind is Kind.ROUND:
        return "ended"
    return plain.get(entry.state) or " + ".join(_each(walker, entry)) or "done"


def _still_open(entry: Written) -> str:
    """Undone, left open at the end of a round, or a head count that is short."""
    counted = entry.the(CountedFigure)
    if counted and counted.heads_seen is not None:
        return f"{counted.heads_seen} of {counted.heads_due} heads, still open"
    return "not recorded" if entry.figures else "open again"


def _each(walker: Walker, entry: Written) -> Iterator[str]:
    units = walker.farm.units
    yield from _given(walker, entry)
    for milked in entry.of(MilkedFigure):
        if milked.milk_kg is not None and milked.fate:
            held = ", held back" if milked.held_back else ""
            yield f"milk {weight(milked.milk_kg, units)}, {milked.fate.value}{held}"
    for counted in entry.of(CountedFigure):
        yield f"{counted.heads_seen} of {counted.heads_due} heads"
    for soaked in entry.of(SoakedFigure):
        yield soaked.act.value if soaked.dry_kg is None else f"{soaked.act.value}, {weight(soaked.dry_kg, units)} dry"
    yield from (parted.state.value for parted in entry.of(PartedFigure))
    yield from (felt.fill.value for felt in entry.of(FeltFigure))
    yield from (noted.words for noted in entry.of(NotedFigure))


def _given(walker: Walker, entry: Written) -> Iterator[str]:
    feeds = walker.snapshot.feeds
    for fed in entry.of(FedFigure):
        if fed.given_kg is not None:
            dry = " dry" if feeds[fed.feed_id].soaked else ""
            left = f", left {weight(fed.left_kg, walker.farm.units)}" if fed.left_kg is not None else ""
            yield f"{feeds[fed.feed_id].name} {weight(fed.given_kg, walker.farm.units)}{dry}{left}"
    for strung in entry.of(StrungFigure):
        yield f"{strung.strings} strings off"
