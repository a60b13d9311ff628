"""A sheet that makes milk withheld for less long says so, asks, and keeps it in the note."""

import pytest

from store.book.figures import MilkedFigure, NotedFigure
from store.book.opening import Book
from store.book.reading import read_facts
from store.herd.treatment import TreatmentSheet
from store.herd.withheld import WithheldSheet
from tests.store.herd.filled import animal, register
from tests.tui.keys import Sitting
from tests.tui.test_withheld import dosed, order
from tui.farm.sheet_form import SheetForm
from tui.place import Place
from tui.rooms import House
from tui.walker import Walker


@pytest.fixture
def treated(book: Book) -> Sitting:
    """Hazel got the one dose of her tube, withheld 96 h and 6 milkings."""
    order(book)
    return dosed(Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True))))


def mending(book: Book, sitting: Sitting) -> Sitting:
    """At the sheet of her tube."""
    found = register(book)
    id_ = next(row["treatment_id"] for row in found.all("treatment_as") if row["product"] == "udder tube")
    return at_sheet(sitting, TreatmentSheet(found, animal(book, "Hazel"), id_))


def at_sheet(sitting: Sitting, sheet: TreatmentSheet | WithheldSheet) -> Sitting:
    """At a sheet, over where we were."""
    assert isinstance(sitting.place, Place)
    sitting.place = SheetForm(sitting.place, sheet)
    return sitting


def answer(sitting: Sitting, **typed: str) -> Sitting:
    """Some answers in place of what stood there, and to the last line."""
    form = sitting.place
    assert isinstance(form, SheetForm)
    form.filling.texts.update(typed)
    return sitting.press("pagedown")


def words(sitting: Sitting) -> str:
    """The page in one line."""
    return " ".join(sitting.text(100, 60).split())


def test_a_treatment_mended_to_nothing_says_what_it_frees_and_asks(treated: Sitting, book: Book) -> None:
    """96 h and 6 milkings typed to 0."""
    answer(mending(book, treated), milk_h="0", milkings="0")
    page = words(treated)
    assert "Hazel's milk: not withheld, was withheld until further notice (udder tube, last dose" in page
    assert "her milk could go to the house from Wed 11 Mar 06:31 on" in page
    assert "no step of the rounds to come" not in page
    written = treated.written()
    treated.press("enter")
    assert treated.written() == written
    assert "If that is right, type !, then Enter." in treated.said
    treated.press("!", "enter")
    (note,) = treated.newest().of(NotedFigure)
    assert "her milk could go to the house" in note.words


def test_a_shorter_time_by_hours_alone_says_both_ends(treated: Sitting, book: Book) -> None:
    answer(mending(book, treated), milkings="").press("enter")
    answer(mending(book, treated), milk_h="24")
    assert "Hazel's milk: withheld until Thu 12 Mar 06:20, was withheld until Sun 15 Mar 06:20" in words(treated)
    assert "from Thu 12 Mar" in words(treated)
    treated.press("enter")
    assert "type !" in treated.said


def test_a_longer_time_is_said_and_not_asked_about(treated: Sitting, book: Book) -> None:
    answer(mending(book, treated), milkings="").press("enter")
    answer(mending(book, treated), milk_h="120")
    assert "Hazel's milk: withheld until Mon 16 Mar 06:20, was withheld until Sun 15 Mar 06:20" in words(treated)
    treated.press("enter")
    assert "treatment mended" in treated.newest().of(NotedFigure)[0].words


def test_what_was_said_by_hand_is_ended_with_a_question(sitting: Sitting, book: Book) -> None:
    def sheet() -> WithheldSheet:
        return WithheldSheet(register(book), animal(book, "Hazel"))

    sitting.to_step("Hazel", "milk")
    answer(at_sheet(sitting, sheet()), why="waits for the vet")
    assert "Hazel's milk: withheld until further notice (waits for the vet), was not withheld" in words(sitting)
    sitting.press("enter")
    answer(at_sheet(sitting, sheet()), why="waits for the vet", ends="now")
    assert "Hazel's milk: not withheld, was withheld until further notice" in words(sitting)
    sitting.press("enter")
    assert "type !" in sitting.said
    sitting.press("!", "enter")
    sitting.to_step("Hazel", "milk").press("9.9", "enter")
    assert sitting.newest().of(MilkedFigure)
