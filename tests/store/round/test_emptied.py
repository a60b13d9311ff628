"""Since when an udder fills, and which earlier pails can be compared: by their own hours, across a clock change too."""

from datetime import datetime, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.calves import Parting, Share
from store.book.facts.milk import Milking, PastPail
from store.book.snapshot import Snapshot
from store.book.turn import from_wall
from store.book.words import Apart
from store.husbandry.milk.udder import filled_h
from store.husbandry.milk.usual import MOST_PAILS, usual_pail
from store.round.emptied import emptied_at
from tests.farm import MORNING
from tests.store.round.made import animal_named, dawn
from tests.store.round.named import milk_of

COW, CALF = animal_named(dawn(), "Fennel").id, animal_named(dawn(), "Rook").id
NIGHT_H = 12.0
FULL_12_H = filled_h(12)
SHUT, LET, OUT = Apart.SHUT_AWAY, Apart.LET_IN, Apart.GOT_OUT


def ago(days: float, hours: float = 0) -> datetime:
    """A moment so long before the pretend morning."""
    return MORNING - timedelta(days=days, hours=hours)


def pail(at: datetime, milk_kg: float, *, held_back: bool = False) -> PastPail:
    """A milking."""
    return PastPail(at, milk_kg, held_back)


def share(*partings: tuple[Apart, datetime]) -> Share:
    """What was written of the calf, newest first."""
    return Share(COW, CALF, 13, tuple(Parting(state, at, None) for state, at in partings))


def fennel(pails: tuple[PastPail, ...], *shares: Share) -> Snapshot:
    """The pretend morning with another past of Fennel."""
    return replace(dawn(), milkings={COW: Milking(COW, None, pails)}, shares=shares)


def nights(count: int) -> tuple[tuple[PastPail, ...], Share]:
    """So many mornings: the calf shut away twelve hours before each milking and let in behind it; 6 kg each time."""
    pails, partings = [], [(SHUT, ago(0, NIGHT_H))]
    for day in range(1, count + 1):
        pails.append(pail(ago(day), 6.0))
        partings += [(LET, ago(day) + timedelta(minutes=5)), (SHUT, ago(day, NIGHT_H))]
    return tuple(pails), share(*partings)


def test_an_udder_without_a_calf_fills_since_it_was_milked_last() -> None:
    """Whatever else she gave before."""
    assert emptied_at(COW, (), (pail(ago(0, 13), 8.0), pail(ago(1), 8.4))) == ago(0, 13)


def test_an_udder_with_a_calf_fills_since_the_calf_was_shut_away() -> None:
    """It drank all day behind the milking."""
    pails, shared = nights(3)
    assert milk_of(fennel(pails, shared), "Fennel").emptied_at == ago(0, NIGHT_H)


def test_an_udder_milked_behind_the_latch_fills_since_the_milking() -> None:
    """Shut away in the afternoon, milked in the evening: the evening counts."""
    assert emptied_at(COW, (share((SHUT, ago(0, 15))),), (pail(ago(0, 12), 5.0),)) == ago(0, 12)


def test_a_latch_that_nobody_saw_leaves_the_hours_unknown_until_she_is_milked_behind_it() -> None:
    """Shut away between 13 and 8 hours ago: she fills since some time between. Milked behind the later: since then."""
    unseen = Share(COW, CALF, 13, (Parting(SHUT, ago(0, 8), ago(0, 13)),))
    ended = replace(unseen, until=ago(0, 7))
    for milked_h in (20, 12, 8.01):
        assert emptied_at(COW, (unseen,), (pail(ago(0, milked_h), 6.0),)) is None
        assert emptied_at(COW, (ended,), (pail(ago(0, milked_h), 6.0),)) is None
    assert emptied_at(COW, (unseen,), (pail(ago(0, 8), 6.0),)) == ago(0, 8)
    seen = replace(unseen, partings=(Parting(SHUT, ago(0, 8), ago(0, 8)),))
    assert emptied_at(COW, (seen,), (pail(ago(0, 20), 6.0),)) == ago(0, 8)


def test_a_calf_let_in_between_two_times_may_have_had_the_pail_between_them() -> None:
    """Let in between 5 and 3 hours ago, shut away 15 hours ago; let in to another cow, it had nothing of hers."""
    shut, milked = Parting(SHUT, ago(0, 15), None), (pail(ago(1), 6.0),)
    for cow_id, found in ((None, None), (COW, None), (animal_named(dawn(), "Hazel").id, ago(0, 15))):
        loose = Share(COW, CALF, 13, (Parting(LET, ago(0, 3), ago(0, 5), cow_id), shut))
        assert emptied_at(COW, (loose,), milked, before=ago(0, 4)) == found
        assert emptied_at(COW, (loose,), milked, before=ago(0, 3)) == found
        assert emptied_at(COW, (loose,), milked, before=ago(0, 5)) == ago(0, 15)


def test_of_two_calves_the_one_shut_away_last_counts() -> None:
    """Until then she was drunk from."""
    shares = (share((SHUT, ago(0, 14))), share((SHUT, ago(0, 11))))
    assert emptied_at(COW, shares, ()) == ago(0, 11)


@pytest.mark.parametrize("newest", [LET, OUT])
def test_with_a_calf_that_was_let_in_or_got_out_it_is_not_known_since_when_she_fills(newest: Apart) -> None:
    """Then nothing is compared; one calf of two is enough."""
    loose, shut = share((newest, ago(0, 3)), (SHUT, ago(0, 12))), share((SHUT, ago(0, 12)))
    for shares in ((loose,), (loose, shut), (shut, loose)):
        assert emptied_at(COW, shares, (pail(ago(1), 6.0),)) is None
    assert milk_of(fennel((pail(ago(1), 6.0),), loose), "Fennel").emptied_at is None


def test_of_a_cow_of_whom_nothing_was_written_nothing_is_known() -> None:
    """Neither a milking nor a latch."""
    assert emptied_at(COW, (), ()) is None
    assert emptied_at(COW, (share(),), (pail(ago(1), 6.0),)) is None
    assert milk_of(fennel((), share()), "Fennel").rates_kg_h == ()


def test_each_earlier_pail_is_compared_by_its_own_hours() -> None:
    """6 kg over twelve hours, every time; over eighteen hours more, and by the hours at full rate the same."""
    pails, shared = nights(3)
    assert milk_of(fennel(pails, shared), "Fennel").rates_kg_h == pytest.approx((6 / FULL_12_H,) * 3)
    longer = replace(shared, partings=(*shared.partings[:-1], Parting(SHUT, ago(3, 18), None)))
    found = fennel((*pails[:-1], pail(ago(3), 6.0 * filled_h(18) / FULL_12_H)), longer)
    assert milk_of(found, "Fennel").rates_kg_h == pytest.approx((6 / FULL_12_H,) * 3)


def test_a_pail_behind_a_night_with_the_calf_out_is_not_compared() -> None:
    """Found with her in the morning: what was in the pail says nothing."""
    pails, shared = nights(4)
    out = Parting(OUT, ago(2) - timedelta(minutes=10), ago(2, NIGHT_H))
    at = next(index for index, each in enumerate(shared.partings) if each.at < out.at)
    shared = replace(shared, partings=(*shared.partings[:at], out, *shared.partings[at:]))
    found = fennel((pails[0], pail(ago(2), 1.0), *pails[2:]), shared)
    assert milk_of(found, "Fennel").rates_kg_h == pytest.approx((6 / FULL_12_H,) * 3)
    assert len(milk_of(fennel(pails, nights(4)[1]), "Fennel").rates_kg_h) == 4


def test_a_pail_that_may_have_been_drunk_from_before_the_calf_was_found_out_is_not_compared() -> None:
    """Found with her behind the milking; it got out some time since the evening, perhaps before."""
    pails, shared = nights(2)
    found_at = ago(1) + timedelta(minutes=4)
    out = Parting(OUT, found_at, ago(1, NIGHT_H))
    assert shared.partings[1].state is LET
    shared = replace(shared, partings=(*shared.partings[:2], out, *shared.partings[2:]))
    assert len(milk_of(fennel(pails, shared), "Fennel").rates_kg_h) == 1


def test_a_pail_that_she_held_back_is_not_compared_but_she_was_milked() -> None:
    """The udder fills anew since then."""
    pails = (pail(ago(0, 12), 2.0, held_back=True), pail(ago(1), 8.0), pail(ago(1, 12), 6.0))
    found = fennel(pails)
    assert milk_of(found, "Fennel").emptied_at == ago(0, 12)
    assert milk_of(found, "Fennel").rates_kg_h == pytest.approx((8.0 / FULL_12_H,))


def test_a_pail_still_on_paper_makes_the_one_behind_it_incomparable() -> None:
    """She was emptied in between, but when, and of how much, nobody typed in yet."""
    paper = PastPail(ago(1, 12), None, held_back=False, on_paper=True)
    pails = (pail(ago(1), 8.0), paper, pail(ago(2), 8.0), pail(ago(3), 8.0))
    found = milk_of(fennel(pails), "Fennel")
    assert found.emptied_at == ago(1)
    assert found.rates_kg_h == pytest.approx((8.0 / filled_h(24),))
    assert milk_of(fennel(pails[1:]), "Fennel").emptied_at is None


def test_a_milking_left_out_on_purpose_empties_nothing() -> None:
    """No zero: she fills since the milking before it, and the pail behind it is compared over the longer time."""
    left_out = PastPail(ago(0, 12), None, held_back=False)
    pails = (left_out, pail(ago(1), 8.0), pail(ago(2), 8.0))
    found = milk_of(fennel(pails), "Fennel")
    assert found.emptied_at == ago(1)
    assert found.rates_kg_h == pytest.approx((8.0 / filled_h(24),))


def test_a_calf_that_had_the_milk_starts_the_hours_when_it_is_shut_away_next() -> None:
    """The cow was emptied by it, all day long."""
    pails = (PastPail(ago(1), None, held_back=False), pail(ago(2), 8.0))
    shared = share((SHUT, ago(0, 11)), (LET, ago(1)), (SHUT, ago(1, 12)), (LET, ago(2)))
    assert milk_of(fennel(pails, shared), "Fennel").emptied_at == ago(0, 11)
    still_with_her = share((LET, ago(1)), (SHUT, ago(1, 12)), (LET, ago(2)))
    assert milk_of(fennel(pails, still_with_her), "Fennel").emptied_at is None


def test_the_first_pail_ever_has_no_hours_of_its_own() -> None:
    """Nobody knows since when she had filled."""
    assert milk_of(fennel((pail(ago(1), 8.0),)), "Fennel").rates_kg_h == ()


def test_two_pails_of_one_moment_have_no_hours_between_them() -> None:
    """Typed in without a time: nothing is divided by nothing."""
    pails = (pail(ago(1), 8.0), pail(ago(1), 3.0), pail(ago(1, 12), 6.0))
    assert milk_of(fennel(pails), "Fennel").rates_kg_h == pytest.approx((3.0 / FULL_12_H,))


def test_the_last_seven_pails_are_compared_newest_first() -> None:
    """Older ones say little of today."""
    pails = tuple(pail(ago(day), filled_h(24) * day) for day in range(1, 12))
    found = milk_of(fennel(pails), "Fennel").rates_kg_h
    assert len(found) == MOST_PAILS == 7
    assert found == pytest.approx((1, 2, 3, 4, 5, 6, 7))


def at_night(day: int, hour: int) -> datetime:
    """A time on the farm's wall in the days around 29 March 2026, when 01:00 became 02:00."""
    return from_wall(datetime(2026, 3, day, hour), "Europe/Dublin")  # noqa: DTZ001


def test_the_night_the_clock_goes_on_is_an_hour_shorter() -> None:
    """From 18:00 to 07:00 on the wall: thirteen hours, and twelve in that night; the rate is by hours that passed."""
    assert at_night(29, 7) - at_night(28, 18) == timedelta(hours=12)
    assert at_night(28, 7) - at_night(27, 18) == timedelta(hours=13)
    pails = (pail(at_night(29, 7), 6.0), pail(at_night(28, 7), 6.5))
    shared = share((SHUT, at_night(28, 18)), (LET, at_night(28, 8)), (SHUT, at_night(27, 18)))
    rates = (6.0 / FULL_12_H, 6.5 / filled_h(13))
    assert milk_of(fennel(pails, shared), "Fennel").rates_kg_h == pytest.approx(rates)


def test_the_usual_pail_of_the_small_farm_is_about_what_she_gives() -> None:
    """Fennel's mornings in the book: six of them have a night before them that is known."""
    step = milk_of(dawn(), "Fennel")
    assert step.emptied_at is not None
    elapsed_h = (MORNING - step.emptied_at).total_seconds() / 3600
    assert elapsed_h == pytest.approx(12.5, abs=0.1)
    found = usual_pail(step.rates_kg_h, elapsed_h)
    assert len(step.rates_kg_h) == 6
    assert found is not None
    assert 4.5 < found[0] < found[1] < found[2] < 7.0


def test_a_skipped_evening_is_no_milking_and_the_hours_run_on() -> None:
    """Hazel was not milked the evening before: her udder fills since the morning before that."""
    step = milk_of(dawn(), "Hazel")
    assert step.emptied_at is not None
    assert MORNING - step.emptied_at > timedelta(hours=23)
