"""An entry in words: when, who, whose step, and its figures."""

from collections.abc import Iterator
from datetime import date

from store.book.figures import (
    CooledFigure,
    CountedFigure,
    DosedFigure,
    DrawnFigure,
    FedFigure,
    FeltFigure,
    LookedFigure,
    MilkedFigure,
    NotedFigure,
    PartedFigure,
    PouredFigure,
    QuarterFigure,
    SoakedFigure,
    StrungFigure,
)
from store.book.snapshot import Written
from store.book.turn import Turn
from store.book.words import Apart, Kind, State
from store.round.dialect import said
from store.round.measured import is_not_milked
from store.round.saying import weight
from store.round.steps import ApartStep, CoolStep, DoseStep, LookStep, QuarterStep, SoakCheckStep, SoakStartStep, Step
from store.round.together import AS_ONE
from tui.walker import Walker
from tui.words import day, ends_of, look_words

A_WEEK = 7


def entry_words(walker: Walker, entry: Written) -> str:
    """`06:42 Ann   Fennel: dairy nuts 2.4 kg + lucerne pellets 0.90 kg dry`; `between 02:30 and 05:50 Ann   ...`."""
    return f"{time_words(walker, entry)} {who(walker, entry)}   {name(walker, entry)}: {figure(walker, entry)}"


def time_words(walker: Walker, entry: Written) -> str:
    """When it happened; of what was written together, when it was written."""
    since = None if entry.reason == AS_ONE else entry.happened_from
    ends = ends_of(since, entry.happened_at, walker.farm.zone, walker.turn.day)
    return f"between {' and '.join(ends)}" if since else ends[0]


def step_words(walker: Walker, step: Step) -> str:
    """Whose step, and what it asks: `Hazel (milk)`, `Rook (let in)`; a task is its own name."""
    whose = step.name if step.kind is Kind.TASK else f"{step.name} ({_asked(walker, step)})"
    return f"{whose}, moved on from {turn_words(step.moved_from)}" if step.moved_from else whose


def _asked(walker: Walker, step: Step) -> str:
    """What a step asks, in a word or two."""
    if isinstance(step, ApartStep):
        return step.want.value
    if isinstance(step, LookStep):
        return f"look: {step.look.name}"
    if isinstance(step, QuarterStep):
        return f"{said(step.mark.quarter.value, walker.farm.dialect)}, how is it now?"
    if isinstance(step, DoseStep):
        return f"dose {step.number} of {step.treatment.doses}"
    named = {SoakCheckStep: "soaked, fit?", SoakStartStep: "start soak", CoolStep: "into ice"}
    return named.get(type(step), step.kind.value)


def turn_words(turn: Turn) -> str:
    """`Tue 10 Mar evening`."""
    return f"{day(turn.day)} {turn.slot}"


def lately(turn: Turn, today: date) -> str:
    """`Mon evening`; further back than a week with its day."""
    return f"{turn.day:%a} {turn.slot}" if (today - turn.day).days < A_WEEK else turn_words(turn)


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
    yield from _milked(walker, entry)
    for counted in entry.of(CountedFigure):
        yield f"{counted.heads_seen} of {counted.heads_due} heads"
    for soaked in entry.of(SoakedFigure):
        why = f" ({entry.reason})" if entry.reason else ""
        dry = "" if soaked.dry_kg is None else f", {weight(soaked.dry_kg, units)} dry"
        yield f"{soaked.act.value}{why}{dry}"
    for parted in entry.of(PartedFigure):
        yield f"{parted.state.value}: {entry.reason}" if parted.state is Apart.TOGETHER else parted.state.value
    yield from (felt.fill.value for felt in entry.of(FeltFigure))
    yield from _quarters(walker, entry)
    for looked in entry.of(LookedFigure):
        yield f"{walker.snapshot.names.get(looked.look_id, 'look')}: {look_words(looked, units)}"
    for dosed in entry.of(DosedFigure):
        yield f"dose {dosed.number}, {walker.snapshot.names.get(dosed.treatment_id, 'treatment')}"
    yield from (noted.words for noted in entry.of(NotedFigure))


def _milked(walker: Walker, entry: Written) -> Iterator[str]:
    for milked in entry.of(MilkedFigure):
        if milked.milk_kg is None or not milked.fate:
            yield f"not milked: {milked.typed}"
            continue
        held = ", held back" if milked.held_back else ""
        kg = weight(milked.milk_kg, walker.farm.units)
        yield f"milk {kg}, {milked.fate.value}{held}{_drawn(entry)}{_poured(walker, entry)}"
    for cooled in entry.of(CooledFigure):
        yield f"in ice, late: {cooled.fate.value}" if cooled.fate else "in ice"


def _drawn(entry: Written) -> str:
    """How she was milked, where that was not as usual."""
    drawn = entry.the(DrawnFigure) or DrawnFigure()
    return ("" if drawn.whole else ", not milked out") + (", by hand" if drawn.by_hand else "")


def _poured(walker: Walker, entry: Written) -> str:
    """With whose milk it was poured together."""
    into = {each.into_step_id for each in entry.of(PouredFigure)}
    steps = (step for step in walker.steps if step.step_id in into and not is_not_milked(step.entry))
    return "".join(f", poured into {step.name}'s" for step in steps)


def _quarters(walker: Walker, entry: Written) -> Iterator[str]:
    signs: dict[str, list[str]] = {}
    for found in entry.of(QuarterFigure):
        signs.setdefault(said(found.quarter.value, walker.farm.dialect), []).append(found.sign.value)
    return (f"{quarter}: {', '.join(found)}" for quarter, found in signs.items())


def _given(walker: Walker, entry: Written) -> Iterator[str]:
    feeds = walker.snapshot.feeds
    for fed in entry.of(FedFigure):
        if fed.given_kg is not None:
            dry = " dry" if feeds[fed.feed_id].soaked else ""
            left = f", left {weight(fed.left_kg, walker.farm.units)}" if fed.left_kg is not None else ""
            yield f"{feeds[fed.feed_id].name} {weight(fed.given_kg, walker.farm.units)}{dry}{left}"
    for strung in entry.of(StrungFigure):
        yield f"{strung.strings} strings off"
