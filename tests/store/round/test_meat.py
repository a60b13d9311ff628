"""Withheld meat: whole days from the last dose on, and what a calf takes that sucks a treated cow."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from msgspec.structs import replace

from store.book.facts.care import Treatment, Withdrawal
from store.book.facts.span import span
from store.book.snapshot import Snapshot
from store.round.meat import meat_until, meat_withheld_of, sucks_treated
from store.round.withdrawal import withdrawal_words
from tests.store.round.made import animal_named, dawn, some_id

AT = datetime(2026, 3, 10, 18, 20, tzinfo=UTC)
FENNEL, ROOK = (animal_named(dawn(), name).id for name in ("Fennel", "Rook"))
TUBE = Treatment(
    some_id("tube"), FENNEL, "udder tube", "one tube", "", "", "", 1, 12.0, AT, (span(AT),),
    withdrawal=Withdrawal(milk_h=24, meat_days=10),
)  # fmt: skip
LATER = AT + timedelta(hours=12)


def treated(**changed: Any) -> Snapshot:
    """The pretend morning after Fennel, who shares her milk with Rook, got a tube in the evening."""
    return replace(dawn(), treatments=(replace(TUBE, **changed),))


def test_ten_days_are_ten_times_24_hours_after_the_last_dose() -> None:
    """Tue 10 Mar 18:20 + 10 d = Fri 20 Mar 18:20, to the minute."""
    ends = datetime(2026, 3, 20, 18, 20, tzinfo=UTC)
    held = meat_until(treated(), FENNEL, ends - timedelta(minutes=1))
    assert held
    assert (held.until, held.why) == (ends, "udder tube, last dose Tue 10 Mar 18:20, 10 d")
    assert meat_until(treated(), FENNEL, ends) is None


def test_each_dose_starts_it_anew_and_one_to_come_keeps_it() -> None:
    two = treated(doses=2, given=(span(AT), span(AT - timedelta(hours=12))))
    assert [each.until for each in meat_withheld_of(two, FENNEL)] == [AT + timedelta(days=10)]
    three = treated(doses=3, given=(span(AT), span(AT - timedelta(hours=12))))
    assert [each.until for each in meat_withheld_of(three, FENNEL)] == [None]


@pytest.mark.parametrize("typed", [None, Withdrawal(milk_h=24)])
def test_how_long_is_not_guessed(typed: Withdrawal | None) -> None:
    held = meat_until(treated(withdrawal=typed), FENNEL, LATER + timedelta(days=300))
    assert held
    assert held.why.endswith("how long is not typed")


def test_a_label_that_says_nil_withholds_none() -> None:
    assert meat_withheld_of(treated(withdrawal=Withdrawal(meat_days=0)), FENNEL) == ()


def test_a_calf_that_sucks_a_treated_cow_is_the_vets_to_decide() -> None:
    """No end is reckoned for it."""
    held = meat_until(treated(), ROOK, LATER)
    assert held
    assert (held.until, held.why) == (None, "it sucks Fennel, who is treated: your vet decides how long")
    assert sucks_treated(treated(), FENNEL, LATER)
    assert sucks_treated(dawn(), FENNEL, LATER) is None
    assert meat_withheld_of(dawn(), ROOK) == ()


def test_a_calf_weaned_from_a_treated_cow_is_not_free_at_once() -> None:
    """As long as it would be if it sucked still; a cow treated only after it was weaned is nothing to it."""
    (share,) = dawn().shares
    weaned = replace(treated(), shares=(), shared_before=(replace(share, until=AT + timedelta(hours=12)),))
    assert [each.why for each in meat_withheld_of(weaned, ROOK)] == [
        "it sucked Fennel, who is treated: your vet decides how long"
    ]
    before = replace(weaned, shared_before=(replace(share, until=AT - timedelta(hours=1)),))
    assert meat_withheld_of(before, ROOK) == ()


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        (Withdrawal(milk_h=96, milkings=6, meat_days=10), "milk 96 h and 6 milkings, meat 10 d"),
        (None, "how long is not typed"),
        (Withdrawal(dry_days=54, calved_h=96, meat_days=0), "milk 96 h from calving on, 54 d dry at least, meat 0 d"),
    ],
)
def test_what_was_typed_is_said_at_the_dose(typed: Withdrawal | None, words: str) -> None:
    assert withdrawal_words(typed) == words
