"""What is still to be put to soak for the next round, and what it means to begin late."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.feed import SoakLimit
from store.book.snapshot import Snapshot
from store.book.words import Water
from store.round.measured import soak_started
from store.round.starting import begun_at, starts_due
from tests.farm import MORNING
from tests.store.round.made import dawn, hand, wrote
from tests.store.round.named import soak_start_of

LUCERNE = "lucerne pellets"
HALF_PAST_FIVE = MORNING.replace(hour=17, minute=30)


def timed(least_h: float = 2, most_h: float = 18) -> Snapshot:
    """The morning of a farm whose evening round begins at half past five, and a rule of so many hours."""
    lucerne = soak_start_of(dawn(), LUCERNE).feed.id
    limits = {lucerne: SoakLimit(Water.COLD, least_h, most_h, 2)}
    return replace(dawn(), farm=replace(dawn().farm, times=(("evening", "17:30"),)), soak_limits=limits)


def test_for_half_past_five_it_is_put_to_soak_between_half_past_eleven_at_night_and_half_past_three() -> None:
    """At least 2 h, at most 18 h; begun at noon it is soft at two."""
    (due,) = starts_due(timed(), MORNING.replace(hour=12, minute=0))
    assert (due.feed.name, due.dry_kg) == (LUCERNE, 0.9)
    assert due.water_kg == pytest.approx(1.8)
    assert due.earliest == HALF_PAST_FIVE - timedelta(hours=18)
    assert due.latest == MORNING.replace(hour=15, minute=30)
    assert (due.ready_at, due.late) == (MORNING.replace(hour=14, minute=0), timedelta())


def test_begun_at_ten_past_four_it_is_ready_forty_minutes_after_the_round_begins() -> None:
    """Two hours from then: 18:10."""
    (due,) = starts_due(timed(), MORNING.replace(hour=16, minute=10))
    assert (due.ready_at, due.late) == (MORNING.replace(hour=18, minute=10), timedelta(minutes=40))


def test_what_is_put_to_soak_is_not_due_any_more() -> None:
    """The list is empty once it is written."""
    after = wrote(timed(), soak_started(hand(timed()), soak_start_of(timed(), LUCERNE), ""))
    assert starts_due(after, HALF_PAST_FIVE) == ()


def test_without_the_time_of_the_round_only_when_it_is_ready_is_known() -> None:
    """Nothing is made up of when it has to begin."""
    (due,) = starts_due(replace(timed(), farm=dawn().farm), MORNING)
    assert (due.feeds_at, due.earliest, due.latest, due.late) == (None, None, None, None)
    assert due.ready_at == MORNING + timedelta(hours=2)


def test_without_a_rule_nothing_is_known_of_when() -> None:
    """Neither water nor hours."""
    (due,) = starts_due(replace(timed(), soak_limits={}), MORNING)
    assert (due.earliest, due.latest, due.ready_at, due.late, due.water_kg) == (None, None, None, None, None)
    assert due.feeds_at == HALF_PAST_FIVE


def test_in_the_night_in_which_the_clocks_change_the_window_keeps_its_hours() -> None:
    """Morning round at 06:30 on the wall, 5 h at least: 00:30 winter time in Berlin, 01:30 before it by its hours."""
    farm = replace(dawn().farm, zone="Europe/Berlin", times=(("morning", "06:30"),))
    evening = replace(dawn().turn, day=dawn().turn.day.replace(month=3, day=28), slot="evening")
    found = replace(timed(5, 12), farm=farm, turn=evening)
    (due,) = starts_due(found, MORNING)
    assert due.feeds_at == MORNING.replace(day=29, hour=4, minute=30)
    assert due.latest == MORNING.replace(day=28, hour=23, minute=30)
    assert begun_at(due.step, due.feeds_at, MORNING.replace(day=28, hour=23, minute=30)).late == timedelta()
