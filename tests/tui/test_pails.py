"""Pails poured together: marked at the milk step, said on the card, in the words of the entry and at the closing."""

from datetime import timedelta

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.figures import CooledFigure, MilkedFigure, PouredFigure
from store.book.opening import Book
from store.book.records.yard import Withheld
from store.book.words import Fate, State
from tests.farm import MORNING, HandClock
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn
from tests.tui.keys import Sitting
from tui.page import Role, Size, large_lines
from tui.walk.title import scale_for

POUR = "5"
"""The line of Hazel's list behind M."""
SUM = "Fennel 5.0 kg withheld + Hazel 6.8 kg: 11.8 kg thrown away"


def treated(book: Book, name: str) -> None:
    """Her milk is withheld since the evening before."""
    cow_id, since = animal_named(dawn(), name).id, MORNING - timedelta(hours=12)
    put(book.desk, Withheld, animal_id=cow_id, begins_at=since, ends_at=None, why="udder tube")


@pytest.fixture
def both(sitting: Sitting, book: Book) -> Sitting:
    """Fennel's 5.0 kg are withheld and weighed; we stand at Hazel."""
    treated(book, "Fennel")
    sitting.walker.look()
    sitting.to_step("Fennel", "milk").press("6.4", "enter")
    return sitting.to_step("Hazel", "milk")


def test_the_card_says_what_all_of_it_counts_as_before_it_is_written(both: Sitting) -> None:
    both.press("m", POUR, "enter", "1", "enter")
    assert both.said == "Marked. Enter writes it, once the pail is typed."
    assert "TOGETHER with Fennel" in both.text()
    both.press("8.2")
    assert f"TOGETHER {SUM}" in both.text()
    assert "Enter write to THROWN AWAY" in both.text()


def test_a_clean_pail_poured_into_withheld_milk_is_thrown_away_and_keeps_its_yield(both: Sitting) -> None:
    """At the closing the cows stand in the order of the walk, in which Fennel, whose milk is withheld, is last."""
    both.press("m", POUR, "enter", "1", "enter", "8.2!", "enter")
    milked, poured = both.newest().the(MilkedFigure), both.newest().the(PouredFigure)
    assert milked
    assert milked.milk_kg == pytest.approx(6.8)
    assert milked.fate is Fate.HOUSE
    assert poured == PouredFigure(next(s.step_id for s in both.walker.steps if (s.name, s.kind) == ("Fennel", "milk")))
    both.place = both.house.closing()
    text = both.text(100, 36)
    assert "thrown away     11.8 kg   11.5 L  Hazel, Fennel" in text
    assert "POURED       Hazel 6.8 kg + Fennel 5.0 kg withheld: 11.8 kg thrown away" in text
    assert "house  " not in text
    assert "poured into Fennel's" in text


def test_a_pail_that_is_written_already_is_corrected_by_the_mark(both: Sitting) -> None:
    both.press("8.2!", "enter").to_step("Hazel", "milk").press("m", POUR, "enter", "1", "enter", "enter")
    assert both.newest().of(PouredFigure)
    assert both.newest().replaces_id is not None
    milked = both.newest().the(MilkedFigure)
    assert milked
    assert milked.typed == "8.2"


def test_the_mark_is_taken_away_as_it_was_set(both: Sitting) -> None:
    both.press("m", POUR, "enter", "1", "enter", "8.2!", "enter").to_step("Hazel", "milk").press("m", POUR, "enter")
    assert "marked: Enter takes it away" in both.text()
    both.press("1", "enter", "enter")
    assert both.newest().of(PouredFigure) == ()


def test_a_weight_that_is_corrected_stays_poured_together(both: Sitting) -> None:
    both.press("m", POUR, "enter", "1", "enter", "8.2!", "enter").to_step("Hazel", "milk").press("8.4!", "enter")
    assert both.newest().of(PouredFigure)


def test_undo_takes_the_pail_and_what_it_was_poured_into(both: Sitting) -> None:
    both.press("m", POUR, "enter", "1", "enter", "8.2!", "enter", "u", "enter")
    assert both.newest().state is State.OPEN
    both.place = both.house.closing()
    assert "POURED" not in both.text(100, 36)


def test_milk_put_to_the_house_before_it_was_known_is_said_at_the_closing(sitting: Sitting, book: Book) -> None:
    sitting.to_step("Fennel", "milk").press("6.4", "enter")
    treated(book, "Fennel")
    sitting.walker.look()
    sitting.place = sitting.house.closing()
    text = sitting.text(120, 40)
    assert "THROW AWAY   Fennel 5.0 kg withheld, put to the house: now known withheld since Tue 10 Mar 18:31" in text
    assert "thrown away      5.0 kg" in text


@pytest.fixture
def late(sitting: Sitting, clock: HandClock) -> Sitting:
    """Hazel's 6.8 kg to the house at 06:31, and an hour and a half go by."""
    sitting.to_step("Hazel", "milk").press("8.2!", "enter")
    clock.move(hours=1, minutes=30)
    return sitting.to_step("Milk", "cool")


def test_milk_into_ice_says_how_long_ago_the_first_pail_was(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Hazel", "milk").press("8.2!", "enter")
    clock.move(minutes=22)
    text = sitting.to_step("Milk", "cool").text()
    assert "since the first pail, 06:31; your limit 30 min" in text
    assert "local rules and your vet decide" in text.replace("\n  ", " ")
    sitting.press("enter")
    assert sitting.newest().the(CooledFigure) == CooledFigure(None)
    assert "Milk: in ice" in sitting.text()


def test_late_milk_is_asked_about_and_said_at_the_closing(late: Sitting) -> None:
    assert "LATE. What becomes of the milk for people?" in late.text()
    late.press("enter")
    assert late.said.startswith("It is late for milk. What becomes of it?")
    late.press("2")
    assert "> 2 to the calves" in late.text()
    late.press("enter")
    assert late.newest().the(CooledFigure) == CooledFigure(Fate.CALVES)
    late.place = late.house.closing()
    assert "IN ICE       08:01, 1 h 30 after the first pail: late, your limit 30 min; calves" in late.text(100, 36)
    assert "calves           6.8 kg" in late.text(100, 36)


@pytest.mark.parametrize("name", ["in time", "late"])
def test_the_screen_of_the_ice_is_as_kept(
    late: Sitting, clock: HandClock, screen: SnapshotAssertion, name: str
) -> None:
    if name == "in time":
        clock.move(minutes=-70)
    assert late.press(*(["2"] if name == "late" else [])).text() == screen


@pytest.mark.parametrize("size", [(80, 24), (120, 36), (60, 18), (40, 12)])
def test_the_question_keeps_the_time_and_its_key_on_every_size(late: Sitting, size: tuple[int, int]) -> None:
    text = late.press("2").text(*size)
    assert " Enter in ice now, to the calves" in text
    large = large_lines("1 h 30", Role.WARNING, size[0] - 4, scale_for(Size(*size)))
    assert all("".join(span.text for span in row).rstrip() in text for row in large)


def test_nothing_is_in_ice_before_the_first_pail(sitting: Sitting) -> None:
    sitting.to_step("Milk", "cool").press("enter")
    assert sitting.said.startswith("No pail for people is written yet")
    sitting.to_step("Hazel", "milk").press("8.2!", "enter").to_step("Milk", "cool").press("t", "6:20", "enter", "enter")
    assert sitting.said.startswith("That is before the first pail")
    assert sitting.written() == 1


def test_a_pail_corrected_to_after_the_ice_is_said_at_the_closing(late: Sitting, clock: HandClock) -> None:
    late.press("2", "enter").to_step("Hazel", "milk").press("t", "7:50", "enter", "enter")
    text = late.house.closing().draw(Size(120, 36)).text()
    assert (
        "IN ICE       08:01, 11 min after the first pail; written as LATE, calves: G to it, T and Enter write it"
        in text
    )
    late.to_step("Milk", "cool").press("t", "8:01", "enter", "enter")
    assert late.newest().the(CooledFigure) == CooledFigure(None)
    clock.move(minutes=10)
    late.to_step("Hazel", "milk").press("t", "8:05", "enter", "enter")
    assert "IN ICE       08:01, BEFORE the first pail, 08:05" in late.house.closing().draw(Size(120, 36)).text()


def test_a_set_time_alone_moves_the_ice_and_is_not_left_for_the_next_step(late: Sitting) -> None:
    late.press("2", "enter").to_step("Milk", "cool").press("t", "6:50", "enter")
    assert "Enter write it at 06:50" in late.text()
    late.press("enter")
    assert late.newest().the(CooledFigure) == CooledFigure(None)
    assert (late.newest().happened_at - MORNING).total_seconds() == 19 * 60
    assert late.walker.set_at is None
    late.to_step("Milk", "cool").press("t", "8:01", "enter", "enter")
    assert late.said.startswith("It is late for milk.")


def test_one_cow_alone_has_nobody_to_be_poured_together_with(sitting: Sitting) -> None:
    sitting.walker.steps = tuple(each for each in sitting.walker.steps if (each.name, each.kind) != ("Hazel", "milk"))
    sitting.to_step("Fennel", "milk").press("m")
    assert "Poured together" not in sitting.text()


def test_a_mark_that_is_taken_away_again_is_said_to_be_gone(both: Sitting) -> None:
    both.press("m", POUR, "enter", "1", "enter", "m", POUR, "enter", "1", "enter")
    assert both.said == "The mark is taken away: not poured together with Fennel's."
    assert "TOGETHER" not in both.text()
