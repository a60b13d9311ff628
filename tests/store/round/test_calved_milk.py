"""The milk of a cow that has calved: after a dry-cow tube, and colostrum, which is for calves and not for the house."""

from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.calves import Birth
from store.book.facts.care import Treatment, Withdrawal
from store.book.facts.span import Span, span
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import Fate
from store.round.measured import fates_of
from store.round.pails import Pailful, mixed
from store.round.withholding import calving_of, withheld_of
from tests.store.round.made import dawn, some_id, with_animal
from tests.store.round.named import milk_of
from tests.store.round.week import DOSES, HAZEL, TUBE, at, may_be_kept, one, pail, week

DRY = Treatment(
    some_id("dry"), HAZEL.id, "dry-cow tube", "four tubes", "udder", "", "", 1, 24.0, at(2, "10:00"),
    given=(span(at(2, "10:00")),), withdrawal=Withdrawal(dry_days=54, calved_h=96),
)  # fmt: skip


def calved(treatment: Treatment, birth: Birth | None, now: datetime, milkings: Sequence[datetime] = ()) -> Snapshot:
    """Hazel after a dry-cow tube on 2 March, calved or not; the farm's rule for colostrum is 0."""
    farm = replace(dawn().farm, milk_limits=replace(dawn().farm.milk_limits, colostrum_milkings=0))
    course = replace(
        week(now, treatment, treatment.given_at, milkings), farm=farm, births={HAZEL.id: birth} if birth else {}
    )
    return with_animal(course, replace(HAZEL, calved_on=birth.at.date() if birth else None))


def day_of(number: int) -> datetime:
    """So many days of 24 h after the tube."""
    return at(2, "10:00") + timedelta(days=number)


@pytest.mark.parametrize(
    ("calved_at", "first_milk"),
    [
        # too early, day 49 = Mon 20 Apr: 2 Mar 10:00 + 54 d = 25 Apr 10:00; + 96 h = 29 Apr 10:00
        (day_of(49), datetime(2026, 4, 29, 10, tzinfo=UTC)),
        # late enough, day 60 = 1 May 10:00; + 96 h = 5 May 10:00
        (day_of(60), datetime(2026, 5, 5, 10, tzinfo=UTC)),
    ],
)
def test_after_a_dry_cow_tube_the_later_of_calving_and_least_days_counts(
    calved_at: datetime, first_milk: datetime
) -> None:
    course = calved(DRY, Birth(None, calved_at), calved_at + timedelta(days=2))
    assert one(course).until == first_milk
    assert ("ask your vet" in one(course).why) is (calved_at == day_of(49))
    assert not may_be_kept(course, first_milk - timedelta(minutes=1))
    assert may_be_kept(course, first_milk)


def test_after_a_dry_cow_tube_nothing_is_kept_before_she_has_calved() -> None:
    found = one(calved(DRY, None, day_of(80)))
    assert (found.until, found.why.rsplit(", ", 2)[1:]) == (None, ["until she has calved", "and longer"])


@pytest.mark.parametrize("typed", [Withdrawal(dry_days=54), Withdrawal(calved_h=96)])
def test_a_dry_cow_tube_needs_both_of_its_figures(typed: Withdrawal) -> None:
    course = calved(replace(DRY, withdrawal=typed), Birth(None, day_of(60)), day_of(90))
    assert one(course).until is None
    assert "how long is not typed" in one(course).why


def test_a_dry_cow_tube_in_milkings_counts_them_from_calving_on() -> None:
    """Eight milkings after calving on day 60: day 60 at 18:00 is the first, twelve hours apart."""
    eight = replace(DRY, withdrawal=Withdrawal(dry_days=54, calved_milkings=8))
    every = [day_of(60) + timedelta(hours=8 + 12 * n) for n in range(9)]
    birth = Birth(None, day_of(60))
    assert one(calved(eight, birth, every[7], every)).why.endswith("7 of 8 milkings from calving")
    assert not may_be_kept(calved(eight, birth, every[7], every), every[7])
    assert may_be_kept(calved(eight, birth, every[8], every), every[8])


def fresh(now: datetime) -> Snapshot:
    """Hazel calved in the night to Tuesday 10 March, seen at six; nothing was given to her."""
    course = replace(week(now), treatments=(), births={HAZEL.id: Birth(at(9, "22:00"), at(10, "06:00"))})
    return with_animal(course, replace(HAZEL, calved_on=date(2026, 3, 10)))


@pytest.mark.parametrize(("day", "clock", "number"), [(10, "06:30", 1), (10, "17:50", 2), (13, "17:50", 8)])
def test_colostrum_is_counted_and_not_kept(day: int, clock: str, number: int) -> None:
    """Eight milkings: Tue, Wed, Thu, Fri, twice each. Calves may have it, the house may not."""
    found = one(fresh(at(day, clock)))
    assert found.why == f"colostrum, milking {number} of 8"
    fates = fates_of(milk_of(fresh(at(day, clock)), "Hazel"), span(at(day, clock)))
    assert fates == (Fate.CALVES, Fate.OTHER_ANIMALS, Fate.THROWN_AWAY)


def test_the_ninth_milking_after_calving_may_be_kept() -> None:
    assert may_be_kept(fresh(at(14, "06:30")), at(14, "06:30"))


def test_a_cow_milked_once_a_day_has_no_colostrum_after_as_many_days() -> None:
    """And one that calved long ago has none, however few of her milkings are in the book."""
    course = replace(fresh(at(18, "06:30")), pails={})
    assert may_be_kept(course, at(18, "06:30"))
    assert withheld_of(replace(course, turn=Turn(date(2026, 4, 20), "morning")), HAZEL.id) == ()


def test_a_treated_cow_just_calved_is_withheld_from_calves_too() -> None:
    course = replace(fresh(at(11, "06:30")), treatments=(replace(TUBE, given=tuple(map(span, DOSES[::-1]))),))
    assert fates_of(milk_of(course, "Hazel"), span(at(11, "06:30"))) == (Fate.THROWN_AWAY,)


def test_without_a_birth_in_the_book_the_day_she_calved_counts_from_its_midnight() -> None:
    found = calving_of(with_animal(dawn(), replace(HAZEL, calved_on=date(2026, 3, 10))), HAZEL.id)
    assert found
    assert (found.earliest, found.latest) == (at(10, "00:00"), at(11, "00:00"))


def test_colostrum_for_the_calves_counts_as_theirs_and_for_the_house_as_theirs_too() -> None:
    """It is not thrown away; nor does anybody drink it, whatever was written before the calving was."""
    found = one(fresh(at(11, "06:30")))
    for put in (Fate.CALVES, Fate.HOUSE):
        pailful = Pailful(some_id("pail"), HAZEL.id, span(at(11, "06:30")), 6.0, put, found)
        assert [each.use for each in mixed((pailful,))] == [Fate.CALVES]


def calved_between(now: datetime, *milked: Span) -> Snapshot:
    """Hazel calved on 10 March, some time from five in the morning to eight in the evening; colostrum: 8 milkings."""
    course = replace(week(now, milkings=()), treatments=(), births={HAZEL.id: Birth(at(10, "05:00"), at(10, "20:00"))})
    pails = tuple(replace(pail(each.latest), since=each.earliest) for each in milked)
    return with_animal(replace(course, pails={HAZEL.id: pails}), replace(HAZEL, calved_on=date(2026, 3, 10)))


def test_a_milking_that_may_have_been_before_the_calving_is_withheld_and_not_counted() -> None:
    """Half past six lies between; the next morning is surely behind it. So does a milking that began to be before."""
    morning = at(10, "06:30")
    assert one(calved_between(at(11, "06:30"), span(morning))).why == "colostrum, milking 1 of 8"
    assert one(calved_between(at(11, "17:50"), span(at(11, "06:30")), span(morning))).why == "colostrum, milking 2 of 8"
    doubtful = Span(at(10, "19:00"), at(10, "22:00"))
    assert one(calved_between(at(11, "06:30"), doubtful)).why == "colostrum, milking 1 of 8"
    assert not may_be_kept(calved_between(at(11, "06:30")), morning)


def test_colostrum_of_one_seldom_milked_is_over_so_many_days_after_the_latest_calving() -> None:
    """Eight days after Tuesday 20:00, and not after Tuesday 05:00."""
    assert not may_be_kept(calved_between(at(18, "17:50")), at(18, "17:50"))
    assert may_be_kept(calved_between(at(19, "06:30")), at(19, "06:30"))
