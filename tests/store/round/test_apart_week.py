"""A week of one calf and its cow, worked by hand on paper: where Pipit was, how long, and since when Avens filled.

Pipit was born on 29 September and is shut away for 12 h from day 21 of its life on; the morning round begins at 06:30.
In the night to Sunday the clock goes back an hour, so that 12 h before 06:30 is 19:30 on Saturday's wall.

    what was written                               and why
    Mon 19 Oct  -                                  day 20: too young, it stays with her
    Tue 20      06:30 milked 2.0                   with the calf on her: says nothing
                18:30 shut away                    day 21: the first night apart
    Wed 21      06:30 milked 6.0, 06:45 let in     12 h: 0.500 kg/h
                18:20 left with her                nobody here at milking
    Thu 22      06:35 not milked: the calf had it
                18:30 shut away
    Fri 23      06:10 found with her               seen apart until 22:15: the latch was broken
                06:15 put back, 06:30 milked 1.4, 06:45 let in
                18:30 shut away
    Sat 24      06:30 milked 6.3, 06:45 let in     12 h: 0.525 kg/h
                19:40 shut away
    Sun 25      07:10 milked 6.2, 07:25 let in     11 h 30 on the wall, 12 h 30 that passed: 0.496 kg/h
                18:30 shut away
    Mon 26      06:30 milked 6.0, 06:45 let in     12 h: 0.500 kg/h
                12:00 weaned
    Tue 27      06:30 milked 9.0                   18 h 30 since the calf left her
    Wed 28      06:30 milked 11.0                  24 h since she was milked
"""

from collections.abc import Sequence
from datetime import date, datetime, timedelta
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec import Struct
from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.facts.calves import ApartRule, Parting, Share
from store.book.facts.milk import PastPail
from store.book.figures import PartedFigure
from store.book.snapshot import Snapshot
from store.book.turn import Turn, from_wall
from store.book.words import Apart, Kind
from store.round.confirm import unplanned
from store.round.emptied import CALF_HAD_IT, emptied_at
from store.round.timed import timed_pails
from store.round.tonight import is_first_night, not_tonight, shut_away_at
from store.round.where import where
from tests.farm import MORNING, morning, small_book
from tests.farm import hand as hand_at
from tests.store.round.made import animal_named, dawn, some_id

AVENS, PIPIT = some_id("Avens"), some_id("Pipit")
SHUT, LET, OUT, TOGETHER = Apart.SHUT_AWAY, Apart.LET_IN, Apart.GOT_OUT, Apart.TOGETHER


def at(day: int, wall: str) -> datetime:
    """A time on the farm's wall in October 2026."""
    hour, minute = map(int, wall.split(":"))
    return from_wall(datetime(2026, 10, day, hour, minute), "Europe/Dublin")  # noqa: DTZ001


PARTINGS = (
    Parting(SHUT, at(20, "18:30"), None, AVENS),
    Parting(LET, at(21, "06:45"), None, AVENS),
    Parting(TOGETHER, at(21, "18:20"), None, AVENS, "nobody here at milking"),
    Parting(SHUT, at(22, "18:30"), None, AVENS),
    Parting(OUT, at(23, "06:10"), at(22, "22:15"), AVENS),
    Parting(SHUT, at(23, "06:15"), None, AVENS),
    Parting(LET, at(23, "06:45"), None, AVENS),
    Parting(SHUT, at(23, "18:30"), None, AVENS),
    Parting(LET, at(24, "06:45"), None, AVENS),
    Parting(SHUT, at(24, "19:40"), None, AVENS),
    Parting(LET, at(25, "07:25"), None, AVENS),
    Parting(SHUT, at(25, "18:30"), None, AVENS),
    Parting(LET, at(26, "06:45"), None, AVENS),
)
PAILS = (
    PastPail(at(20, "06:30"), 2.0, held_back=False),
    PastPail(at(21, "06:30"), 6.0, held_back=False),
    PastPail(at(22, "06:35"), None, held_back=False, typed=CALF_HAD_IT),
    PastPail(at(23, "06:30"), 1.4, held_back=False),
    PastPail(at(24, "06:30"), 6.3, held_back=False),
    PastPail(at(25, "07:10"), 6.2, held_back=False),
    PastPail(at(26, "06:30"), 6.0, held_back=False),
    PastPail(at(27, "06:30"), 9.0, held_back=False),
    PastPail(at(28, "06:30"), 11.0, held_back=False),
)
RULE = ApartRule(12, 21)
SHARE = Share(AVENS, PIPIT, 13, PARTINGS[::-1], at(1, "12:00"), at(26, "12:00"), rule=RULE)


class Round(Struct, frozen=True, dict=True):
    """What the book says when a round begins: where the calf is and since when, and since when she fills."""

    begins: datetime
    state: Apart | None
    since: datetime | None
    fills_from: datetime | None
    filled_h: float | None = None


WEEK = (
    Round(at(19, "18:00"), None, None, None),
    Round(at(20, "06:30"), None, None, None),
    Round(at(20, "18:00"), None, None, None),
    Round(at(21, "06:30"), SHUT, at(20, "18:30"), at(20, "18:30"), 12.0),
    Round(at(21, "18:00"), LET, at(21, "06:45"), None),
    Round(at(22, "06:30"), TOGETHER, at(21, "18:20"), None),
    Round(at(22, "18:00"), TOGETHER, at(21, "18:20"), None),
    Round(at(22, "22:00"), SHUT, at(22, "18:30"), at(22, "18:30"), 3.5),
    Round(at(23, "06:05"), SHUT, at(22, "18:30"), None),  # it was out already, as was found five minutes later
    Round(at(23, "06:30"), SHUT, at(23, "06:15"), None),  # put back: how much it had taken, nobody knows
    Round(at(23, "18:00"), LET, at(23, "06:45"), None),
    Round(at(24, "06:30"), SHUT, at(23, "18:30"), at(23, "18:30"), 12.0),
    Round(at(24, "18:00"), LET, at(24, "06:45"), None),
    Round(at(25, "07:10"), SHUT, at(24, "19:40"), at(24, "19:40"), 12.5),
    Round(at(25, "18:00"), LET, at(25, "07:25"), None),
    Round(at(26, "06:30"), SHUT, at(25, "18:30"), at(25, "18:30"), 12.0),
    Round(at(26, "18:00"), LET, at(26, "06:45"), at(26, "12:00"), 6.0),  # weaned at noon
    Round(at(27, "06:30"), LET, at(26, "06:45"), at(26, "12:00"), 18.5),
    Round(at(28, "06:30"), LET, at(26, "06:45"), at(27, "06:30"), 24.0),
)


def before(moment: datetime) -> tuple[PastPail, ...]:
    """Her pails before a moment, newest first."""
    return tuple(pail for pail in reversed(PAILS) if pail.at < moment)


@pytest.mark.parametrize("row", WEEK, ids=lambda row: f"{row.begins:%a %H:%M}")
def test_each_round_finds_the_calf_and_the_udder_as_the_paper_has_them(row: Round) -> None:
    seen = where(SHARE, AVENS, row.begins)
    assert ((seen.state, seen.at) if seen else (None, None)) == (row.state, row.since)
    fills_from = emptied_at(AVENS, (SHARE,), before(row.begins), row.begins)
    assert fills_from == row.fills_from
    if fills_from:
        assert (row.begins - fills_from).total_seconds() / 3600 == row.filled_h


def test_each_pail_by_its_own_hours_as_the_paper_has_them() -> None:
    """Newest first; none where the hours are not known, and none of a milking that was not."""
    found = [pail.kg_h for pail in timed_pails(AVENS, (SHARE,), before(at(30, "06:30")))]
    by_hand = [11 / 24, 9 / 18.5, 0.5, 0.496, 0.525, None, None, 0.5, None]
    assert [None if each is None else round(each, 6) for each in found] == [
        None if each is None else round(each, 6) for each in by_hand
    ]


@pytest.mark.parametrize(
    ("day", "why", "shut_at"),
    [
        (19, "day 20 of its life, your rule begins on day 21", "18:30"),
        (20, "", "18:30"),
        (23, "", "18:30"),
        (24, "", "19:30"),
        (25, "", "18:30"),
    ],
)
def test_each_evening_asks_for_the_latch_at_the_hour_of_the_rule(day: int, why: str, shut_at: str) -> None:
    """Twelve hours that pass before 06:30."""
    evening = on(day)
    pipit = replace(animal_named(dawn(), "Rook"), born_on=date(2026, 9, 29))
    assert not_tonight(SHARE, pipit, evening.turn.day) == why
    assert shut_away_at(evening, SHARE) == at(day, shut_at)


def test_the_first_night_apart_is_the_first() -> None:
    """Tuesday's; from then on it is used to it."""
    first = [day for day in range(20, 26) if is_first_night(on(day), SHARE)]
    assert first == [20]


def on(day: int) -> Snapshot:
    """A yard on an evening of that October."""
    turn, farm = Turn(date(2026, 10, day), "evening"), dawn().farm
    return replace(dawn(), turn=turn, farm=replace(farm, times=(("morning", "06:30"), ("evening", "18:00"))))


@given(st.randoms(use_true_random=False), st.integers(0, 14 * 24))
def test_no_round_hangs_on_the_order_in_which_the_week_was_typed(chance: Random, hours: int) -> None:
    """Any hour of the two weeks around it: the same calf, the same udder."""
    moment = at(18, "00:30") + hours * (at(18, "01:30") - at(18, "00:30"))
    shuffled = list(PARTINGS)
    chance.shuffle(shuffled)
    typed_late = replace(SHARE, partings=tuple(shuffled))
    assert where(typed_late, AVENS, moment) == where(SHARE, AVENS, moment)
    pails = before(moment)
    assert emptied_at(AVENS, (typed_late,), pails, moment) == emptied_at(AVENS, (SHARE,), pails, moment)


TYPED = tuple(zip((SHUT, LET, TOGETHER, SHUT, OUT, SHUT), (40, 30, 20, 12, 2, 1.9), strict=True))
"""What happened, so many hours before the pretend morning."""


@settings(deadline=None, max_examples=6)
@given(st.permutations(TYPED))
def test_a_book_that_was_typed_in_any_order_says_the_same(order: Sequence[tuple[Apart, float]]) -> None:
    """Six things, each an entry of its own."""
    with TemporaryDirectory() as folder:
        book = small_book(Path(folder))
        rook, fennel = (animal_named(dawn(), name).id for name in ("Rook", "Fennel"))
        for state, hours in order:
            typed = replace(hand_at(book, morning(book)), now=MORNING - timedelta(hours=hours))
            book.append(unplanned(typed, Kind.APART, Subject(animal_id=rook), PartedFigure(fennel, state)))
        (share,) = morning(book).shares
        book.close()
    found = where(share, fennel)
    assert found is not None
    assert (found.state, found.at) == (SHUT, MORNING - timedelta(hours=1.9))
    assert emptied_at(fennel, (share,), ()) is None
    earlier = where(share, fennel, MORNING - timedelta(hours=15))
    assert earlier is not None
    assert (earlier.state, earlier.at) == (TOGETHER, MORNING - timedelta(hours=20))
