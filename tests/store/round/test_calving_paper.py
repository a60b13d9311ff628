"""Calvings by hand, as a keeper would write them on paper: what follows from each, and what is written again later."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.drafts import Draft, Subject
from store.book.facts.calves import Birth
from store.book.figures import MilkedFigure
from store.book.opening import Book
from store.book.reading.watches import open_watches
from store.book.snapshot import Snapshot
from store.book.turn import local
from store.book.words import Fate, Kind, Stage, State
from store.herd.birth import BirthSheet
from store.herd.moments import happened
from store.round.calving import CLEANSED, SUCKED, UP
from store.round.plan import plan
from store.round.tonight import IN_NO_NIGHT, left_in
from store.round.watch import watched
from store.round.withholding import withheld_of
from tests.farm import MORNING, HandClock, hand, morning, small_book
from tests.store.herd.filled import animal, filled, register

CALF = "calf of Tansy"


def calved(book: Book, when: str, **typed: str) -> Snapshot:
    """Tansy, the dry cow of the small farm, has calved; the round of the moment after it was written."""
    sheet = BirthSheet(register(book), animal(book, "Tansy"))
    answers = filled(sheet, when=when, **typed).answers()
    book.change(sheet.rows(answers), *sheet.entries(answers, hand(book, morning(book))))
    return morning(book)


def waiting(book: Book) -> dict[tuple[str, str], str]:
    """Whose and what is looked at again: by when, or between when and when, on the farm's own clock."""
    found = morning(book)
    zone = found.farm.zone

    def shown(at: datetime | None) -> str:
        return f"-{local(at, zone):%H:%M}" if at else ""

    return {
        (found.name_of(each.subject), each.words): f"{local(each.due_at, zone):%H:%M}{shown(each.due_until)}"
        for each in open_watches(book.desk, book.clock.now())
    }


PAPER = [
    # typed                                         has sucked   cleansing        she is up
    ("between 02:30 and 05:50",                     "06:30",     "14:30-17:50",   "06:50"),
    ("03:10",                                       "07:10",     "15:10",         "04:10"),
    ("22:00-02:30",                                 "02:00",     "10:00-14:30",   "03:30"),
    ("yesterday 22:00",                             "02:00",     "10:00",         "23:00"),
]  # fmt: skip
"""The calf has sucked 4 hours after the earlier moment; the cleansing has passed 12 hours after both."""


@pytest.mark.parametrize(("typed", "sucked", "cleansing", "up"), PAPER)
def test_what_follows_from_a_calving(book: Book, typed: str, sucked: str, cleansing: str, up: str) -> None:
    calved(book, typed)
    assert waiting(book) == {(CALF, SUCKED): sucked, ("Tansy", CLEANSED): cleansing, ("Tansy", UP): up}


CLOCK_CHANGES = [
    # the night              typed            has sucked (elapsed hours, whatever the clock was set to)
    ("2026-03-29T06:00",     "00:30-05:50",   "05:30",   "13:30-17:50"),
    ("2026-10-25T06:00",     "00:30-05:50",   "03:30",   "11:30-17:50"),
    ("2026-10-25T06:00",     "01:15-01:45",   "04:15",   "12:15-13:45"),
]  # fmt: skip


@pytest.mark.parametrize(("now", "typed", "sucked", "cleansing"), CLOCK_CHANGES)
def test_hours_are_hours_where_the_clock_changes(
    book: Book, clock: HandClock, now: str, typed: str, sucked: str, cleansing: str
) -> None:
    """In spring an hour is left out, so that four hours end an hour later on the wall; in autumn an hour earlier."""
    clock.at = datetime.fromisoformat(now).replace(tzinfo=UTC)
    calved(book, typed)
    found = waiting(book)
    assert (found[CALF, SUCKED], found["Tansy", CLEANSED]) == (sucked, cleansing)


def test_she_has_calved_and_the_calf_stands_with_her(book: Book) -> None:
    after = calved(book, "02:30-05:50")
    calf = next(each for each in after.animals if each.name == CALF)
    cow = next(each for each in after.animals if each.name == "Tansy")
    assert (cow.stage, cow.calved_on, calf.stage, calf.pen_id) == (
        Stage.IN_MILK,
        MORNING.date(),
        Stage.CALF,
        cow.pen_id,
    )
    birth = after.births[cow.id]
    assert birth == Birth(MORNING.replace(hour=2, minute=30), MORNING.replace(hour=5, minute=50), ((calf.id, True),))


def test_her_first_milking_is_the_first_of_eight_and_not_for_the_house(book: Book) -> None:
    after = calved(book, "02:30-05:50", milked="morning and evening")
    assert "milk" in {step.kind for step in plan(after) if step.name == "Tansy"}
    (withheld,) = withheld_of(after, animal(book, "Tansy"))
    assert (withheld.why, withheld.since) == ("colostrum, milking 1 of 8", MORNING.replace(hour=2, minute=30))


def test_of_twins_the_one_that_lives_is_looked_at(book: Book) -> None:
    after = calved(book, "03:10", second="dead", name="Wren", from_day="14")
    cow = animal(book, "Tansy")
    assert [alive for _, alive in after.births[cow].calves] == [True, False]
    assert [words for whose, words in waiting(book) if whose == "Wren"] == [SUCKED]
    shares = [share for share in after.shares if share.cow_id == cow]
    assert [(share.rule.from_day if share.rule else None) for share in shares] == [14]


def test_a_calf_of_a_milked_cow_shares_her_milk_and_is_shut_away_in_no_night_until_a_day_is_said(
    book: Book, clock: HandClock
) -> None:
    """Since when she fills hangs on it; at the morning milking it is with her."""
    calved(book, "03:10", milked="morning and evening")
    clock.move(hours=12)
    after = morning(book)
    (share,) = (each for each in after.shares if each.cow_id == animal(book, "Tansy"))
    assert share.calf_id == animal(book, CALF)
    assert "apart" not in {step.kind for step in plan(after) if step.name == CALF}
    clock.move(hours=12)
    assert "apart" not in {step.kind for step in plan(morning(book)) if step.name == CALF}
    assert left_in(morning(book), next(each for each in after.animals if each.name == "Tansy")) == IN_NO_NIGHT


def test_a_calf_of_a_cow_that_is_not_milked_is_no_matter_of_any_round(book: Book) -> None:
    after = calved(book, "03:10", milked="not yet")
    assert not [share for share in after.shares if share.cow_id == animal(book, "Tansy")]


def test_two_without_a_name_can_be_told_apart(book: Book) -> None:
    calved(book, "03:10", second="alive")
    assert {whose for whose, words in waiting(book) if words == SUCKED} == {CALF, f"{CALF} 2"}


@pytest.mark.parametrize("what", ["dead", "lost, or none found"])
def test_where_nothing_lives_the_cow_is_looked_at_all_the_same(book: Book, what: str) -> None:
    before = len(morning(book).animals)
    after = calved(book, "03:10", first=what, from_day="14")
    assert set(waiting(book)) == {("Tansy", CLEANSED), ("Tansy", UP)}
    assert len(after.animals) == before
    assert not [share for share in after.shares if share.cow_id == animal(book, "Tansy")]
    assert after.births[animal(book, "Tansy")].calves == ((None, False),)


def test_just_calved_she_is_looked_at_in_every_round_until_the_fourth_day(book: Book, clock: HandClock) -> None:
    calved(book, "03:10")
    asked = []
    for _ in range(12):
        clock.move(hours=12)
        asked.append(any(step.kind == "look" and step.name == "Tansy" for step in plan(morning(book))))
    assert asked == [True] * 9 + [False] * 3


def test_of_a_calving_that_is_long_over_nothing_is_looked_at(book: Book) -> None:
    calved(book, "5 Mar")
    assert waiting(book) == {}


THINGS = ("calving", "milking", "look")


@settings(deadline=None, max_examples=12, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(order=st.permutations(THINGS), at=st.sampled_from(("02:30-05:50", "03:10", "yesterday 22:00")))
def test_the_order_of_typing_does_not_matter(
    tmp_path_factory: pytest.TempPathFactory, order: list[str], at: str
) -> None:
    """Whichever is typed first, what the book knows of the calving, her milk and her looks is the same."""
    clock = HandClock()
    book = small_book(tmp_path_factory.mktemp("order"), clock)
    for name in order:
        _write(book, name, at)
        clock.at += timedelta(microseconds=1000)
    clock.at = MORNING.replace(hour=18)
    found = morning(book)
    cow = animal(book, "Tansy")
    withheld = [(each.why, each.since) for each in withheld_of(found, cow)]
    expected = happened(at, MORNING, found.farm.zone)
    assert found.births[cow].earliest == expected.earliest
    assert withheld == [("colostrum, milking 2 of 8", expected.earliest)]
    assert (CALF, SUCKED) in waiting(book)
    assert ("Sloe", "left hind foot") in waiting(book)
    book.close()


def _write(book: Book, name: str, at: str) -> None:
    """One of the three, at one moment of typing: when it happened is the same whenever it is typed."""
    found = morning(book)
    cow = animal(book, "Tansy")
    write = replace(hand(book, found), now=MORNING.replace(hour=6, minute=30))
    if name == "calving":
        calved(book, at, milked="morning and evening")
    elif name == "look":
        book.append(watched(write, Subject(animal_id=animal(book, "Sloe")), "left hind foot", MORNING.replace(hour=20)))
    else:
        subject, figure = Subject(animal_id=cow), MilkedFigure(4.0, fate=Fate.CALVES)
        step_id = found.turn.step_id(found.farm.id, Kind.MILK, cow)
        draft = Draft(step_id, Kind.MILK, subject, found.turn, State.DONE, write.now, write.person_id, None)
        book.append(replace(draft, figures=(figure,)))
