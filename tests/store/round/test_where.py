"""Where a calf is as to each cow that it sucks, and since when each of them fills."""

from datetime import datetime, timedelta
from random import Random
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.facts.calves import Parting, Share
from store.book.facts.milk import PastPail
from store.book.words import Apart
from store.round.emptied import CALF_HAD_IT, emptied_at
from store.round.where import last_seen_apart, may_be_with_her, was_put_back, where
from tests.farm import MORNING
from tests.store.round.made import some_id, unhurried

AVENS, BURNET, CALF = some_id("Avens"), some_id("Burnet"), some_id("Pipit")
SHUT, LET, OUT, TOGETHER = Apart.SHUT_AWAY, Apart.LET_IN, Apart.GOT_OUT, Apart.TOGETHER
PAPER = Parting(None, MORNING - timedelta(hours=1), None)


def ago(hours: float) -> datetime:
    """So long before the pretend morning."""
    return MORNING - timedelta(hours=hours)


def pipit(*partings: Parting, since: datetime | None = None, until: datetime | None = None) -> Share:
    """A calf that sucks two cows."""
    return Share(AVENS, CALF, 13, tuple(reversed(partings)), since, until, second_cow_id=BURNET)


def was(state: Apart, hours: float, cow_id: UUID = AVENS, since: float | None = None) -> Parting:
    """What was written of it, so many hours ago."""
    return Parting(state, ago(hours), None if since is None else ago(since), cow_id)


def state_at(share: Share, cow_id: UUID) -> tuple[Apart | None, datetime] | None:
    """What is known now, as to one cow."""
    found = where(share, cow_id)
    return (found.state, found.at) if found else None


def test_a_calf_that_was_shut_away_is_apart_from_both_its_cows() -> None:
    """One latch."""
    share = pipit(was(LET, 24), was(SHUT, 12))
    assert state_at(share, AVENS) == (SHUT, ago(12))
    assert emptied_at(AVENS, (share,), ()) == ago(12)
    assert emptied_at(BURNET, (share,), (PastPail(ago(14), 6.0, held_back=False),)) == ago(14)


def test_a_calf_is_with_the_one_it_was_let_in_to_and_apart_from_the_other() -> None:
    """The other fills since her milking, or since the calf went away from her."""
    share = pipit(was(LET, 30, BURNET), was(LET, 6))
    assert state_at(share, AVENS) == (LET, ago(6))
    assert state_at(share, BURNET) == (SHUT, ago(6))
    assert emptied_at(AVENS, (share,), (PastPail(ago(7), 6.0, held_back=False),)) is None
    assert emptied_at(BURNET, (share,), (PastPail(ago(7), 6.0, held_back=False),)) == ago(6)


def test_shut_away_from_the_one_it_was_with_it_comes_not_from_the_other() -> None:
    """Burnet fills since it left her, whatever Avens' calf pen says since."""
    share = pipit(was(LET, 40, BURNET), was(SHUT, 30), was(LET, 24), was(SHUT, 12))
    assert state_at(share, AVENS) == (SHUT, ago(12))
    assert state_at(share, BURNET) == (SHUT, ago(30))


@pytest.mark.parametrize("newest", [was(OUT, 1, since=9), was(OUT, 1), PAPER])
def test_a_calf_that_got_out_or_is_still_on_paper_may_have_been_with_either(newest: Parting) -> None:
    """Neither udder is known."""
    share = pipit(was(SHUT, 12), newest)
    for cow_id in (AVENS, BURNET):
        assert state_at(share, cow_id) == (newest.state, newest.at)
        assert emptied_at(cow_id, (share,), (PastPail(ago(24), 6.0, held_back=False),)) is None


def test_a_calf_put_back_leaves_an_udder_that_nobody_knows_until_it_is_milked() -> None:
    """It sucked, some; ten minutes since the latch say nothing."""
    share = pipit(was(SHUT, 12), was(OUT, 1, since=9), was(SHUT, 0.8))
    assert emptied_at(AVENS, (share,), (PastPail(ago(24), 6.0, held_back=False),)) is None
    assert emptied_at(AVENS, (share,), (PastPail(ago(0.5), 1.0, held_back=False),)) == ago(0.5)
    all_day = pipit(was(SHUT, 24), was(OUT, 20, since=23), was(SHUT, 12))
    assert emptied_at(AVENS, (all_day,), ()) == ago(12)


def test_left_together_on_purpose_she_fills_from_the_next_latch_on() -> None:
    """Not known until then."""
    together = pipit(was(SHUT, 36), was(LET, 24), was(TOGETHER, 12))
    assert state_at(together, AVENS) == (TOGETHER, ago(12))
    assert emptied_at(AVENS, (together,), ()) is None
    assert emptied_at(AVENS, (replace(together, partings=(was(SHUT, 2), *together.partings)),), ()) == ago(2)


def test_a_calf_that_had_the_milk_was_let_in_though_nobody_wrote_it() -> None:
    """Shut away the evening before, says the book; it had the milk all the same."""
    had = PastPail(ago(3), None, held_back=False, typed=CALF_HAD_IT)
    assert emptied_at(AVENS, (pipit(was(SHUT, 12)),), (had,)) is None
    assert emptied_at(AVENS, (pipit(was(SHUT, 12), was(SHUT, 1)),), (had,)) == ago(1)


def test_a_share_that_ended_counts_for_what_lies_before_its_end() -> None:
    """With her until then, it emptied her until then; shut away before, since it was."""
    milked = (PastPail(ago(30), 6.0, held_back=False),)
    with_her = pipit(was(SHUT, 36), was(LET, 24), until=ago(10))
    assert emptied_at(AVENS, (with_her,), milked) == ago(10)
    assert emptied_at(AVENS, (with_her,), milked, before=ago(12)) is None
    away = pipit(was(LET, 24), was(SHUT, 12), until=ago(10))
    assert emptied_at(AVENS, (away,), milked) == ago(12)
    assert emptied_at(AVENS, (away,), (PastPail(ago(2), 6.0, held_back=False), *milked)) == ago(2)


def test_a_fostered_calf_begins_with_its_new_cow_when_it_comes_to_her() -> None:
    """What it did with the other says nothing of this one; shut away it is still shut away."""
    milked = (PastPail(ago(15), 6.0, held_back=False),)
    was_with_another = pipit(was(LET, 24), since=ago(10))
    assert state_at(was_with_another, AVENS) is None
    assert emptied_at(AVENS, (was_with_another,), milked) is None
    assert emptied_at(AVENS, (was_with_another,), milked, before=ago(11)) == ago(15)
    shut = pipit(was(SHUT, 12), since=ago(10))
    assert emptied_at(AVENS, (shut,), milked) == ago(15)


def test_what_a_fostered_calf_did_before_it_came_to_a_cow_leaves_her_hours_alone() -> None:
    """It got out to the other eleven hours ago and was put back; ten hours ago it came to this one."""
    milked = (PastPail(ago(13), 6.0, held_back=False),)
    fostered = pipit(was(SHUT, 30), was(OUT, 11, BURNET, since=14), was(SHUT, 10.9), since=ago(10))
    assert emptied_at(AVENS, (fostered,), milked) == ago(13)
    assert not may_be_with_her(fostered, AVENS, ago(12))
    at_once = replace(fostered, since=ago(11))
    assert emptied_at(AVENS, (at_once,), milked) is None
    assert may_be_with_her(at_once, AVENS, ago(12))


def test_a_second_cow_is_its_cow_only_since_it_came_to_her_too() -> None:
    """Let in to Avens before that, it says nothing of Burnet."""
    milked = (PastPail(ago(15), 6.0, held_back=False),)
    share = replace(pipit(was(OUT, 14, since=16), was(SHUT, 13.5)), second_since=ago(10))
    assert emptied_at(BURNET, (share,), milked) == ago(15)
    assert emptied_at(AVENS, (share,), milked) is None
    assert [share.began(cow_id) for cow_id in (AVENS, BURNET)] == [None, ago(10)]
    assert replace(share, since=ago(4)).began(BURNET) == ago(4)


@pytest.mark.parametrize(("at", "may"), [(14, False), (13.9, True), (11, True), (10.9, False)])
def test_a_calf_may_be_out_behind_the_last_time_it_was_seen_apart_up_to_when_it_was_found(at: float, may: bool) -> None:
    assert may_be_with_her(pipit(was(OUT, 11, since=14)), AVENS, ago(at)) is may


@pytest.mark.parametrize(("hours", "back"), [(11, True), (10, True), (9.99, False), (11.01, False)])
def test_put_back_within_the_hour_is_put_back(hours: float, back: bool) -> None:
    """Found eleven hours ago."""
    share = pipit(was(OUT, 11, since=14))
    assert was_put_back(share, AVENS, was(SHUT, hours)) is back


def test_when_it_was_last_seen_apart() -> None:
    """The newest latch."""
    assert last_seen_apart(pipit(was(SHUT, 36), was(LET, 24), was(SHUT, 12), was(OUT, 1))) == ago(12)
    assert last_seen_apart(pipit(was(LET, 24))) is None
    assert last_seen_apart(pipit(was(SHUT, 36), was(LET, 24), was(OUT, 1))) is None
    twice = pipit(was(SHUT, 36), was(SHUT, 12))
    assert [last_seen_apart(twice, ago(hours)) for hours in (11, 12, 36)] == [ago(12), ago(36), None]


written = st.lists(
    st.builds(
        was,
        st.sampled_from(Apart),
        st.integers(0, 72).map(float),
        st.sampled_from([AVENS, BURNET]),
        st.none() | st.integers(73, 80).map(float),
    ),
    max_size=8,
    unique_by=lambda each: each.at,
)


@unhurried
@given(written, st.randoms(use_true_random=False), st.sampled_from([AVENS, BURNET]), st.integers(0, 72))
def test_it_does_not_matter_in_what_order_it_was_typed(
    partings: list[Parting], chance: Random, cow_id: UUID, hours: int
) -> None:
    """Where the calf is, and since when she fills, hang on when it happened alone."""
    shuffled = list(partings)
    chance.shuffle(shuffled)
    one, other = pipit(*partings), pipit(*shuffled)
    assert state_at(one, cow_id) == state_at(other, cow_id)
    for before in (None, ago(hours)):
        assert emptied_at(cow_id, (one,), (), before) == emptied_at(cow_id, (other,), (), before)
