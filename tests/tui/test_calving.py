"""A calving on the screen: from her step or F, when and what, what follows is seen before it is written; taken back."""

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.reading.watches import open_watches
from store.book.words import Stage
from store.herd.animal import AnimalSheet
from tests.farm import MORNING, HandClock
from tests.store.herd.filled import animal, register
from tests.tui.keys import Sitting
from tui.farm.listing import Listing
from tui.farm.sheet_form import SheetForm


def line_of(sitting: Sitting, words: str) -> str:
    """The digit of a line of a list."""
    row = next(row for row in sitting.text(100, 40).splitlines() if words in row)
    return row.split()[0 if row.split()[0] != ">" else 1]


@pytest.fixture
def sheet(sitting: Sitting) -> Sitting:
    """The sheet of Tansy, from a step of hers, as the keeper finds it."""
    sitting.to_step("Tansy", "udder").press("f")
    return sitting.press(line_of(sitting, "has calved"), "enter")


def watched(sitting: Sitting) -> list[str]:
    """What is to be looked at again."""
    return [watch.words for watch in open_watches(sitting.walker.book.desk, sitting.walker.book.clock.now())]


def stage(sitting: Sitting) -> Stage:
    """Tansy's class."""
    return next(each.stage for each in sitting.walker.snapshot.animals if each.name == "Tansy")


def test_a_calving_is_written_at_once_with_what_follows(sheet: Sitting) -> None:
    sheet.press("02:30-05:50", "pagedown")
    text = sheet.text(100, 40)
    for words in ("calf of Tansy: has sucked, by 06:30", "cleansing passed, 14:30-17:50", "for 8 milkings"):
        assert words in text
    sheet.press("enter")
    assert watched(sheet) == ["has sucked", "up, ears warm, all four quarters", "cleansing passed"]
    assert stage(sheet) is Stage.IN_MILK


def test_a_calving_is_taken_back_with_all_that_followed(sheet: Sitting) -> None:
    before = {animal.name for animal in sheet.walker.snapshot.animals}
    sheet.press("02:30-05:50", "pagedown", "enter", "u", "enter")
    assert watched(sheet) == []
    assert stage(sheet) is Stage.DRY
    assert {animal.name for animal in sheet.walker.snapshot.animals} == before
    assert sheet.walker.snapshot.births == {}


def test_without_a_time_nothing_is_written(sheet: Sitting) -> None:
    sheet.press("pagedown")
    assert "«when» needs an answer" in sheet.said
    sheet.press("some night", "enter")
    assert "is no time" in sheet.said
    assert stage(sheet) is Stage.DRY


def test_she_is_called_just_calved(sheet: Sitting) -> None:
    sheet.press("02:30-05:50", "pagedown", "enter")
    assert "just calved, day 0" in sheet.to_step("Tansy", "look").text()


def test_the_sheet_is_as_kept(sheet: Sitting, screen: SnapshotAssertion) -> None:
    assert sheet.text() == screen


def test_what_follows_is_as_kept(sheet: Sitting, screen: SnapshotAssertion) -> None:
    assert sheet.press("02:30-05:50", "pagedown").text() == screen


@pytest.fixture
def otherwise(sheet: Sitting, clock: HandClock) -> Sitting:
    """Written as between 02:30 and 05:50; then the neighbour says that it was at 03:10."""
    sheet.press("02:30-05:50", "pagedown", "enter")
    clock.move(minutes=10)
    sheet.to_step("Tansy", "look").press("f")
    return to_otherwise(sheet).press("03:10")


def to_otherwise(sitting: Sitting) -> Sitting:
    """To the line of her last calving."""
    assert isinstance(sitting.place, Listing)
    row = next(at for at, row in enumerate(sitting.place.choices()) if "her calving was otherwise" in row)
    return sitting.press(*["down"] * row, "enter")


def due(sitting: Sitting) -> list[str]:
    """When what is looked at again, on the wall."""
    found = open_watches(sitting.walker.book.desk, sitting.walker.book.clock.now())
    return [f"{watch.due_at:%H:%M}" for watch in found]


def test_a_calving_that_was_otherwise_is_written_again_and_taken_back(otherwise: Sitting) -> None:
    assert due(otherwise) == ["06:30", "06:50", "14:30"]
    otherwise.press("pagedown", "enter")
    assert due(otherwise) == ["04:10", "07:10", "15:10"]
    otherwise.press("u", "enter")
    assert due(otherwise) == ["06:30", "06:50", "14:30"]
    (birth,) = otherwise.walker.snapshot.births.values()
    assert (birth.since, birth.at) == (MORNING.replace(hour=2, minute=30), MORNING.replace(hour=5, minute=50))


def test_what_was_otherwise_is_as_kept(otherwise: Sitting, screen: SnapshotAssertion) -> None:
    assert otherwise.press("pagedown").text() == screen


def calf_sheet(sitting: Sitting) -> AnimalSheet:
    """Of the calf that has no name of its own."""
    book = sitting.walker.book
    return AnimalSheet(register(book), animal(book, "calf of Tansy"))


def names(sitting: Sitting) -> list[str]:
    """Who is here."""
    return sorted(animal.name for animal in sitting.walker.snapshot.animals)


def test_a_calf_that_was_named_meanwhile_goes_with_its_calving(sheet: Sitting, clock: HandClock) -> None:
    """The name is taken back first, then the calving: nothing of the calf stays, in no pen either."""
    before = names(sheet)
    sheet.press("02:30-05:50", "pagedown", "enter")
    clock.move(minutes=3)
    sheet.place = SheetForm(sheet.to_step("Tansy", "look").place, calf_sheet(sheet))  # type: ignore[arg-type]
    sheet.press(*["backspace"] * 20, "Wren", "pagedown", "enter", "f")
    assert "Wren" in names(sheet)
    clock.move(minutes=3)
    sheet.press("u", "enter")
    assert "calf of Tansy" in names(sheet)
    clock.move(minutes=3)
    sheet.press("u", "enter")
    assert names(sheet) == before


def test_a_calf_that_was_dead_and_lives_again_goes_with_its_calving(otherwise: Sitting) -> None:
    before = [name for name in names(otherwise) if name != "calf of Tansy"]
    otherwise.press("down", "2", "pagedown", "enter")
    assert names(otherwise) == before
    otherwise.press("u", "enter")
    assert "calf of Tansy" in names(otherwise)
    otherwise.press("u", "enter")
    assert names(otherwise) == before


def test_a_calf_that_died_is_told_by_what_differs_alone(sheet: Sitting, clock: HandClock) -> None:
    """The time stays as it was, and is not said."""
    sheet.press("02:30-05:50", "pagedown", "enter")
    clock.move(minutes=10)
    sheet.to_step("Tansy", "look").press("f")
    to_otherwise(sheet).press("down", "2", "pagedown")
    assert "\n      calf of Tansy was born dead\n" in sheet.text(100, 40)
    sheet.press("enter", "u")
    assert "1  calf of Tansy was born dead\n" in sheet.text(100, 40)


def test_a_calving_without_its_time_is_not_corrected(sitting: Sitting) -> None:
    """Fennel's is a day from before the book."""
    to_otherwise(sitting.to_step("Fennel", "feed").press("f"))
    assert "No calving of hers is written with its time" in sitting.said
