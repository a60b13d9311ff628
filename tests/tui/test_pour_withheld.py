"""Milk poured into a pail that is still to come or never came, and where what must be thrown away is said first."""

import pytest

from store.book.opening import Book
from store.round.summary import summarise
from tests.farm import HandClock
from tests.tui.keys import Sitting
from tests.tui.test_pails import treated

POUR = "5"
"""The line of Hazel's list behind M."""


@pytest.fixture
def before_fennel(sitting: Sitting, book: Book) -> Sitting:
    """Fennel's milk is withheld, she is not milked yet, and Hazel's pail is poured into hers."""
    treated(book, "Fennel")
    sitting.walker.look()
    sitting.to_step("Hazel", "milk").press("m", POUR, "enter", "1", "enter")
    assert "TOGETHER with Fennel" in sitting.text()
    return sitting.press("8.2!")


def test_what_is_poured_into_a_withheld_pail_to_come_is_thrown_away_on_the_card(before_fennel: Sitting) -> None:
    assert "Enter write to THROWN AWAY" in before_fennel.text()
    assert "Hazel 6.8 kg + Fennel 0.0 kg withheld: 6.8 kg thrown away" in " ".join(before_fennel.text().split())


def test_it_counts_so_before_the_withheld_cow_is_milked(before_fennel: Sitting) -> None:
    before_fennel.press("enter")
    summary = summarise(before_fennel.walker.snapshot, before_fennel.walker.steps)
    assert [(total.fate.value, total.cows) for total in summary.milk] == [("thrown away", ("Hazel",))]
    assert "COUNTS AS thrown away" in before_fennel.to_step("Hazel", "milk").press("v").text(100, 60)


def test_what_must_be_thrown_away_is_the_first_line_of_the_closing(sitting: Sitting, book: Book) -> None:
    sitting.to_step("Hazel", "milk").press("8.2!", "enter")
    treated(book, "Hazel")
    sitting.walker.look()
    facts = sitting.to_step("Hazel", "milk").press("v").text(100, 60)
    assert "milk 6.8 kg, house, COUNTS AS thrown away" in facts
    sitting.place = sitting.house.closing()
    lines = sitting.text(120, 60).splitlines()
    header = next(at for at, words in enumerate(lines) if "NOT RECORDED" in words)
    assert lines[header + 1].startswith(" THROW AWAY   Hazel 6.8 kg withheld, put to the house")


def test_a_cow_that_was_not_milked_has_nothing_to_pour_into(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("m", "4", "enter")
    sitting.to_step("Hazel", "milk").press("m", POUR, "enter", "1", "enter")
    assert "Fennel was not milked" in sitting.said


def test_a_mark_to_a_cow_that_is_not_milked_after_all_says_nothing_and_comes_off(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press("m", POUR, "enter", "1", "enter", "8.2!", "enter")
    sitting.to_step("Fennel", "milk").press("m", "4", "enter").to_step("Hazel", "milk")
    assert "poured into" not in sitting.text(120, 40)
    sitting.press("m", POUR, "enter", "1", "enter")
    assert "The mark is taken away" in sitting.said


def test_a_pail_written_again_the_same_is_no_change(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Hazel", "milk").press("8.2!", "enter")
    clock.move(minutes=5)
    sitting.to_step("Hazel", "milk").press("8.20!", "enter")
    sitting.place = sitting.house.closing()
    assert "first written as" not in sitting.text(120, 60)
    clock.move(minutes=5)
    sitting.to_step("Hazel", "milk").press("8.6!", "enter")
    sitting.place = sitting.house.closing()
    assert "Hazel: milk 7.2 kg, house, first written as milk 6.8 kg, house" in sitting.text(120, 60)
