"""A key that confirms, as a draft of the entry it writes. Pure: writing is the book's.

What every kind of step shares is here; a kind with figures of its own has them in store.round.measured.
"""

from datetime import datetime
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.book.drafts import Draft, Subject
from store.book.facts.span import Span, span
from store.book.figures import (
    CountedFigure,
    DosedFigure,
    FedFigure,
    FeltFigure,
    Figure,
    LookedFigure,
    MilkedFigure,
    NotedFigure,
    PartedFigure,
    SoakedFigure,
)
from store.book.snapshot import Written
from store.book.turn import Turn
from store.book.words import Apart, Fill, Kind, Soak, State, Units
from store.round.steps import (
    ApartStep,
    CountStep,
    DoseStep,
    FeedStep,
    LookStep,
    MilkStep,
    SoakStartStep,
    Step,
    UdderStep,
)


class Hand(Struct, frozen=True):
    """Who presses the key, in which round, when it happened, and how the farm reads a number."""

    turn: Turn
    person_id: UUID
    now: datetime
    units: Units
    meal_limit_kg: float | None = None
    time_set: bool = False  # the keeper said when it happened
    happened_from: datetime | None = None  # "somewhen between then and now": the keeper was not there

    @property
    def when(self) -> Span:
        """When it happened."""
        return span(self.now, self.happened_from)


class Doubtful(ValueError):
    """What was typed can be read but is unusual; str() asks. Sure of it, the keeper says so and it is written."""


def done(hand: Hand, step: Step) -> Draft:
    """A job is done."""
    return draft(hand, step, State.DONE, ())


def counted(hand: Hand, step: CountStep, heads_seen: int) -> Draft:
    """Heads seen. A short count is kept, and the step stays open until all are found."""
    state = State.DONE if heads_seen >= len(step.heads) else State.OPEN
    return draft(hand, step, state, (CountedFigure(len(step.heads), heads_seen),))


def parted(hand: Hand, step: ApartStep) -> Draft:
    """The calf is where this round wants it."""
    return _latched(hand, step, step.cow.id, step.want)


def let_in_to(hand: Hand, step: ApartStep, cow_id: UUID) -> Draft:
    """The calf is let in to its other cow instead."""
    return _latched(hand, step, cow_id, Apart.LET_IN)


def left_together(hand: Hand, step: ApartStep, why: str) -> Draft:
    """The calf is left with its cow tonight, on purpose. why: at most 80 letters."""
    return replace(_latched(hand, step, step.cow.id, Apart.TOGETHER), reason=why)


def _latched(hand: Hand, step: ApartStep, cow_id: UUID, state: Apart) -> Draft:
    """Where a calf is now; other than was written in this round before, it is so from this moment on."""
    made = draft(hand, step, State.DONE, (PartedFigure(cow_id, state),))
    written = step.entry.the(PartedFigure) if step.entry else None
    if written == made.figures[0]:
        return made
    return replace(made, happened_at=hand.now, happened_from=hand.happened_from)


def got_out(hand: Hand, cow_id: UUID, calf_id: UUID, since: datetime | None) -> Draft:
    """The calf was found with the cow: it got out between the last time it was seen apart and now."""
    found = unplanned(hand, Kind.APART, Subject(animal_id=calf_id), PartedFigure(cow_id, Apart.GOT_OUT))
    return replace(found, happened_from=hand.happened_from or since)


def felt(hand: Hand, step: UdderStep, fill: Fill) -> Draft:
    """An udder, as it felt."""
    return draft(hand, step, State.DONE, (FeltFigure(fill),))


def noted(hand: Hand, subject: Subject, words: str, *, tell: bool) -> Draft:
    """Words of the keeper about an animal, a pen, or the whole yard."""
    return unplanned(hand, Kind.NOTE, subject, NotedFigure(words, tell))


def unplanned(hand: Hand, kind: Kind, subject: Subject, *figures: Figure) -> Draft:
    """What nobody planned: the entry's own id is the name of its step."""
    done, since = State.DONE, hand.happened_from
    return Draft(None, kind, subject, hand.turn, done, hand.now, hand.person_id, None, since, figures=figures)


def skipped(hand: Hand, step: Step, reason: str) -> Draft:
    """Not done, with the reason; what was due is kept beside it."""
    return draft(hand, step, State.SKIPPED, not_done(step), reason)


def moved_on(hand: Hand, step: Step) -> Draft:
    """To be done in the next round; what was due goes with it."""
    return draft(hand, step, State.MOVED_ON, not_done(step))


def left_open(hand: Hand, step: Step, state: State = State.OPEN) -> Draft:
    """A round ends with this step not recorded, or on paper: what was due is kept, so that the old round stays."""
    return draft(hand, step, state, not_done(step))


def ended(hand: Hand, step_id: UUID, shown: UUID | None) -> Draft:
    """The round is ended."""
    return Draft(step_id, Kind.ROUND, Subject(), hand.turn, State.DONE, hand.now, hand.person_id, shown)


def undone(hand: Hand, entry: Written) -> Draft:
    """The step of an entry is open again. The entry stays in the book as its history."""
    return Draft(entry.step_id, entry.kind, entry.subject, hand.turn, State.OPEN, hand.now, hand.person_id, entry.id)


def not_done(step: Step) -> tuple[Figure, ...]:
    """The figures of a step that is not done: what was due, and nothing beside it."""
    if isinstance(step, FeedStep):
        return tuple(FedFigure(due.feed.id, due.told.id if due.told else None, due.due_kg, None) for due in step.due)
    if isinstance(step, SoakStartStep):
        return (SoakedFigure(Soak.STARTED, step.due_kg, None),)
    if isinstance(step, CountStep):
        counted = step.entry.the(CountedFigure) if step.entry and step.entry.state is State.OPEN else None
        return (CountedFigure(len(step.heads), counted.heads_seen if counted else None),)
    if isinstance(step, LookStep):
        return (LookedFigure(step.look.id),)
    if isinstance(step, DoseStep):
        return (DosedFigure(step.treatment.id, step.number, given=False),)
    return (MilkedFigure(None),) if isinstance(step, MilkStep) else ()


def time_of(hand: Hand, step: Step) -> Span:
    """When what a key writes as done was done: a correction keeps its time, unless another one was set."""
    written = _done_before(hand, step)
    return written.when if written else hand.when


def _done_before(hand: Hand, step: Step) -> Written | None:
    return step.entry if step.entry and step.entry.state is State.DONE and not hand.time_set else None


def again(hand: Hand, step: Step) -> Draft:
    """What is written of a step already, once more: at the time that was set."""
    entry = step.entry
    return draft(hand, step, step.state, entry.figures if entry else (), entry.reason if entry else "")


def draft(hand: Hand, step: Step, state: State, figures: tuple[Figure, ...], reason: str = "") -> Draft:
    """The draft of a planned step; see time_of for when it happened."""
    done_before = _done_before(hand, step) if state is State.DONE else None
    return Draft(
        step_id=step.step_id,
        kind=step.kind,
        subject=step.subject,
        turn=hand.turn,
        state=state,
        happened_at=done_before.happened_at if done_before else hand.now,
        happened_from=done_before.happened_from if done_before else hand.happened_from,
        person_id=hand.person_id,
        shown=step.entry.id if step.entry else None,
        reason=reason,
        figures=figures,
    )
