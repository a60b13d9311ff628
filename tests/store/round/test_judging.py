"""A pail against her usual: worked by hand, and when nothing is said of a drop."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.calves import Parting
from store.book.facts.milk import PastPail
from store.book.facts.span import span
from store.book.words import Apart, Fate
from store.husbandry.milk.udder import filled_h
from store.round.confirm import time_of
from store.round.judging import Judged, judged, judged_draft
from store.round.measured import milked, not_milked
from store.round.steps import MilkStep
from store.round.timed import GOT_OUT, HELD_BACK, LEFT_IN, NOT_KNOWN, PART, TOO_LONG, timed_pails
from tests.farm import MORNING
from tests.store.round.made import dawn, hand, wrote
from tests.store.round.named import milk_of

USUAL_KG, HOURS = 11.9, 12.0
LIMIT = 10.0


def cow(elapsed_h: float = HOURS) -> MilkStep:
    """Fennel, of whom seven pails of 11.9 kg in 12 h are known, so long after she was emptied."""
    rates = (USUAL_KG / filled_h(HOURS),) * 7
    return replace(milk_of(dawn(), "Fennel"), emptied_at=MORNING - timedelta(hours=elapsed_h), rates_kg_h=rates)


def found(milk_kg: float, elapsed_h: float = HOURS) -> Judged:
    """A pail of hers."""
    return judged(cow(elapsed_h), milk_kg, MORNING)


def test_a_drop_worked_by_hand() -> None:
    """10.5 kg where 11.9 are usual: 10.5 / 11.9 - 1 = -11.8 %."""
    pail = found(10.5)
    assert pail.percent == pytest.approx(-11.76, abs=0.01)
    assert pail.usual_kg == pytest.approx((11.17, 11.9, 12.68), abs=0.02)
    assert (pail.timed.kg_h, pail.day_kg, pail.of) == (0.875, 21.0, 7)
    assert pail.is_drop(LIMIT)
    assert not pail.is_drop(20)


@pytest.mark.parametrize("elapsed_h", [8.0, 12.0, 16.0, 20.0])
def test_a_pail_that_only_had_fewer_hours_is_no_drop(elapsed_h: float) -> None:
    """By the hours at full rate it is what it always is."""
    pail = found(USUAL_KG / filled_h(HOURS) * filled_h(elapsed_h), elapsed_h)
    assert pail.percent == pytest.approx(0, abs=1e-9)
    assert pail.unsure == (elapsed_h > 16)


@pytest.mark.parametrize(
    ("step", "marks", "why"),
    [
        (cow(), {"held_back": True}, HELD_BACK),
        (cow(), {"whole": False}, PART),
        (replace(cow(), emptied_at=None, calves=()), {}, NOT_KNOWN),
        (cow(25), {}, TOO_LONG),
    ],
)
def test_a_pail_that_does_not_compare_is_no_drop(step: MilkStep, marks: dict[str, bool], why: str) -> None:
    """However little it is."""
    pail = judged(step, 0.5, MORNING, **marks)
    assert pail.timed.why_not == why
    assert (pail.percent, pail.day_kg) == (None, None)
    assert not pail.is_drop(LIMIT)


def test_a_calf_found_with_her_is_the_reason() -> None:
    """Last seen apart in the evening, found together: stored, and no drop."""
    step = cow()
    out = Parting(Apart.GOT_OUT, MORNING, MORNING - timedelta(hours=9))
    step = replace(step, emptied_at=None, calves=tuple(replace(each, last=out, was_out=True) for each in step.calves))
    assert judged(step, 1.0, MORNING).timed.why_not == GOT_OUT


def test_behind_a_part_milking_nothing_is_said_of_a_drop_nor_of_a_rise() -> None:
    """What was left in her comes with this one."""
    step = cow()
    part = PastPail(MORNING - timedelta(hours=HOURS), 4.0, held_back=False, whole=False)
    step = replace(step, milking=replace(step.milking, pails_before=(part,)))
    assert judged(step, 15.0, MORNING).timed.why_not == LEFT_IN


def test_with_two_pails_there_is_no_usual_yet() -> None:
    """An hour and a day are said, and no per cent."""
    pail = judged(replace(cow(), rates_kg_h=(1.0, 1.0)), 10.5, MORNING)
    assert (pail.percent, pail.usual_kg, pail.of) == (None, None, 2)
    assert pail.day_kg == 21.0


def test_a_draft_is_judged_by_its_own_time_and_marks() -> None:
    """Not milked is no pail."""
    press = hand(dawn())
    draft = milked(press, cow(), "6.0 l", Fate.HOUSE, held_back=True)
    of_it = judged_draft(cow(), draft)
    assert of_it is not None
    assert of_it.timed.pail.at == press.now
    assert of_it.timed.why_not == HELD_BACK
    assert judged_draft(cow(), not_milked(press, cow(), "the calf had it")) is None


def test_a_written_pail_keeps_its_hours() -> None:
    """Looked at later, or behind the calf that was let in."""
    step = milk_of(dawn(), "Fennel")
    draft = milked(hand(dawn()), step, "7.2", Fate.HOUSE)
    later = milk_of(wrote(dawn(), draft), "Fennel")
    late = replace(hand(dawn()), now=MORNING + timedelta(hours=5))
    assert time_of(late, later) == span(draft.happened_at)
    assert time_of(replace(late, time_set=True), later) == span(late.now)
    assert later.emptied_at == step.emptied_at


@pytest.mark.parametrize(("back_h", "why"), [(None, GOT_OUT), (0.5, GOT_OUT), (2.5, "")])
def test_at_the_step_and_looked_back_at_a_calf_that_got_out_is_the_same_reason(back_h: float | None, why: str) -> None:
    """Found three hours ago; put back at once or left, nobody knows what it had. Shut away later, all."""
    (share,) = dawn().shares
    out = Parting(Apart.GOT_OUT, MORNING - timedelta(hours=3), None, share.cow_id)
    shut_h = {None: (), 0.5: (2.5,), 2.5: (0.5,)}[back_h]
    later = tuple(Parting(Apart.SHUT_AWAY, MORNING - timedelta(hours=hours), None) for hours in shut_h)
    shared = replace(share, partings=(*later, out, *share.partings))
    step = milk_of(replace(dawn(), shares=(shared,)), "Fennel")
    pails = (PastPail(MORNING, 9.0, held_back=False), *step.milking.pails_before)
    back = next(timed_pails(share.cow_id, (shared,), pails))
    assert judged(step, 9.0, MORNING).timed.why_not == back.why_not == why
