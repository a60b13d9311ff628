"""A dose that may have been given, and of which nobody wrote: her milk is withheld until it is typed or skipped."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.care import NotGiven, Treatment, Withdrawal
from store.book.facts.span import Span, span
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import EVENING, MORNING, Fate, State
from store.round.care import dosed
from store.round.confirm import Hand, left_open, skipped
from store.round.meat import meat_withheld_of
from store.round.plan import plan
from store.round.steps import DoseStep
from store.round.unsafe import unsafe_pails
from store.round.withholding import withheld_of
from tests.store.round.made import hand, without_animal, wrote
from tests.store.round.week import DOSES, HAZEL, TUBE, at, may_be_kept, one, week

ONE = replace(TUBE, doses=1, first_at=at(11, "16:00"), withdrawal=Withdrawal(milk_h=96, meat_days=10))
EVENING_ROUND = at(11, "17:50")


def dose_of(snapshot: Snapshot) -> DoseStep:
    """The dose step of a round."""
    (found,) = (step for step in plan(snapshot) if isinstance(step, DoseStep))
    return found


def hand_at(snapshot: Snapshot, clock: str) -> Hand:
    """A key at a time of Wednesday."""
    return replace(hand(snapshot), turn=snapshot.turn, now=at(11, clock))


def test_a_first_dose_due_before_this_milking_withholds_it_until_it_is_typed() -> None:
    """Due at four; milked at ten to six, before its step comes."""
    course = week(EVENING_ROUND, ONE, doses=())
    assert not may_be_kept(course, EVENING_ROUND)
    assert one(course).why == "udder tube, dose 1 was due Wed 11 Mar 16:00 and is not written"
    assert may_be_kept(course, at(11, "15:59"))
    later = wrote(course, dosed(hand_at(course, "18:10"), dose_of(course)))
    assert may_be_kept(later, EVENING_ROUND)
    assert not may_be_kept(later, at(11, "18:10"))


def test_a_first_dose_that_this_round_skips_withholds_nothing() -> None:
    course = week(EVENING_ROUND, ONE, doses=())
    assert may_be_kept(wrote(course, skipped(hand_at(course, "17:40"), dose_of(course), "the vet")), EVENING_ROUND)


def test_a_dose_left_open_in_this_round_is_not_known() -> None:
    course = week(EVENING_ROUND, ONE, doses=())
    for state in (State.OPEN, State.ON_PAPER):
        left = wrote(course, left_open(hand_at(course, "17:40"), dose_of(course), state))
        assert not may_be_kept(left, EVENING_ROUND)


def test_a_first_dose_skipped_in_the_round_before_may_be_given_in_this_one() -> None:
    """So the milk of the round before is not in doubt, and that of this one is until its step is answered."""
    tuesday = NotGiven(Turn(date(2026, 3, 10), EVENING), State.SKIPPED, 1)
    first = replace(ONE, first_at=at(10, "16:00"), not_given=(tuesday,))
    course = week(at(11, "06:30"), first, doses=())
    assert may_be_kept(course, at(10, "18:00"))
    assert not may_be_kept(course, at(11, "06:30"))


def ended(state: State, number: int = 2, given: tuple[Span, ...] = (span(DOSES[0]),)) -> Snapshot:
    """Of three doses the first is written; of the second Tuesday morning's round says something; then it was ended."""
    left = NotGiven(Turn(date(2026, 3, 10), MORNING), state, number)
    treatment = replace(TUBE, in_use=False, withdrawal=Withdrawal(milk_h=24), not_given=(left,))
    course = week(at(12, "06:30"), treatment, doses=())
    return replace(course, treatments=(replace(treatment, given=given),))


@pytest.mark.parametrize("state", [State.OPEN, State.ON_PAPER])
def test_a_later_dose_that_was_left_withholds_though_the_treatment_was_ended(state: State) -> None:
    course = ended(state)
    assert not may_be_kept(course, at(12, "06:30"))
    assert withheld_of(course, HAZEL.id)[-1].why == (
        "udder tube, dose 2 of Tue 10 Mar morning is not written: type it there, or skip it"
    )


@pytest.mark.parametrize("state", [State.OPEN, State.ON_PAPER])
def test_an_only_dose_that_was_left_withholds_though_the_treatment_was_ended(state: State) -> None:
    assert not may_be_kept(ended(state, 1, ()), at(12, "06:30"))


def test_a_dose_that_was_skipped_or_is_written_by_another_round_is_known() -> None:
    assert may_be_kept(ended(State.SKIPPED), at(12, "06:30"))
    assert may_be_kept(ended(State.SKIPPED, 1, ()), at(12, "06:30"))
    assert may_be_kept(ended(State.OPEN, 1), at(12, "06:30"))


def test_a_dose_left_in_a_round_is_still_asked_for_there_once_the_treatment_was_ended() -> None:
    """So that it can be typed or skipped."""
    course = week(EVENING_ROUND, ONE, doses=())
    left = wrote(course, left_open(hand_at(course, "17:40"), dose_of(course), State.ON_PAPER))
    over = replace(left, treatments=(replace(ONE, in_use=False),))
    known = wrote(over, skipped(hand_at(course, "19:00"), dose_of(over), "not given"))
    assert may_be_kept(known, EVENING_ROUND)
    assert [step for step in plan(replace(over, entries=())) if isinstance(step, DoseStep)] == []


def test_milk_typed_as_nil_does_not_hide_the_dose_from_meat() -> None:
    nil: Treatment = replace(ONE, withdrawal=Withdrawal(milk_h=0, meat_days=28))
    course = week(at(12, "06:30"), nil, doses=())
    assert withheld_of(course, HAZEL.id) == ()
    assert [each.until for each in meat_withheld_of(course, HAZEL.id)] == [None]
    none = replace(course, treatments=(replace(nil, withdrawal=Withdrawal(milk_h=24, meat_days=0)),))
    assert meat_withheld_of(none, HAZEL.id) == ()


def between(early: str, late: str) -> Snapshot:
    """One dose was given between two times of Wednesday."""
    course = week(at(11, "20:00"), replace(ONE, first_at=at(11, early)), doses=())
    given = (Span(at(11, early), at(11, late)),)
    return replace(course, treatments=(replace(course.treatments[0], given=given),))


def test_a_dose_between_two_times_withholds_from_the_earlier_and_counts_from_the_later() -> None:
    course = between("05:00", "09:00")
    assert not may_be_kept(course, at(11, "05:00"))
    assert may_be_kept(course, at(11, "05:00") - timedelta(minutes=1))
    assert one(course).until == at(15, "09:00")
    (meat,) = meat_withheld_of(course, HAZEL.id)
    assert (meat.since, meat.until) == (at(11, "05:00"), at(21, "09:00"))


def test_a_dose_of_this_round_between_two_times_is_the_same() -> None:
    course = week(EVENING_ROUND, replace(ONE, first_at=at(11, "17:00")), doses=())
    there = replace(hand_at(course, "19:00"), happened_from=at(11, "17:00"), time_set=True)
    after = wrote(course, dosed(there, dose_of(course)))
    assert (one(after).since, one(after).until) == (at(11, "17:00"), at(15, "19:00"))


def test_a_pail_that_must_not_be_drunk_is_told_of_a_cow_that_is_gone_too() -> None:
    course = week(at(12, "06:30"), replace(ONE, first_at=DOSES[0]), DOSES[:1], [at(11, "06:30")], Fate.HOUSE)
    for known in (course, without_animal(course, "Hazel")):
        assert [(each.cow_id, each.pail.at) for each in unsafe_pails(known)] == [(HAZEL.id, at(11, "06:30"))]
