"""A pail is judged once it is typed; one far under her usual is asked about behind the writing."""

from syrupy.assertion import SnapshotAssertion

from store.book.drafts import RowDraft
from store.book.figures import DrawnFigure, MilkedFigure, NotedFigure
from store.book.opening import Book
from store.book.reading import read_facts
from store.book.words import Kind, SettingName
from tests.farm import HandClock
from tests.tui.keys import Sitting
from tui.rooms import House
from tui.telling import entry_words
from tui.walker import Walker

LOW = "5.6"
"""On the scale: 4.2 kg of milk, where about 5.6 are usual."""


def dropped(sitting: Sitting) -> Sitting:
    """Fennel's pail, far under her usual, is written."""
    return sitting.to_step("Fennel", "milk").press(LOW, "enter")


def test_before_she_is_milked_her_usual_is_there(sitting: Sitting) -> None:
    """By the hours, and of how many pails."""
    text = sitting.to_step("Fennel", "milk").text()
    assert "UDDER   12 h 29 since it was emptied; usual 4.9 to 6.4 kg, of 6 pails" in text
    assert "THIS IS" not in text


def test_once_it_is_typed_it_is_judged(sitting: Sitting) -> None:
    """An hour, a day, and against her own."""
    text = sitting.to_step("Fennel", "milk").press("7.2").text()
    assert "THIS IS 0.465 kg/h, 11.2 kg a day; 4 % over her usual 5.6 kg, of 6 pails" in text


def test_a_drop_is_written_first_and_then_asked_about(sitting: Sitting, screen: SnapshotAssertion) -> None:
    """With the figures, and the questions of the trade."""
    dropped(sitting)
    assert sitting.newest().the(MilkedFigure) is not None
    assert sitting.text() == screen


def test_what_it_was_is_one_note_on_her(sitting: Sitting) -> None:
    """Digits pick, a second press takes the pick away, Enter writes and goes on."""
    dropped(sitting).press("1", "3", "4", "4", "enter")
    entry = sitting.newest()
    assert (entry.kind, entry.the(NotedFigure)) == (Kind.NOTE, NotedFigure("milk 25 % under usual: water, hot weather"))
    assert sitting.said == "The note is written."
    assert "DROP" not in sitting.text()


def test_another_reason_is_typed_beside_the_others(sitting: Sitting) -> None:
    """In her own words."""
    dropped(sitting).press("2", "7", "enter", "dog in the yard", "enter")
    assert sitting.newest().the(NotedFigure) == NotedFigure("milk 25 % under usual: feed, dog in the yard")


def test_another_reason_without_words_is_not_written(sitting: Sitting) -> None:
    """It says so, and Esc goes back to the questions."""
    dropped(sitting).press("7", "enter", "enter")
    assert sitting.said == "Nothing is typed. Type the reason, or Esc goes back."
    assert "Usual questions" in sitting.press("escape").text()


def test_enter_with_nothing_picked_goes_on(sitting: Sitting) -> None:
    """No note."""
    dropped(sitting).press("enter")
    assert sitting.newest().kind is Kind.MILK
    assert "DROP" not in sitting.text()


def test_the_vet_page_is_about_her(sitting: Sitting) -> None:
    """And back to the questions."""
    dropped(sitting).press("v")
    assert "FENNEL" in sitting.text()
    assert "DROP" in sitting.press("enter").text()


def test_a_pail_that_she_held_back_is_no_drop(sitting: Sitting) -> None:
    """It is kept and not compared."""
    sitting.to_step("Fennel", "milk").press("m", "2", "enter", LOW)
    assert "THIS IS not compared: held back; 0.337 kg/h" in sitting.text()
    assert "DROP" not in sitting.press("enter").text()


def test_a_part_milking_by_hand_is_marked_in_the_same_entry(sitting: Sitting) -> None:
    """And it stays marked where the weight is corrected."""
    sitting.to_step("Fennel", "milk").press("m", "8", "enter", "m", "9", "enter", "3.4")
    assert "THIS IS not compared: not milked out" in sitting.text()
    sitting.press("enter")
    assert sitting.newest().the(DrawnFigure) == DrawnFigure(whole=False, by_hand=True)
    assert "2.0 kg, house, not milked out, by hand" in entry_words(sitting.walker, sitting.newest())
    sitting.to_step("Fennel", "milk").press("3.6", "enter")
    assert sitting.newest().the(DrawnFigure) == DrawnFigure(whole=False, by_hand=True)


def test_a_milking_as_usual_has_no_such_figure(sitting: Sitting) -> None:
    """Nothing is kept of what is as always."""
    sitting.to_step("Fennel", "milk").press("7.2", "enter")
    assert sitting.newest().the(DrawnFigure) is None


def test_the_vet_page_tells_her_last_pails_and_how_often_she_held_back(sitting: Sitting) -> None:
    """This round's among them."""
    sitting.to_step("Fennel", "milk").press("m", "2", "enter", LOW, "enter")
    text = " ".join(sitting.to_step("Fennel", "milk").press("v").text(120, 36).split())
    assert "MILK 4.2 kg in 12 h 2" in text
    assert "; held back 1 of 5" in text


def test_on_a_farm_of_pounds_everything_is_said_in_pounds(book: Book) -> None:
    """Before, behind, at the drop and looking back; an American cow is in heat."""
    book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": "us"})])
    sitting = Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))
    sitting.to_step("Fennel", "milk").press("12.5 lb")
    text = sitting.text()
    assert "usual 10.7 to 14.0 lb, of 6 pails" in text
    assert "THIS IS 0.754 lb/h, 18.1 lb a day; 23 % under her usual 12.3 lb, of 6 pails" in text
    text = sitting.press("enter").text()
    assert "9.4 lb is 23 % under her usual 12.3 for 12 h 29" in text
    assert "4  in heat" in text
    sitting.press("enter").to_step("Fennel", "milk").press("y")
    assert "lb/h" in sitting.text()
    assert "kg" not in sitting.text().split("FENNEL")[1].split("WRITTEN")[0]


def test_an_american_quarter_is_a_rear_one_in_every_list(book: Book, clock: HandClock) -> None:
    book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": "us"})])
    sitting = Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))
    sitting.to_step("Hazel", "milk").press("m", "2", "enter", "3", "2", "enter")
    sitting.place = sitting.house.closing()
    sitting.press("e", "enter")
    clock.move(hours=12)
    sitting.begin().place = sitting.house.closing()
    assert "Hazel (left rear, how is it now?)" in sitting.text(120, 60)
    assert "left hind" not in sitting.text(120, 60)
