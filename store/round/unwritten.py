"""A dose that may have been given and of which nobody wrote anything: it withholds until it is typed or skipped."""

from collections.abc import Iterator, Sequence

from store.book.facts.care import NotGiven, Treatment
from store.book.facts.milk import Withholding
from store.book.facts.span import Span
from store.book.figures import DosedFigure
from store.book.snapshot import Snapshot
from store.book.words import Kind, State
from store.round.saying import moment_words

LEFT_OUT = (State.SKIPPED, State.MOVED_ON)


def unwritten(snapshot: Snapshot, treatment: Treatment, given: Sequence[Span]) -> Withholding | None:
    """What a dose withholds that a round left open or on paper, also once the treatment was ended; else its first dose
    from the moment on at which it is due, in this round too. given: the doses that are written.
    """
    not_given = tuple(_not_given(snapshot, treatment))
    doubts = [each for each in not_given if each.state not in LEFT_OUT and each.number > len(given)]
    if doubts:
        return _left(snapshot, treatment, min(doubts, key=lambda each: each.turn.day_begins(snapshot.farm.zone)))
    return _first_due(snapshot, treatment, not_given) if treatment.in_use and not given else None


def _not_given(snapshot: Snapshot, treatment: Treatment) -> Iterator[NotGiven]:
    """Of other rounds and of this one."""
    yield from treatment.not_given
    for entry in snapshot.counts().values():
        if entry.kind is Kind.DOSE and entry.state is not State.DONE:
            figures = (figure for figure in entry.of(DosedFigure) if figure.treatment_id == treatment.id)
            yield from (NotGiven(snapshot.turn, entry.state, figure.number) for figure in figures)


def _left(snapshot: Snapshot, treatment: Treatment, dose: NotGiven) -> Withholding:
    day, zone = dose.turn.day, snapshot.farm.zone
    round_ = f"{day:%a} {day.day} {day:%b} {dose.turn.slot}"
    why = f"{treatment.product}, dose {dose.number} of {round_} is not written: type it there, or skip it"
    return Withholding(max(treatment.first_at, dose.turn.day_begins(zone)), None, why)


def _first_due(snapshot: Snapshot, treatment: Treatment, not_given: Sequence[NotGiven]) -> Withholding:
    """Where a round says that it was left out, it may have been given only since that round was over."""
    farm = snapshot.farm
    left_out = (each.turn.ends(farm.zone, farm.evening_from_h) for each in not_given if each.state in LEFT_OUT)
    why = f"{treatment.product}, dose 1 was due {moment_words(treatment.first_at, farm.zone)} and is not written"
    return Withholding(max((treatment.first_at, *left_out)), None, why)
