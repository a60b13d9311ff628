"""A pail of which nobody knows the minute: it is withheld if it was at any moment between."""

from datetime import datetime

import pytest
from msgspec.structs import replace

from store.book.facts.milk import Withholding
from store.book.facts.span import Span
from store.book.snapshot import Snapshot
from store.book.words import Fate
from store.round.amount import Unreadable
from store.round.confirm import Hand
from store.round.measured import fates_of, milked
from store.round.pails import went, withheld_in
from store.round.plan import plan
from store.round.unsafe import unsafe_pails
from tests.store.round.made import hand, wrote
from tests.store.round.named import milk_of
from tests.store.round.week import DOSES, HAZEL, TUBE, at, may_be_kept, one, pail, week

EARLY, LATE = at(11, "05:00"), at(11, "09:00")
SEVEN, EIGHT = at(11, "07:00"), at(11, "08:00")


def withheld(since: datetime, until: datetime | None) -> Snapshot:
    """Wednesday morning, with Hazel's milk withheld from one moment to another."""
    return replace(week(LATE), treatments=(), withheld={HAZEL.id: (Withholding(since, until, "tube"),)})


def between(snapshot: Snapshot) -> Hand:
    """Milked some time from five to nine."""
    return replace(hand(snapshot), turn=snapshot.turn, now=LATE, happened_from=EARLY, time_set=True)


@pytest.mark.parametrize(
    ("since", "until", "free"),
    [
        (SEVEN, None, False),  # begins between
        (at(4, "05:00"), EIGHT, False),  # ends between
        (SEVEN, EIGHT, False),  # lies between
        (at(4, "05:00"), EARLY, True),
        (at(11, "09:01"), None, True),
    ],
)
def test_what_is_offered_is_what_counts(since: datetime, until: datetime | None, free: bool) -> None:
    """The same for a key, for the row that the card begins with, for the pail of this round and for one of before."""
    known, step = withheld(since, until), milk_of(withheld(since, until), "Hazel")
    assert (Fate.HOUSE in fates_of(step, Span(EARLY, LATE))) is free
    unknown = replace(known, withheld={})
    written = wrote(unknown, milked(between(unknown), milk_of(unknown, "Hazel"), "9.9", Fate.HOUSE))
    then = replace(written, withheld=known.withheld)
    (found,) = went(then.counts().values(), withheld_in(then, plan(then)))
    assert (found.use is Fate.HOUSE, found.unsafe) == (free, not free)
    past = replace(known, pails={HAZEL.id: (replace(pail(LATE, Fate.HOUSE), since=EARLY),)})
    assert (unsafe_pails(past) == ()) is free
    again = milk_of(then, "Hazel")
    assert again.entry
    assert (Fate.HOUSE in fates_of(again, again.entry.when)) is free
    if not free:
        with pytest.raises(Unreadable, match="withheld"):
            milked(replace(hand(then), now=at(11, "10:00")), again, "9.9", Fate.HOUSE)


def test_a_milking_that_may_have_been_before_the_last_dose_is_not_counted() -> None:
    """Of six after Tuesday 18:20 one was some time between 17:00 and 19:00."""
    pails = [replace(pail(at(10, "19:00")), since=at(10, "17:00"))]
    course = replace(week(at(11, "06:30"), TUBE, DOSES, ()), pails={HAZEL.id: tuple(pails)})
    assert one(course).why.endswith("0 of 6 milkings")
    assert not may_be_kept(course, at(11, "06:30"))
    sure = replace(course, pails={HAZEL.id: (replace(pails[0], since=at(10, "18:21")),)})
    assert one(sure).why.endswith("1 of 6 milkings")
