"""A key that confirms, as a draft of the entry it writes. Pure: writing is the book's."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from store.book.drafts import Draft, FedFigure, Figure, MilkedFigure
from store.book.snapshot import Written
from store.book.turn import Turn
from store.book.words import Fate, State, Units
from store.round.amount import feed_amount, pail_amount
from store.round.steps import DueFeed, FeedStep, MilkStep, Step


@dataclass(frozen=True, slots=True)
class Hand:
    """Who presses the key, in which round, when, and how the farm reads a number."""

    turn: Turn
    person_id: UUID
    now: datetime
    units: Units


def fed(hand: Hand, step: FeedStep, typed: Mapping[UUID, str]) -> Draft:
    """What the screen shows: as typed (by feed_id), else as it was given already, else as due. Raises Unreadable."""
    before = step.entry.fed if step.entry and step.entry.state is State.DONE else ()
    given = {figure.feed_id: figure for figure in before}
    figures = tuple(_fed(hand, due, typed.get(due.feed.id, ""), given.get(due.feed.id)) for due in step.due)
    return _draft(hand, step, State.DONE, figures)


def _fed(hand: Hand, due: DueFeed, typed: str, given: FedFigure | None) -> FedFigure:
    if given and not typed:
        return given
    by_weight = due.measures is None
    kg = feed_amount(typed, due.feed, due.told, hand.units, by_weight=by_weight).kg if typed else due.as_shown_kg
    return FedFigure(due.feed.id, due.told.id if due.told else None, due.due_kg, kg, typed)


def milked(hand: Hand, step: MilkStep, typed: str, fate: Fate) -> Draft:
    """So much milk, and where it went. Raises Unreadable."""
    pail = step.milking.pail
    amount = pail_amount(typed, pail, hand.units)
    pail_id = pail.id if pail and amount.gross_kg is not None else None
    figure = MilkedFigure(amount.milk_kg, amount.gross_kg, pail_id, amount.empty_kg, fate, typed)
    return _draft(hand, step, State.DONE, (figure,))


def done(hand: Hand, step: Step) -> Draft:
    """A job is done."""
    return _draft(hand, step, State.DONE, ())


def skipped(hand: Hand, step: Step, reason: str) -> Draft:
    """Not done, with the reason; what was due is kept beside it."""
    return _draft(hand, step, State.SKIPPED, _not_done(step), reason)


def undone(hand: Hand, entry: Written) -> Draft:
    """The step of an entry is open again. The entry stays in the book as its history."""
    return Draft(
        step_id=entry.step_id,
        kind=entry.kind,
        subject=entry.subject,
        turn=hand.turn,
        state=State.OPEN,
        happened_at=hand.now,
        person_id=hand.person_id,
        shown=entry.id,
    )


def _not_done(step: Step) -> tuple[Figure, ...]:
    if isinstance(step, FeedStep):
        return tuple(FedFigure(due.feed.id, due.told.id if due.told else None, due.due_kg, None) for due in step.due)
    return (MilkedFigure(None),) if isinstance(step, MilkStep) else ()


def _draft(hand: Hand, step: Step, state: State, figures: tuple[Figure, ...], reason: str = "") -> Draft:
    return Draft(
        step_id=step.step_id,
        kind=step.kind,
        subject=step.subject,
        turn=hand.turn,
        state=state,
        happened_at=hand.now,
        person_id=hand.person_id,
        shown=step.entry.id if step.entry else None,
        reason=reason,
        figures=figures,
    )
