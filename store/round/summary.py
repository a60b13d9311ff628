"""What became of a round: first of all, what was not recorded."""

from collections.abc import Iterable, Iterator, Mapping
from uuid import UUID

from msgspec import Struct

from store.book.facts.feed import Feed
from store.book.figures import FedFigure
from store.book.snapshot import Snapshot, Written
from store.book.words import Fate, State
from store.husbandry.measures import SAME_KG
from store.round.pails import Went, by_use, went, withheld_in
from store.round.planning import BENCH
from store.round.steps import FeedStep, Step, TaskStep


class FedTotal(Struct, frozen=True):
    """One feed over the whole round. [kg, soaked feeds dry]"""

    feed: Feed
    given_kg: float


class MilkTotal(Struct, frozen=True):
    """The milk of one use: from whom, how much. [kg]"""

    fate: Fate
    milk_kg: float
    cows: tuple[str, ...]


class Difference(Struct, frozen=True):
    """A feed given otherwise than planned. [kg]"""

    step: Step
    feed: Feed
    due_kg: float
    given_kg: float

    @property
    def by_kg(self) -> float:
        """So much more than planned; less is below zero. [kg]"""
        return self.given_kg - self.due_kg


class Change(Struct, frozen=True):
    """A step that was written more than once: its first entry and the one that counts."""

    step: Step
    first: Written
    now: Written


class Summary(Struct, frozen=True):
    """A round. Its counts add up: done + skipped + moved on + on paper + not recorded = all."""

    steps: tuple[Step, ...]
    done: tuple[Step, ...]
    skipped: tuple[Step, ...]
    moved_on: tuple[Step, ...]
    on_paper: tuple[Step, ...]
    not_recorded: tuple[Step, ...]
    differences: tuple[Difference, ...]
    changes: tuple[Change, ...]
    pails: tuple[Went, ...]
    milk: tuple[MilkTotal, ...]
    fed: tuple[FedTotal, ...]


def summarise(snapshot: Snapshot, steps: tuple[Step, ...]) -> Summary:
    """The summary of a round as the book holds it now."""

    def in_state(state: State) -> tuple[Step, ...]:
        return tuple(step for step in steps if step.state is state)

    done = in_state(State.DONE)
    pails = went((step.entry for step in done if step.entry), withheld_in(snapshot, steps), steps)
    return Summary(
        steps=steps,
        done=done,
        skipped=in_state(State.SKIPPED),
        moved_on=in_state(State.MOVED_ON),
        on_paper=in_state(State.ON_PAPER),
        not_recorded=tuple(sorted(in_state(State.OPEN), key=_behind)),
        differences=tuple(_differences(done, snapshot)),
        changes=tuple(_changes(steps, snapshot.entries)),
        pails=pails,
        milk=tuple(_milk(pails, {step.step_id: step.name for step in done})),
        fed=tuple(_fed(done, snapshot)),
    )


def _behind(step: Step) -> bool:
    """The jobs of the bench come first among what is not recorded: the feed room left open is the worst."""
    return not (isinstance(step, TaskStep) and step.place == BENCH)


def _differences(done: Iterable[Step], snapshot: Snapshot) -> Iterator[Difference]:
    for step in done:
        for figure in step.entry.of(FedFigure) if step.entry else ():
            if not figure.typed or figure.due_kg is None or figure.given_kg is None:
                continue
            if abs(figure.given_kg - _shown_kg(step, figure)) >= SAME_KG:
                yield Difference(step, snapshot.feeds[figure.feed_id], figure.due_kg, figure.given_kg)


def _shown_kg(step: Step, figure: FedFigure) -> float:
    """What the screen showed as due: whole quarters of a measure, which need not be the planned weight. [kg]"""
    due = step.due if isinstance(step, FeedStep) else ()
    return next((each.as_shown_kg for each in due if each.feed.id == figure.feed_id), figure.due_kg or 0.0)


def _changes(steps: Iterable[Step], entries: Iterable[Written]) -> Iterator[Change]:
    first: dict[UUID, Written] = {}
    for entry in entries:
        if entry.state is not State.OPEN:  # an undo, a short count and a round's end are no first value
            first.setdefault(entry.step_id, entry)
    for step in steps:
        if step.entry and step.step_id in first and step.entry.id != first[step.step_id].id:
            yield Change(step, first[step.step_id], step.entry)


def _milk(pails: Iterable[Went], names: Mapping[UUID, str]) -> Iterator[MilkTotal]:
    pails = tuple(pails)
    for use, kg in by_use(pails).items():
        yield MilkTotal(use, kg, tuple(names[each.pailful.step_id] for each in pails if each.use is use))


def _fed(done: Iterable[Step], snapshot: Snapshot) -> Iterator[FedTotal]:
    totals: dict[UUID, float] = {}
    for step in done:
        for figure in step.entry.of(FedFigure) if step.entry else ():
            totals[figure.feed_id] = totals.get(figure.feed_id, 0.0) + (figure.given_kg or 0.0)
    for feed in sorted((snapshot.feeds[id_] for id_ in totals), key=lambda feed: feed.name):
        yield FedTotal(feed, totals[feed.id])
