"""Seen bulling, served, in calf, due: what is told back at once, and what is taken back."""

from collections.abc import Sequence
from datetime import UTC, date, datetime
from typing import Any

import pytest

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.words import SettingName
from store.herd.animal import DetailSheet
from store.herd.breeding import BreedingSheet
from store.herd.bulling import BullingSheet
from store.herd.sheet import Wrong, YardSheet
from store.herd.taking_back import as_before, still_in_force
from tests.farm import HandClock, hand, morning
from tests.store.herd.filled import animal, filled, register, write

SEEN = datetime(2026, 1, 14, 8, 30, tzinfo=UTC)
STOOD = "stood to be mounted"
OTHER = "other signs: restless, bawling, clear slime"


@pytest.fixture
def january(book: Book, clock: HandClock) -> Book:
    """The small farm on the morning of 14 January 2027: its past lies behind."""
    clock.at = SEEN.replace(year=2027)
    return book


def told(sheet: YardSheet, **typed: str) -> str:
    """What is said of it before it is written."""
    return sheet.told(filled(sheet, **typed).answers())


def says(book: Book, sheet: YardSheet, **typed: str) -> Sequence[str]:
    """What follows from it."""
    return sheet.says(filled(sheet, **typed).answers(), hand(book, morning(book)))


def breeding(book: Book, name: str) -> dict[str, Any]:
    """What is in force of her."""
    return dict(register(book).get("breeding", animal(book, name)) or {})


def test_seen_in_the_morning_she_is_served_in_the_evening(january: Book) -> None:
    sheet = BullingSheet(register(january), animal(january, "Fennel"))
    assert told(sheet, stood=STOOD) == "bulling, stood: serve this evening; next 31 Jan to 7 Feb"
    assert told(sheet, stood=OTHER).startswith("bulling, other signs: if she stands too, serve this evening")


@pytest.mark.parametrize(
    ("seen", "serve"),
    [("yesterday 18:00", "serve this morning"), ("yesterday 8:00", "the time to serve was yesterday evening"),
     ("5 Jan 8:00", "the time to serve was in the evening of 5 Jan")],
)  # fmt: skip
def test_a_time_that_has_been_is_told_by_its_day(january: Book, seen: str, serve: str) -> None:
    sheet = BullingSheet(register(january), animal(january, "Fennel"))
    assert f": {serve};" in told(sheet, seen=seen, stood=STOOD)


def test_in_the_afternoon_it_is_tomorrow_morning(january: Book, clock: HandClock) -> None:
    clock.move(hours=6)
    sheet = BullingSheet(register(january), animal(january, "Fennel"))
    assert told(sheet, stood=STOOD) == "bulling, stood: serve tomorrow morning; next 31 Jan to 7 Feb"


def test_nothing_is_written_until_it_is_said_by_what_sign(january: Book) -> None:
    sheet = BullingSheet(register(january), animal(january, "Fennel"))
    with pytest.raises(Wrong, match="«by what» needs an answer") as problem:
        filled(sheet).answers()
    assert problem.value.question == "stood"


def test_a_time_between_two_is_no_time_at_which_it_was_seen(january: Book) -> None:
    sheet = BullingSheet(register(january), animal(january, "Fennel"))
    with pytest.raises(Wrong, match="«2:30-5:50» is between two times"):
        filled(sheet, seen="2:30-5:50", stood=STOOD).answers()


def test_a_heat_that_is_taken_back_was_none_and_the_one_before_stays(january: Book, clock: HandClock) -> None:
    fennel = animal(january, "Fennel")
    write(january, BullingSheet(register(january), fennel), seen="yesterday 18:00", stood=STOOD)
    clock.move(minutes=1)
    known = register(january)
    rows = BullingSheet(known, fennel).rows(filled(BullingSheet(known, fennel), stood=STOOD).answers())
    january.change(rows)
    clock.move(minutes=1)
    back = tuple(as_before(known, rows))
    january.change(tuple(still_in_force(register(january), back)))
    clock.move(minutes=1)
    by_moment = {row["begins_at"]: row["seen"] for row in register(january).course("heat", fennel)}
    assert list(by_moment.values()) == [True, False]


def test_she_is_due_by_her_service_and_her_breed(january: Book, clock: HandClock) -> None:
    """Served that day; no breed is known, 283 days."""
    write(january, BreedingSheet(register(january), animal(january, "Fennel")), served_on="today")
    clock.move(minutes=1)
    assert breeding(january, "Fennel")["due_on"] is None
    sheet = BreedingSheet(register(january), animal(january, "Fennel"))
    assert sheet.title == "Fennel  served, in calf, due. By her service due 24 Oct 2027"
    assert says(january, sheet) == [
        "by her service 283 days (any breed): due 24 Oct, in 283 days; 95 of 100 between 14 Oct and 3 Nov",
        "if it did not hold, she is bulling again 31 Jan to 7 Feb",
    ]
    assert says(january, sheet, in_calf="yes")[1:] == [
        "dry off 25 Aug 2027, 60 days before", "fed for calving from 3 Oct 2027, 21 days before",
    ]  # fmt: skip
    write(january, sheet, in_calf="yes")
    assert breeding(january, "Fennel")["due_on"] == date(2027, 10, 24)


def test_the_farms_own_day_counts_and_the_breed_count(january: Book, clock: HandClock) -> None:
    counts = {SettingName.DRY_DAYS: "50", SettingName.CLOSE_UP_DAYS: "14"}
    january.change([RowDraft("setting", {"name": name, "value": value}) for name, value in counts.items()])
    write(january, DetailSheet(register(january), animal(january, "Fennel")), breed="Jersey")
    clock.move(minutes=1)
    said = says(january, BreedingSheet(register(january), animal(january, "Fennel")), served_on="today", in_calf="yes")
    assert said[0].startswith("by her service 280 days (Jersey): due 21 Oct")
    assert said[1:] == ["dry off 1 Sep 2027, 50 days before", "fed for calving from 7 Oct 2027, 14 days before"]


def test_the_day_that_is_typed_wins_and_how_far_it_is_off_is_said(january: Book) -> None:
    sheet = BreedingSheet(register(january), animal(january, "Fennel"))
    typed = {"served_on": "today", "in_calf": "yes", "due_on": "20 Oct 2027"}
    assert "the day that stands here is 4 days before that" in says(january, sheet, **typed)
    write(january, sheet, **typed)
    assert breeding(january, "Fennel")["due_on"] == date(2027, 10, 20)


@pytest.mark.parametrize(
    ("typed", "question", "words"),
    [({"in_calf": "yes"}, "due_on", "When she was served is not known"),
     ({"due_on": "20 Oct"}, "in_calf", "A day due is typed, and that she is not in calf"),
     ({"served_on": "tomorrow"}, "served_on", "15 Jan 2027 is still to come")],
)  # fmt: skip
def test_what_does_not_agree_is_said(january: Book, typed: dict[str, str], question: str, words: str) -> None:
    sheet = BreedingSheet(register(january), animal(january, "Fennel"))
    with pytest.raises(Wrong, match=words) as problem:
        sheet.rows(filled(sheet, **typed).answers())
    assert problem.value.question == question


def test_bulling_although_in_calf_is_said(january: Book, clock: HandClock) -> None:
    fennel = animal(january, "Fennel")
    write(january, BreedingSheet(register(january), fennel), in_calf="yes", due_on="20 Oct")
    clock.move(minutes=1)
    said = says(january, BullingSheet(register(january), fennel), stood=STOOD)
    assert said == ["She is down as in calf, due 20 Oct 2027: have that looked at before she is served"]


def test_not_in_calf_after_all_takes_the_day_away(january: Book, clock: HandClock) -> None:
    fennel = animal(january, "Fennel")
    write(january, BreedingSheet(register(january), fennel), in_calf="yes", due_on="20 Oct")
    clock.move(minutes=1)
    write(january, BreedingSheet(register(january), fennel), in_calf="no")
    assert breeding(january, "Fennel")["due_on"] is None


def test_near_the_day_it_is_said_how_many_have_calved(january: Book) -> None:
    sheet = BreedingSheet(register(january), animal(january, "Fennel"))
    for due, percent in (("14 Jan 2027", 50), ("10 Jan 2027", 79), ("24 Jan 2027", 2)):
        said = says(january, sheet, in_calf="yes", due_on=due)
        assert said[0] == f"by now {percent} of 100 cows have calved"
    assert says(january, sheet, served_on="5 Apr 2026", in_calf="yes")[0].startswith(
        "by her service 283 days (any breed): due 13 Jan, 1 day ago"
    )
