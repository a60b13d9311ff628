"""A calf past its longest time apart."""

from datetime import timedelta

from msgspec.structs import replace

from store.book.facts.calves import Parting
from store.book.words import Apart
from store.round.overdue import overdue_calves
from tests.farm import MORNING
from tests.store.round.made import animal_named, dawn, without_animal

HOUR = timedelta(hours=1)


def test_a_calf_is_overdue_past_its_limit_and_not_at_it() -> None:
    """Rook was shut away at 18:02; thirteen hours are the farm's limit."""
    (share,) = dawn().shares
    shut = share.partings[0].at
    assert overdue_calves(dawn(), shut + 13 * HOUR) == ()
    (late,) = overdue_calves(dawn(), shut + 14 * HOUR)
    assert (late.calf.name, late.cow.name, late.since, late.longest_h) == ("Rook", "Fennel", shut, 13)


def test_a_calf_that_is_with_its_cow_or_gone_is_not_overdue() -> None:
    (share,) = dawn().shares
    late = MORNING + 24 * HOUR
    let_in = replace(share, partings=(Parting(Apart.LET_IN, MORNING, None), *share.partings))
    assert overdue_calves(replace(dawn(), shares=(let_in,)), late) == ()
    assert overdue_calves(without_animal(dawn(), "Rook"), late) == ()


def test_with_its_other_cow_it_is_not_apart() -> None:
    hazel = animal_named(dawn(), "Hazel").id
    (share,) = dawn().shares
    with_hazel = Parting(Apart.LET_IN, MORNING, None, hazel)
    both = replace(share, partings=(with_hazel, *share.partings), second_cow_id=hazel)
    assert overdue_calves(replace(dawn(), shares=(both,)), MORNING + 24 * HOUR) == ()


def test_shut_away_between_two_times_it_is_apart_since_the_earlier() -> None:
    """Nobody saw when: the calf may be hungry since then."""
    (share,) = dawn().shares
    shut = Parting(Apart.SHUT_AWAY, share.partings[0].at, share.partings[0].at - 2 * HOUR)
    unseen = replace(dawn(), shares=(replace(share, partings=(shut,)),))
    (late,) = overdue_calves(unseen, shut.at + 12 * HOUR)
    assert late.since == shut.at - 2 * HOUR
