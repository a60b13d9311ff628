"""Doses that label or vet have ordered: which of how many, due when; given, skipped, ended."""

from datetime import timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.facts.care import Treatment
from store.book.facts.span import span
from store.book.figures import DosedFigure
from store.book.opening import Book
from store.book.records.care import Treatment as TreatmentRecord
from store.book.records.care import TreatmentAs
from store.book.snapshot import Snapshot
from store.book.words import EVENING, Kind, State
from store.round.care import dosed
from store.round.confirm import skipped
from store.round.dose import due
from store.round.plan import plan
from store.round.steps import DoseStep
from store.round.together import alone_why
from tests.farm import MORNING, HandClock, morning
from tests.farm import hand as hand_at
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn, hand, some_id, unhurried
from tests.store.round.named import step_of, steps_of

SPRAY = Treatment(
    some_id("spray"), animal_named(dawn(), "Sloe").id, "foot spray", "cover the sole", "", "", "", 3, 12.0, MORNING
)


def with_treatment(treatment: Treatment, snapshot: Snapshot | None = None) -> Snapshot:
    """The pretend morning with a treatment."""
    return replace(snapshot or dawn(), treatments=(treatment,))


def test_the_first_dose_is_due_when_it_was_ordered_for() -> None:
    """One step at its animal, behind her feed, with which of how many."""
    step = step_of(with_treatment(SPRAY), DoseStep, "Sloe")
    assert (step.kind, step.number, step.due_at, step.place) == (Kind.DOSE, 1, MORNING, "Orchard")
    kinds = [each.kind for each in plan(with_treatment(SPRAY)) if each.subject == step.subject]
    assert kinds == [Kind.FEED, Kind.DOSE]


@pytest.mark.parametrize(("minutes", "is_due"), [(-9999, True), (-1, True), (0, False), (99, False)])
def test_a_dose_belongs_to_the_round_in_whose_hours_it_falls_due(minutes: int, is_due: bool) -> None:
    """Until the minute in which the evening begins; what is overdue is due now."""
    first_at = dawn().turn.ends(dawn().farm.zone, dawn().farm.evening_from_h) + timedelta(minutes=minutes)
    assert bool(steps_of(with_treatment(replace(SPRAY, first_at=first_at)), DoseStep)) is is_due


def test_the_clock_of_the_next_dose_runs_from_the_last_one_given() -> None:
    """Twelve hours after it was given, not after it should have been."""
    given_at = (MORNING - timedelta(hours=11, minutes=30), MORNING - timedelta(hours=25))
    step = step_of(with_treatment(replace(SPRAY, given=tuple(map(span, given_at)))), DoseStep, "Sloe")
    assert (step.number, step.due_at) == (3, MORNING + timedelta(minutes=30))


def test_no_dose_is_asked_for_behind_the_last_one() -> None:
    """Three of three are given."""
    given_at = tuple(MORNING - timedelta(hours=12 * n) for n in (1, 2, 3))
    assert steps_of(with_treatment(replace(SPRAY, given=tuple(map(span, given_at)))), DoseStep) == []


@given(doses=st.integers(1, 9), every_h=st.floats(1, 96), given_h=st.lists(st.floats(0, 400), max_size=9))
@unhurried
def test_the_next_dose_is_never_due_before_its_hours_are_over(doses: int, every_h: float, given_h: list[float]) -> None:
    """Whatever was given when."""
    given_at = tuple(sorted((MORNING - timedelta(hours=h) for h in given_h), reverse=True))
    treatment = replace(SPRAY, doses=doses, every_h=every_h, given=tuple(map(span, given_at)))
    assert all(newer >= older for newer, older in pairwise(given_at))
    if given_at:
        assert due(treatment) - given_at[0] == timedelta(hours=every_h)
    for step in steps_of(with_treatment(treatment), DoseStep):
        assert 1 <= step.number == len(given_at) + 1 <= doses


def test_a_dose_is_written_as_given_and_a_skipped_one_as_not() -> None:
    """Both say which one it was."""
    found = with_treatment(SPRAY)
    step = step_of(found, DoseStep, "Sloe")
    assert dosed(hand(found), step).figures == (DosedFigure(SPRAY.id, 1, given=True),)
    assert skipped(hand(found), step, "alone, not safe").figures == (DosedFigure(SPRAY.id, 1, given=False),)


def test_a_dose_is_always_by_itself() -> None:
    """No key writes it along with others."""
    found = with_treatment(SPRAY)
    step = step_of(found, DoseStep, "Sloe")
    assert alone_why(step, MORNING) == "by itself"


def test_the_book_counts_the_doses_that_were_given_and_not_those_skipped(book: Book) -> None:
    """A skipped dose is due again in the next round, as the same number."""
    ordered(book)
    found = morning(book)
    assert step_of(found, DoseStep, "Sloe").number == 1
    book.append(skipped(hand_at(book, found), step_of(found, DoseStep, "Sloe"), "alone, not safe"))
    assert step_of(morning(book), DoseStep, "Sloe").state is State.SKIPPED
    book.clock = HandClock(MORNING + timedelta(hours=12))
    evening = morning(book)
    assert (evening.turn.slot, step_of(evening, DoseStep, "Sloe").number) == (EVENING, 1)
    book.append(dosed(hand_at(book, evening), step_of(evening, DoseStep, "Sloe")))
    assert step_of(morning(book), DoseStep, "Sloe").state is State.DONE
    book.clock = HandClock(MORNING + timedelta(hours=24))
    step = step_of(morning(book), DoseStep, "Sloe")
    assert (step.number, step.due_at.replace(second=0, microsecond=0)) == (2, MORNING + timedelta(hours=24))


def test_a_treatment_that_was_ended_asks_for_no_more(book: Book) -> None:
    """The vet stopped it."""
    ordered(book)
    ordered(book, in_use=False, written_at=MORNING + timedelta(seconds=1))
    assert steps_of(morning(book), DoseStep) == []


def test_a_treatment_that_should_have_ended_long_ago_asks_for_no_more(book: Book) -> None:
    """The small farm's spray was ordered for two days; half of it forgotten, nobody is asked for it in summer."""
    ordered(book)
    book.clock = HandClock(MORNING + timedelta(days=29))
    assert steps_of(morning(book), DoseStep) != []
    book.clock = HandClock(MORNING + timedelta(days=40))
    assert steps_of(morning(book), DoseStep) == []


def ordered(book: Book, **changed: object) -> None:
    """A treatment of the small farm's heifer: three doses, twelve hours apart, from the pretend morning on."""
    if not changed:
        put(book.desk, TreatmentRecord, id=SPRAY.id)
    values = {"product": "foot spray", "amount": "cover the sole", "doses": 3, "every_h": 12, "first_at": MORNING}
    sloe = animal_named(morning(book), "Sloe").id
    put(book.desk, TreatmentAs, treatment_id=SPRAY.id, animal_id=sloe, **values | changed)
