"""What is told of a cow's milk beyond the pail, worked by hand."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.milk import PastPail
from store.book.reading.lactation import InPails, Lactation, MilkTest, Weight
from store.book.words import Stage
from store.round.looking_back import LookBack
from store.round.timed import TimedPail
from store.round.whys.asked import Asked
from store.round.whys.calf_share import calf_share
from store.round.whys.in_pails import so_far
from store.round.whys.lactation import milk_values
from tests.farm import MORNING
from tests.store.round.made import animal_named, dawn

CALVED = date(2026, 1, 9)
FENNEL, ROOK = animal_named(dawn(), "Fennel"), animal_named(dawn(), "Rook")
ASKED = Asked(dawn(), (), MORNING)
HOURS_12 = timedelta(hours=12)
NIGHTS = tuple(
    TimedPail(PastPail(at, 8.0, held_back=False), at - HOURS_12, "")
    for at in (MORNING - timedelta(days=day) for day in range(1, 8))
)
"""8.0 kg after twelve hours, seven mornings."""


def in_pails(*kg: float, first: date = CALVED, milkings: int = 1) -> tuple[InPails, ...]:
    """Of days one after the other."""
    return tuple(InPails(first + timedelta(days=at), each, milkings) for at, each in enumerate(kg))


def weights(*kg: float, every: int = 14) -> tuple[Weight, ...]:
    """Rook's, the newest first, so many days apart; the newest of yesterday."""
    return tuple(Weight(MORNING - timedelta(days=1 + at * every), each) for at, each in enumerate(kg))


def test_what_a_calf_took_by_two_ways_worked_by_hand() -> None:
    """By the pail 10.0 and 11.06, of 8.0 kg at nine tenths and 0.85; by 0.5 kg of gain 4 to 7; their middles apart."""
    found = calf_share(ASKED, NIGHTS, in_pails(*[8.0] * 7), {ROOK.id: weights(60, 53)})
    assert found.by_pail is not None
    assert found.by_gain is not None
    assert found.gap is not None
    assert [round(each.amount, 2) for each in found.by_pail] == [10.0, 11.06]
    assert [each.amount for each in found.by_gain] == [4.0, 7.0]
    assert found.gap.amount == pytest.approx((10.0 + 11.06) / 2 - 5.5, abs=0.01)


def test_a_day_of_which_a_milking_is_missing_tells_nothing_of_what_the_calf_took() -> None:
    """Six days of two milkings, and this morning's pail: the calf did not take what is still to come tonight."""
    whole = in_pails(*[15.0] * 6, milkings=2)
    today = InPails(CALVED + timedelta(days=6), 9.0, 1)
    calves = {ROOK.id: weights(60)}
    assert calf_share(ASKED, NIGHTS, (*whole, today), calves).by_pail is not None
    told, before = (calf_share(ASKED, NIGHTS, days, calves).values() for days in ((*whole, today), whole))
    assert [each.amount for each in told] == [each.amount for each in before]


def test_no_calf_drinks_more_than_a_quarter_of_its_weight() -> None:
    """The rest she held back; a calf that was never weighed sets no bound."""
    small = calf_share(ASKED, NIGHTS, in_pails(*[8.0] * 7), {ROOK.id: weights(32)})
    unknown = calf_share(ASKED, NIGHTS, in_pails(*[8.0] * 7), {ROOK.id: ()})
    assert small.by_pail is not None
    assert unknown.by_pail is not None
    assert [each.amount for each in small.by_pail] == [8.0, 8.0]
    assert small.held_back is not None
    assert small.held_back.amount == pytest.approx(2.0, abs=0.01)
    assert unknown.held_back is None
    assert unknown.by_pail[1].amount > 11


@pytest.mark.parametrize("found", [(), (60.0,), (53.0, 60.0)], ids=["no weight", "one", "it lost"])
def test_without_a_gain_there_is_one_way_only(found: tuple[float, ...]) -> None:
    share = calf_share(ASKED, NIGHTS, in_pails(*[8.0] * 7), {ROOK.id: weights(*found)})
    assert share.by_gain is None
    assert share.gap is None
    assert len(list(share.values())) == 2


def test_weights_of_the_same_week_and_of_a_calf_that_eats_much_else_tell_nothing() -> None:
    """The last two that are a week apart; up to twelve weeks of age."""
    days_apart = calf_share(ASKED, (), (), {ROOK.id: weights(60, 58, every=3)})
    older = replace(dawn(), animals=(replace(ROOK, born_on=date(2025, 12, 1)),))
    assert days_apart.by_gain is None
    assert calf_share(Asked(older, (), MORNING), (), (), {ROOK.id: weights(60, 53)}).by_gain is None


def test_so_far_is_from_calving_where_she_was_weighed_soon_and_no_calf_sucks() -> None:
    """Ten days before the first weighing at its yield: 10 x 12 + 12 x 3."""
    days = in_pails(12, 12, 12, first=CALVED + timedelta(days=10))
    alone, shared = so_far(days, CALVED, shared=False), so_far(days, CALVED, shared=True)
    assert alone is not None
    assert shared is not None
    assert (alone.since, alone.days) == (CALVED, 3)
    assert alone.together.amount == pytest.approx(13 * 12)
    assert shared.since == days[0].day
    assert shared.together.amount == pytest.approx(3 * 12)


def test_a_day_with_a_milking_left_out_is_filled_in() -> None:
    """6 kg of one milking between two days of 12; the last one is still going on."""
    days = [*in_pails(12, 6, 12, 5, milkings=2)]
    days[1], days[3] = replace(days[1], milkings=1), replace(days[3], milkings=1)
    found = so_far(days, CALVED, shared=False)
    assert found is not None
    assert found.days == 2
    assert found.together.amount == pytest.approx(36)


def test_with_no_pail_or_no_calving_nothing_is_told() -> None:
    assert so_far((), CALVED, shared=False) is None
    assert so_far(in_pails(12), None, shared=False) is None
    told = milk_values(ASKED, replace(FENNEL, calved_on=None), LookBack(()), Lactation())
    assert told.values() == ()


def test_corrected_milk_is_of_her_test_and_without_protein_of_fat_alone() -> None:
    """16 kg a day of 8.0 in twelve hours: at 4.2 % fat 16.48, as printed; 16 x 3.2146 / 3.1138 = 16.518 by energy."""
    test = MilkTest(MORNING - timedelta(days=3), 4.2, 3.4)
    both = milk_values(ASKED, FENNEL, LookBack(NIGHTS), Lactation(test=test)).corrected
    fat_only = milk_values(
        ASKED, FENNEL, LookBack(NIGHTS), Lactation(test=replace(test, protein_percent=None))
    ).corrected
    assert [round(each.amount, 2) for each in both] == [16.48, 16.52]
    assert [round(each.amount, 2) for each in fat_only] == [16.48]


def test_a_test_of_an_earlier_lactation_is_not_hers_now() -> None:
    """The day before she calved."""
    test = MilkTest(MORNING - timedelta(days=62), 4.2, 3.4)
    assert milk_values(ASKED, FENNEL, LookBack(NIGHTS), Lactation(test=test)).corrected == ()


def test_of_a_dry_cow_only_what_she_gave_is_told() -> None:
    """No forecast, nothing of a calf."""
    dry = replace(FENNEL, stage=Stage.DRY)
    told = milk_values(ASKED, dry, LookBack(NIGHTS), Lactation("Jersey", in_pails=in_pails(8, 8)))
    assert told.so_far is not None
    assert told.values() == (told.a_day, told.so_far.together)


def test_past_the_last_day_that_curves_were_made_for_it_is_unsure() -> None:
    """Day 400."""
    long_ago = replace(FENNEL, calved_on=(MORNING - timedelta(days=400)).date())
    told = milk_values(ASKED, long_ago, LookBack(NIGHTS), Lactation("Jersey")).coming
    assert told is not None
    assert "unsure beyond that" in next(told.middle.doubts())


def test_the_coming_month_is_near_what_she_gives_with_a_range() -> None:
    """16 kg now, falling slowly: 12 % to either side."""
    told = milk_values(ASKED, FENNEL, LookBack(NIGHTS), Lactation("Jersey")).coming
    assert told is not None
    least, middle, most = (each.amount for each in (told.least, told.middle, told.most))
    assert 15 < middle < 16
    assert (least, most) == pytest.approx((middle * 0.88, middle * 1.12))
    assert told.peak is None


def test_a_peak_that_is_to_come_is_told() -> None:
    """A Holstein, eighteen days after she calved: her breed's peak is on day 37."""
    fresh = replace(FENNEL, calved_on=(MORNING - timedelta(days=18)).date())
    told = milk_values(ASKED, fresh, LookBack(NIGHTS), Lactation("Holstein")).coming
    assert told is not None
    assert told.peak is not None
    day, kg = told.peak
    assert 25 < day.amount < 50
    assert kg.amount > told.middle.amount * 0.98
