"""Midday and night rounds on the screen: found in the list of rounds, walked as others are, beside the feeding."""

from datetime import date

import pytest

from store.book.drafts import Subject
from store.book.opening import Book
from store.book.reading import read_facts
from store.book.records.care import Look, LookAs
from store.book.turn import Turn
from store.book.words import EVENING, MIDDAY, MORNING, NIGHT, Asks, Looks, State
from store.round.confirm import noted
from tests.farm import MORNING as SIX_31
from tests.farm import HandClock
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn, some_id
from tests.tui.keys import Sitting
from tui.rooms import House
from tui.walker import Walker

TODAY = date(2026, 3, 11)
ROUND = {slot: Turn(TODAY, slot) for slot in (MORNING, MIDDAY, EVENING, NIGHT)}


@pytest.fixture
def near(book: Book) -> Sitting:
    """The pretend morning with a cow close to calving: a look at midday, and one at ten in the evening."""
    tansy = animal_named(dawn(), "Tansy").id
    for slot in (MIDDAY, NIGHT):
        put(book.desk, Look, id=some_id(slot))
        put(book.desk, LookAs, look_id=some_id(slot), animal_id=tansy, name="bag and bones", asks=Asks.HOW, slot=slot)
    return Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))


def at(sitting: Sitting, hour: int, day: int = 11) -> Sitting:
    """A sitting begins at an hour."""
    clock = sitting.walker.book.clock
    assert isinstance(clock, HandClock)
    clock.at = SIX_31.replace(day=day, hour=hour)
    return sitting.begin()


def to_the_round(sitting: Sitting) -> Sitting:
    """What has to be read first is read."""
    while "LEFT FOR YOU" in sitting.text():
        sitting.press("enter")
    if "leave it so" in sitting.text():
        sitting.press("3", "enter")
        to_the_round(sitting)
    return sitting


def opened(sitting: Sitting, slot: str) -> Sitting:
    """Out of the list of rounds, as the keeper finds it."""
    sitting.press("r")
    rows = [
        row for row in sitting.text().splitlines() if f"{slot} round today" in row or f"Wed 11 Mar {slot}  (jobs" in row
    ]
    return sitting.press(rows[0].split()[0].strip("> "), "enter")


def rounds(sitting: Sitting) -> list[str]:
    """The list of rounds, each as it stands there."""
    rows = sitting.press("r").text().splitlines()
    return [row.strip(" >")[3:].strip() for row in rows if row.strip(" >")[:1].isdigit()]


def test_the_night_look_is_written_in_the_night_round_and_the_evening_stays_the_last_round(near: Sitting) -> None:
    to_the_round(at(near, 22))
    assert near.walker.turn == ROUND[EVENING]
    opened(near, NIGHT)
    assert (near.walker.turn, near.walker.live, len(near.walker.steps)) == (ROUND[NIGHT], True, 1)
    assert "NIGHT" in near.text()
    near.press("4", "enter")
    assert near.walker.steps[0].state is State.DONE
    near.press("e", "enter")
    assert near.walker.ended()
    assert at(near, 22).walker.turn == ROUND[EVENING]
    to_the_round(at(near, 6, day=12))
    assert near.walker.snapshot.last.turn == ROUND[EVENING]


def test_what_the_night_round_found_and_told_is_read_in_the_morning(near: Sitting) -> None:
    opened(to_the_round(at(near, 22)), NIGHT).press("4", "enter")
    near.walker.write(noted(near.walker.hand(), Subject(), "Put her in the stall at two", tell=True))
    near.press("e", "enter")
    text = at(near, 6, day=12).text()
    while "LEFT FOR YOU" not in text or "Wed 11 Mar night" not in text:
        text = near.press("enter").text() if "LEFT FOR YOU" in text else near.press("3", "enter").text()
    assert "LEFT FOR YOU by" in text
    assert "Put her in the stall at two" in text
    assert f"FOUND  Tansy: bag and bones: {Looks.WORSE}" in text
    assert "NOT RECORDED  Wed 11 Mar night" not in text


@pytest.mark.parametrize(("hour", "words"), [(13, "STILL TO DO"), (17, "NOT RECORDED")])
def test_a_midday_round_that_was_not_walked_is_told_and_not_asked_about(near: Sitting, hour: int, words: str) -> None:
    near.to_step("Water trough runs", "task").press("enter")
    near.place = near.house.closing()
    near.press("e", "enter")
    text = at(near, hour).text(120, 40)
    assert f"{words}  Wed 11 Mar midday: Tansy (look: bag and bones). R, then 3, opens that round" in text
    near.press("enter")
    assert near.walker.turn == ROUND[EVENING]
    assert "leave it so" not in near.text()
    near.press("r", "3", "enter")
    assert (near.walker.turn, near.walker.live) == (ROUND[MIDDAY], hour == 13)


def test_a_midday_round_that_was_begun_is_told_as_far_as_it_is_open(near: Sitting) -> None:
    near.to_step("Water trough runs", "task").press("enter")
    near.place = near.house.closing()
    near.press("e", "enter")
    to_the_round(at(near, 13))
    opened(near, MIDDAY)
    near.walker.write(noted(near.walker.hand(), Subject(), "Went back for the torch", tell=False))
    text = at(near, 17).text(120, 40)
    assert "LEFT FOR YOU by Wed 11 Mar morning, Wed 11 Mar midday" in text
    assert "NOT RECORDED  Wed 11 Mar midday: Tansy (look: bag and bones)" in text


def test_a_midday_round_that_was_ended_says_what_of_it_nobody_wrote(near: Sitting) -> None:
    near.to_step("Water trough runs", "task").press("enter")
    near.place = near.house.closing()
    near.press("e", "enter")
    opened(to_the_round(at(near, 13)), MIDDAY).press("e", "e", "enter")
    assert near.walker.ended()
    text = at(near, 17).text(120, 60)
    assert "NOT RECORDED  Tansy (bag and bones): nobody wrote it" in text
    assert "NOT RECORDED  Wed 11 Mar midday" not in text


def test_the_list_of_rounds_has_those_on_either_side_of_this_one(near: Sitting) -> None:
    assert rounds(to_the_round(at(near, 6)))[:5] == [
        "Wed 11 Mar morning  (now)", "midday round today  (jobs and looks, no feeding)",
        "Tue 10 Mar night  (jobs and looks, no feeding)", "Tue 10 Mar evening", "Tue 10 Mar morning",
    ]  # fmt: skip
    opened(to_the_round(at(near, 13)), MIDDAY).press("1", "enter")
    assert rounds(to_the_round(at(near, 6, day=13)))[4:8] == [
        "Thu 12 Mar morning", "Wed 11 Mar evening", "Wed 11 Mar midday  (jobs and looks, no feeding)",
        "Wed 11 Mar morning",
    ]  # fmt: skip


def test_a_farm_without_such_looks_sees_none_of_it(sitting: Sitting) -> None:
    assert [row for row in rounds(to_the_round(at(sitting, 6))) if "feeding" in row] == []
    assert "22:00" not in at(sitting, 17).press("e").text(120, 60)


def test_the_closing_says_that_it_comes_next(near: Sitting) -> None:
    to_the_round(at(near, 17)).press("e")
    assert "22:00  look at Tansy: bag and bones" in near.text(120, 60)
    to_the_round(at(near, 22))
    opened(near, NIGHT).press("4", "enter", "e")
    assert "look at Tansy" not in near.text(120, 60)


def test_a_night_round_typed_in_the_next_morning_keeps_its_own_hours(near: Sitting) -> None:
    to_the_round(at(near, 6, day=12))
    opened(near, NIGHT)
    assert not near.walker.live
    assert "PAST DEMO, PRETEND NIGHT  Wed 11 Mar" in near.text()
    near.press("1", "enter")
    assert f"{near.newest().happened_at:%d %H:%M}" == "11 22:00"


def test_the_program_left_open_in_a_midday_round_goes_on_to_the_evening(near: Sitting) -> None:
    opened(to_the_round(at(near, 13)), MIDDAY)
    clock = near.walker.book.clock
    assert isinstance(clock, HandClock)
    clock.at = SIX_31.replace(hour=15, minute=59)
    assert not near.walker.is_over()
    clock.at = SIX_31.replace(hour=16, minute=0)
    assert near.walker.is_over()
