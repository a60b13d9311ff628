"""One week by hand: when the milk of a treated cow may be kept again, as a keeper would reckon it on paper.

Hazel, three doses twelve hours apart, 96 h and no fewer than 6 milkings after the last one:

    dose 1   Mon  9 Mar 18:20
    dose 2   Tue 10 Mar 06:20
    dose 3   Tue 10 Mar 18:20   + 96 h = Sat 14 Mar 18:20
    milked   Wed 06:30, 17:50, Thu 06:30, 17:50, Fri 06:30, 17:50: six times, the last one on Friday
    so       Sat 06:30 withheld; Sat 17:50 withheld, 30 min short; Sun 06:30 is the first to keep
"""

from datetime import timedelta
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.facts.care import Withdrawal
from store.book.facts.milk import Withholding
from store.book.figures import DosedFigure
from store.book.words import Fate, Kind, SaidBy
from store.round.amount import Unreadable
from store.round.confirm import unplanned
from store.round.measured import milked
from store.round.pails import withheld_in
from store.round.plan import plan
from store.round.withholding import first_to_keep, withheld_of
from tests.store.round.made import hand, unhurried, wrote
from tests.store.round.named import milk_of
from tests.store.round.week import DOSES, HAZEL, MILKINGS, TUBE, at, may_be_kept, one, week

KEPT, WITHHELD = True, False


@pytest.mark.parametrize(
    ("day", "clock", "kept"),
    [
        (9, "17:50", KEPT),  # before the first dose
        (10, "06:30", WITHHELD),  # ten minutes after the second
        (10, "17:50", WITHHELD),
        (11, "06:30", WITHHELD),
        (13, "17:50", WITHHELD),  # the sixth milking after the last dose
        (14, "06:30", WITHHELD),
        (14, "17:50", WITHHELD),  # half an hour short
        (14, "18:19", WITHHELD),
        (14, "18:20", KEPT),  # to the minute
        (15, "06:30", KEPT),
    ],
)
def test_the_week_as_on_paper(day: int, clock: str, kept: bool) -> None:
    assert may_be_kept(week(at(day, clock)), at(day, clock)) is kept


def test_half_an_hour_short_the_end_and_its_reason_are_said() -> None:
    found = one(week(at(14, "17:50")))
    assert found.until == at(14, "18:20")
    assert found.until - at(14, "17:50") == timedelta(minutes=30)
    assert found.why == "udder tube, last dose Tue 10 Mar 18:20, 96 h, 6 of 6 milkings"


def test_sunday_morning_is_the_first_milking_that_may_be_kept() -> None:
    """Reckoned on Wednesday already: the milkings to come are counted too."""
    to_come = [each for each in MILKINGS if each > at(11, "12:00")]
    assert first_to_keep(week(at(11, "12:00")), HAZEL.id, to_come) == at(15, "06:30")


def test_milkings_later_than_the_hours_count() -> None:
    """Milked once a day, six milkings are six days: Mon 16 Mar is the sixth, so Tue 17 Mar is the first to keep."""
    mornings = tuple(each for each in MILKINGS if each.hour == 6)
    assert one(week(at(16, "06:30"), milkings=mornings)).until is None
    assert one(week(at(16, "06:30"), milkings=mornings)).why.endswith("96 h, 5 of 6 milkings")
    assert not may_be_kept(week(at(16, "06:30"), milkings=mornings), at(16, "06:30"))
    assert may_be_kept(week(at(17, "06:30"), milkings=mornings), at(17, "06:30"))


def test_the_last_milking_of_the_count_stays_withheld_once_it_is_written() -> None:
    """A correction of it is judged as of when she was milked."""
    six = replace(TUBE, withdrawal=Withdrawal(milkings=6))
    evening = week(at(13, "17:50"), six)
    step = milk_of(evening, "Hazel")
    there = replace(hand(evening), now=at(13, "17:50"), turn=evening.turn)
    after = wrote(evening, milked(there, step, "9.9", Fate.THROWN_AWAY))
    with pytest.raises(Unreadable, match="withheld"):
        milked(replace(there, now=at(13, "20:00")), milk_of(after, "Hazel"), "9.9", Fate.HOUSE)
    assert may_be_kept(week(at(14, "06:30"), six), at(14, "06:30"))


def test_a_correction_is_judged_by_when_she_was_milked() -> None:
    """Written at 17:50 as thrown away; at 18:30 the milk of 17:50 is withheld as before."""
    evening = week(at(14, "17:50"))
    there = replace(hand(evening), now=at(14, "17:50"), turn=evening.turn)
    after = milk_of(wrote(evening, milked(there, milk_of(evening, "Hazel"), "9.9", Fate.THROWN_AWAY)), "Hazel")
    late = replace(there, now=at(14, "18:30"))
    with pytest.raises(Unreadable, match="withheld"):
        milked(late, after, "9.9", Fate.HOUSE)
    assert milked(replace(late, time_set=True), after, "9.9", Fate.HOUSE).happened_at == late.now


def test_a_dose_of_this_round_withholds_at_once() -> None:
    """Given at 18:20, before she is milked."""
    evening = week(at(9, "18:00"))
    dose = unplanned(hand(evening), Kind.DOSE, milk_of(evening, "Hazel").subject, DosedFigure(TUBE.id, 1, given=True))
    after = wrote(evening, replace(dose, happened_at=DOSES[0]))
    assert not may_be_kept(after, at(9, "18:30"))
    assert may_be_kept(after, at(9, "18:19"))


def test_doses_to_come_keep_it_withheld_until_the_treatment_is_ended() -> None:
    """Two of three are given; the vet stopped it."""
    course = week(at(18, "06:30"), doses=DOSES[:2])
    assert one(course).until is None
    assert "1 dose to come" in one(course).why
    ended = week(at(18, "06:30"), replace(TUBE, in_use=False), doses=DOSES[:2])
    assert one(ended).until == at(14, "06:20")


@pytest.mark.parametrize("typed", [None, Withdrawal(), Withdrawal(meat_days=10)])
def test_how_long_is_never_guessed(typed: Withdrawal | None) -> None:
    """Nobody typed how long her milk is withheld: until further notice, and why."""
    found = one(week(at(19, "06:30"), replace(TUBE, withdrawal=typed)))
    assert found.until is None
    assert found.why.endswith("how long is not typed")


def test_a_label_that_says_nil_withholds_nothing() -> None:
    assert withheld_of(week(at(11, "06:30"), replace(TUBE, withdrawal=Withdrawal(milk_h=0))), HAZEL.id) == ()


def test_what_the_vet_said_is_said_as_the_vets() -> None:
    found = one(week(at(14, "06:30"), replace(TUBE, withdrawal=Withdrawal(milk_h=168, said_by=SaidBy.VET))))
    assert found.why.endswith("168 h, vet's word")


def test_a_first_dose_that_nobody_wrote_may_have_been_given() -> None:
    """Due on Monday evening, on paper perhaps: on Tuesday her milk is withheld until somebody writes what was."""
    assert may_be_kept(week(at(9, "19:00"), doses=()), at(9, "18:19"))
    found = one(week(at(10, "06:30"), doses=()))
    assert found == Withholding(DOSES[0], None, "udder tube, dose 1 was due Mon 9 Mar 18:20 and is not written")
    assert withheld_of(week(at(10, "06:30"), replace(TUBE, in_use=False), doses=()), HAZEL.id) == ()


def test_what_was_typed_by_hand_is_beside_it() -> None:
    typed = Withholding(at(1, "06:00"), None, "waits for the vet")
    course = replace(week(at(15, "06:30")), withheld={HAZEL.id: (typed,)})
    assert withheld_of(course, HAZEL.id)[0] == typed
    assert not may_be_kept(course, at(15, "06:30"))


HOURS = st.floats(0, 300)


@given(
    doses_h=st.lists(HOURS, min_size=1, max_size=4), now_h=HOURS, milk_h=st.none() | st.floats(1, 200),
    milkings=st.none() | st.integers(1, 9), order=st.randoms(use_true_random=False),
)  # fmt: skip
@unhurried
def test_a_withheld_pail_is_never_house_milk_and_typing_order_does_not_matter(
    doses_h: list[float], now_h: float, milk_h: float | None, milkings: int | None, order: Random
) -> None:
    """Whatever was given when, and typed in whatever order."""
    start, now = DOSES[0], DOSES[0] + timedelta(hours=now_h)
    doses = [start + timedelta(hours=each) for each in doses_h]
    treatment = replace(TUBE, doses=1, first_at=start, withdrawal=Withdrawal(milk_h=milk_h, milkings=milkings))
    course = week(now, treatment, [each for each in doses if each <= now])
    shuffled = list(course.treatments[0].given)
    order.shuffle(shuffled)
    again = replace(course, treatments=(replace(course.treatments[0], given=tuple(shuffled)),))
    assert withheld_of(again, HAZEL.id) == withheld_of(course, HAZEL.id)
    last = max(course.treatments[0].given_at, default=None)
    after = [each.at for each in course.pails[HAZEL.id] if last and each.at > last]
    hours_end = (last or now) + timedelta(hours=milk_h or 0)
    free = last is not None and (milk_h is not None or milkings is not None)
    free &= now >= hours_end.replace(second=0, microsecond=0) and len(after) >= (milkings or 0)
    assert may_be_kept(course, now) is free


def test_a_pail_of_a_cow_that_is_no_longer_milked_is_withheld_too() -> None:
    """Her milking was taken off the plan after the pail was written."""
    course = week(at(11, "06:30"))
    pail_of = milked(replace(hand(course), now=at(11, "06:30")), milk_of(course, "Hazel"), "9.9", Fate.THROWN_AWAY)
    gone = replace(wrote(course, pail_of), milkings={})
    (held,) = withheld_in(gone, plan(gone))[HAZEL.id]
    assert held.holds_at(at(11, "06:30"))
