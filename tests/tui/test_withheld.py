"""A treated cow on the screen: two marks, until when none is kept, how short, and no other use to pick."""

from datetime import timedelta

import pytest

from store.book.clock import new_id
from store.book.figures import MilkedFigure, NotedFigure
from store.book.opening import Book
from store.book.reading import read_facts
from store.book.records.care import Treatment, TreatmentAs, Withdrawal
from store.book.words import Fate, SaidBy, Units
from tests.farm import MORNING, HandClock
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn
from tests.tui.keys import Sitting
from tests.tui.whys import comes_out
from tui.rooms import House
from tui.walk.lamp import Lamp
from tui.walker import Walker
from tui.why.amounts import shown

HAZEL = animal_named(dawn(), "Hazel").id


def order(book: Book) -> None:
    """Hazel is due one dose at 06:20 that the label gives 96 h."""
    tube = new_id(MORNING)
    put(book.desk, Treatment, id=tube)
    put(
        book.desk, TreatmentAs, treatment_id=tube, animal_id=HAZEL, product="udder tube", amount="one tube",
        doses=1, every_h=12, first_at=MORNING - timedelta(minutes=11),
    )  # fmt: skip
    put(book.desk, Withdrawal, treatment_id=tube, milk_h=96, milkings=6, meat_days=10, said_by=SaidBy.LABEL)


@pytest.fixture
def treated(book: Book) -> Sitting:
    """The pretend morning of 11 March, with Hazel's tube ordered."""
    order(book)
    return Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))


def dosed(treated: Sitting) -> Sitting:
    """The dose was given at 06:20."""
    return treated.to_step("Hazel", "dose").press("t", "6:20", "enter", "1", "enter").to_step("Hazel", "milk")


def test_the_milk_card_says_keep_none_until_when_and_why(treated: Sitting) -> None:
    """96 h after 06:20 is Sunday 06:20: the round of that morning, milked twice a day, is the first to keep."""
    page = dosed(treated).text()
    assert "!! MILK WITHHELD  MILK LAST" in page
    assert "KEEP NONE BEFORE Sun 15 Mar morning: udder tube, last dose Wed 11 Mar 06:20," in page
    assert "96 h, 0 of 6 milkings" in page
    assert "GOES TO > THROWN AWAY" in page


def test_no_other_use_can_be_picked(treated: Sitting) -> None:
    """Whatever Down says."""
    dosed(treated).press("9.9", "down", "down", "enter")
    (milk,) = treated.newest().of(MilkedFigure)
    assert milk.fate is Fate.THROWN_AWAY


def test_she_is_marked_at_her_other_steps_too(treated: Sitting) -> None:
    dosed(treated)
    assert "!! MILK WITHHELD  FEED" in treated.to_step("Hazel", "feed").text()
    assert "MILK WITHHELD" not in treated.to_step("Fennel", "feed").text()


def test_a_treatment_is_begun_at_her_milking_by_keys(sitting: Sitting) -> None:
    """M at her step, the sheet, the product alone: the dose is asked for, and what is missing is listed."""
    sitting.to_step("Hazel", "milk").press("m", "up", "enter", "udder tube", "pagedown", "enter")
    assert "treatment: udder tube, 1 dose" in sitting.walker.snapshot.entries[-1].of(NotedFigure)[0].words
    sitting.to_step("Hazel", "dose").press("e")
    page = " ".join(sitting.text(120, 60).split())
    assert "NOT TYPED Hazel, udder tube: amount, batch, where or how, for what, how long milk is" in page
    assert "how long meat is withheld" in page


def test_milk_of_a_cow_whose_dose_is_due_and_not_written_is_withheld(treated: Sitting) -> None:
    """Her milk step stands before her dose step."""
    page = treated.to_step("Hazel", "milk").text()
    assert "KEEP NONE until further notice: udder tube, dose 1 was due Wed 11 Mar 06:20" in page
    assert "GOES TO > THROWN AWAY" in page


def test_milk_let_through_is_said_when_the_next_round_begins(sitting: Sitting, book: Book, clock: HandClock) -> None:
    """House milk at 06:40 of a cow that got her tube at 06:20; treatment and dose are typed in only later."""
    clock.move(minutes=9)
    sitting.to_step("Hazel", "milk").press("9.9", "enter")
    clock.move(minutes=30)
    order(book)
    sitting.walker.look()
    sitting.to_step("Hazel", "dose").press("t", "6:20", "enter", "1", "enter")
    sitting.press("e", "e", "enter")
    clock.move(hours=12)
    page = sitting.begin().text(120, 60)
    assert "THROW AWAY  Hazel, Wed 11 Mar morning, 8.5 kg to the house: it was withheld, udder tube" in page


def test_a_calf_that_sucks_a_treated_cow_is_said_at_both_steps(book: Book) -> None:
    """At the milking, and where it is let in to her."""
    tube, at = new_id(MORNING), MORNING - timedelta(hours=12)
    fennel = animal_named(dawn(), "Fennel").id
    put(book.desk, Treatment, id=tube)
    put(
        book.desk, TreatmentAs, treatment_id=tube, animal_id=fennel, product="udder tube", doses=1, every_h=12,
        first_at=at, begins_at=at,
    )  # fmt: skip
    sitting = Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))
    for name, kind in (("Fennel", "milk"), ("Rook", "apart")):
        said = " ".join(sitting.to_step(name, kind).text(100, 40).split())
        assert "Rook sucks Fennel, who is treated: ask your vet. Its meat too: your vet decides." in said
    facts = " ".join(sitting.to_step("Fennel", "milk").press("v").text(100, 60).split())
    assert "milk withheld for now: udder tube, dose 1 was due Tue 10 Mar 18:31 and is not written" in facts
    assert "meat withheld for now: udder tube" in facts


def test_a_dose_due_in_ten_minutes_is_on_the_first_screen(book: Book, clock: HandClock) -> None:
    """Given at 06:20 and every 12 hours: opened at 18:10, the round says 18:20 before anything else."""
    tube = new_id(MORNING)
    put(book.desk, Treatment, id=tube)
    put(
        book.desk, TreatmentAs, treatment_id=tube, animal_id=HAZEL, product="udder tube", doses=3, every_h=12,
        first_at=MORNING,
    )  # fmt: skip
    sitting = Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))
    dosed(sitting).press("e", "e", "enter")
    clock.move(hours=11, minutes=39)
    assert "DUE  Hazel: udder tube, dose 2 of 3, at 18:20" in sitting.begin().text()


def test_why_counts_the_hours_from_the_last_dose(treated: Sitting) -> None:
    """96 h after Wednesday 06:20 is Sunday 06:20; until when six milkings are over is not known."""
    place = dosed(treated).place
    assert isinstance(place, Lamp)
    (kept,) = [value for value in place.numbers() if value.name == "none kept before, by the hours alone"]
    comes_out(kept)
    assert shown(kept, Units.METRIC, treated.walker.zone) == "Sun 15 Mar 06:20"
    assert [each.amount for each in kept.inputs.values()][-1] == 96
