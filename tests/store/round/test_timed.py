"""Which of a cow's pails can be compared, and why one cannot."""

from datetime import datetime, timedelta

import pytest

from store.book.facts.calves import Parting, Share
from store.book.facts.milk import PastPail
from store.book.words import Apart
from store.round.timed import (
    GOT_OUT,
    HELD_BACK,
    LEFT_IN,
    NOT_KNOWN,
    NOT_MILKED,
    ON_PAPER,
    PART,
    TOO_LONG,
    TimedPail,
    rates_kg_h,
    timed_pails,
)
from tests.farm import MORNING
from tests.store.round.made import some_id

COW = some_id("cow")


def ago(days: float, hours: float = 0) -> datetime:
    """A moment so long before the pretend morning."""
    return MORNING - timedelta(days=days, hours=hours)


def pail(at: datetime, milk_kg: float | None = 6.0, *, held_back: bool = False, whole: bool = True) -> PastPail:
    """A milking."""
    return PastPail(at, milk_kg, held_back, whole=whole)


def share(*partings: Parting) -> Share:
    """What was written of her calf, newest first."""
    return Share(COW, some_id("calf"), 13, partings)


def newest(*pails: PastPail, shares: tuple[Share, ...] = ()) -> TimedPail:
    """The newest of her pails."""
    return next(timed_pails(COW, shares, pails))


def test_a_pail_has_the_hours_since_the_one_before() -> None:
    """6 kg in 12 h: half a kilogram an hour."""
    found = newest(pail(ago(0)), pail(ago(0, 12)))
    assert (found.elapsed_h, found.kg_h, found.why_not) == (12, 0.5, "")


@pytest.mark.parametrize(
    ("pails", "why"),
    [
        ((pail(ago(0), None), pail(ago(0, 12))), NOT_MILKED),
        ((PastPail(ago(0), None, held_back=False, on_paper=True), pail(ago(0, 12))), ON_PAPER),
        ((pail(ago(0), whole=False), pail(ago(0, 12))), PART),
        ((pail(ago(0), held_back=True), pail(ago(0, 12))), HELD_BACK),
        ((pail(ago(0)),), NOT_KNOWN),
        ((pail(ago(0)), pail(ago(1, 1))), TOO_LONG),
        ((pail(ago(0)), pail(ago(0, 12), whole=False)), LEFT_IN),
        ((pail(ago(0)), pail(ago(0, 12), held_back=True)), LEFT_IN),
        ((pail(ago(0)), pail(ago(0, 6), None), pail(ago(0, 12), whole=False)), LEFT_IN),
    ],
)
def test_a_pail_that_says_nothing_is_kept_with_the_reason(pails: tuple[PastPail, ...], why: str) -> None:
    """Stored, and out of the mean."""
    found = newest(*pails)
    assert found.why_not == why
    assert found.full_rate_kg_h is None


def test_behind_a_part_milking_the_hours_run_from_it() -> None:
    """Only the comparison is lost."""
    found = newest(pail(ago(0)), pail(ago(0, 12), whole=False), pail(ago(1)))
    assert found.elapsed_h == 12


def test_two_milkings_behind_a_part_milking_she_compares_again() -> None:
    """What was left came with the next one."""
    assert newest(pail(ago(0)), pail(ago(0, 12)), pail(ago(1), whole=False)).why_not == ""


def test_what_was_left_in_her_is_gone_where_a_calf_was_with_her_since() -> None:
    """It drank all day, and was shut away in the evening."""
    calf = share(Parting(Apart.SHUT_AWAY, ago(0, 11), None), Parting(Apart.LET_IN, ago(0, 23), None))
    found = newest(pail(ago(0)), pail(ago(1), held_back=True), shares=(calf,))
    assert (found.elapsed_h, found.why_not) == (11, "")


@pytest.mark.parametrize(
    "out",
    [
        Parting(Apart.GOT_OUT, ago(0, 1), ago(0, 11)),
        Parting(Apart.GOT_OUT, ago(0) + timedelta(hours=1), ago(0, 11)),
    ],
)
def test_a_calf_last_seen_apart_and_found_with_her_is_the_reason(out: Parting) -> None:
    """Before the milking, or only behind it: the pail is kept and no drop is seen in it."""
    calf = share(out, Parting(Apart.SHUT_AWAY, ago(0, 11), None))
    found = newest(pail(ago(0), 1.0), pail(ago(1)), shares=(calf,))
    assert found.why_not == GOT_OUT
    assert found.kg_h is None


def test_only_what_compares_is_in_the_rates_newest_first() -> None:
    """One of three."""
    pails = (pail(ago(0), 4.0, held_back=True), pail(ago(0, 8), 4.0), pail(ago(0, 16), 8.0))
    assert list(rates_kg_h(timed_pails(COW, (), pails))) == [0.5]
