"""A change of the farm, written through the walker: the round follows it, and nothing is written twice."""

import pytest

from store.book.drafts import Subject
from store.book.errors import DamagedBook
from store.book.opening import Book
from store.book.reading import read_facts
from store.book.words import EVENING, MORNING, Kind
from store.herd.animal import AnimalSheet
from store.herd.settings import SettingsSheet
from tests.farm import HandClock
from tests.store.herd.filled import animal, filled, register
from tests.tui.keys import Sitting
from tui.farm.sheet_form import SheetForm
from tui.rooms import House
from tui.walker import Walker

NOTES = f"SELECT day, slot FROM entry WHERE kind = '{Kind.NOTE}' ORDER BY written_at DESC, id DESC"


@pytest.fixture
def walker(book: Book) -> Walker:
    """On the pretend morning."""
    return Walker(book, read_facts(book.desk, book.clock.now()))


def new_tag(walker: Walker) -> str | None:
    """Sloe gets another tag."""
    sheet = AnimalSheet(register(walker.book), animal(walker.book, "Sloe"))
    return walker.change(sheet.rows(filled(sheet, tag="RED 7").answers()), sheet.subject(), "tag")


def gone(*_: object) -> None:
    """The book can be written and not be read."""
    raise DamagedBook("The book cannot be read from the server.")


def test_another_hour_of_the_evening_counts_at_once(walker: Walker, clock: HandClock) -> None:
    """Also where a past round is open."""
    clock.move(hours=7)
    assert walker.this().slot == EVENING
    for typed, slot, live in (("15", MORNING, True), ("12", EVENING, True), ("15", MORNING, False)):
        walker.open_turn(walker.this() if live else walker.this().before(), live=live)
        sheet = SettingsSheet(register(walker.book))
        walker.change(sheet.rows(filled(sheet, evening_from=typed).answers()), Subject(), "settings")
        assert walker.this().slot == slot
        clock.move(minutes=1)


def test_a_change_that_is_written_and_cannot_be_read_again_is_said_so_and_the_form_is_left(
    walker: Walker, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Else a second Enter would write it a second time."""
    sitting = Sitting(House(walker)).begin()
    book = walker.book
    assert sitting.place is not None
    back = sitting.place
    sitting.place = SheetForm(back, AnimalSheet(register(book), animal(book, "Sloe")))  # type: ignore[arg-type]
    sitting.press("down", "down", "down", "RED 7", "pagedown")
    rows = len(book.desk.rows("SELECT id FROM animal_as", {}))
    monkeypatch.setattr(walker, "look", gone)
    sitting.press("enter")
    assert sitting.place is back
    assert sitting.said.startswith("It is written. The book cannot be read from the server.")
    assert len(book.desk.rows("SELECT id FROM animal_as", {})) == rows + 1


def test_a_time_that_was_set_is_for_one_entry_also_where_that_is_a_change(walker: Walker) -> None:
    walker.set_time(walker.book.clock.now())
    assert new_tag(walker) is None
    assert walker.set_at is None


def test_a_change_made_while_a_past_round_is_open_is_told_in_the_round_of_this_moment(walker: Walker) -> None:
    this = walker.this()
    walker.open_turn(this.before(), live=False)
    new_tag(walker)
    assert walker.book.desk.rows(NOTES, {})[0] == (this.day.isoformat(), this.slot)
