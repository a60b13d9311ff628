"""A keeper without a book: the door, her first farm by keys alone, and the first round of it."""

import shutil
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from store.book.opening import open_book
from store.book.reading import read_facts
from store.book.words import State
from store.round.steps import FeedStep
from tests.farm import FOLDER, HandClock, built
from tests.tui.keys import Keys, Sitting
from tui.doorway.doorway import DEMO, Doorway
from tui.rooms import House
from tui.walker import Walker

TO_END = ("pagedown", "enter")
"""The rest of a sheet as it stands there, and write it."""
PENS = ("enter", "Stall", *TO_END, "aCalf pen", *TO_END, "aOrchard", *TO_END, "escape")
ANIMALS = (
    "enter", "Fennel", "enter", "enter", "enter", "BLUE 12", *TO_END,
    "aHazel", *TO_END,
    "aRook", "enter", "7", "enter", "2", *TO_END,
    "aSloe", "enter", "h", "enter", "o", *TO_END,
    "aTansy", "enter", "d", "enter", "o", *TO_END, "escape",
)  # fmt: skip
FEEDS = (
    "enter", "dairy nuts", "enter", "16 mixed", *TO_END,
    "agrass hay", "enter", "grass mid", "enter", "y", *TO_END,
    "abarley", "enter", "barley", *TO_END,
    "amineral", "enter", "mineral", *TO_END, "escape",
)  # fmt: skip
MEASURES = (
    "enter", "2", "pagedown", "2.04", *TO_END,
    "a", "3", "enter", "flake", "enter", "5", "enter", "10.2", *TO_END,
    "a", "1", "pagedown", "1.5", *TO_END,
    "a", "4", "enter", "cup", "enter", "pagedown", "0.36", *TO_END, "escape",
)  # fmt: skip
PLANS = (
    "enter",
    "enter", "3", "enter", "enter", "2", "enter", "2", *TO_END, "escape",  # the stall: hay
    "3", "enter", "3", "enter", "enter", "1 1/2", "enter", "2", *TO_END, "escape",  # the orchard: hay
    "4", "enter", "2", "enter", "enter", "2 1/2", "enter", "2", *TO_END, "escape",  # Fennel: nuts
    "5", "enter", "2", "enter", "enter", "2", "enter", "1 1/2", *TO_END, "escape",  # Hazel: nuts
    "7", "enter", "1", "enter", "enter", "1", *TO_END, "escape", "escape",  # Sloe: barley
)  # fmt: skip
MILKING = (
    "6", "enter", "steel pail", "enter", "1.4", *TO_END, "escape",
    "2", "enter", "1", "enter", "3", "enter", "y", "enter", "enter", "enter", "2", *TO_END, "escape", "escape",
)  # fmt: skip


SET_UP_MOST = 340
"""For three pens, five animals, four feeds, four weighings, five plans, a pail, a milking. Names are half of it."""


@pytest.fixture
def door(tmp_path: Path, clock: HandClock) -> Keys:
    """The door of somebody who has no book."""
    return Keys(Doorway(tmp_path / "new" / "farm.penwalk", clock))


@pytest.fixture
def farm(door: Keys, clock: HandClock) -> Iterator[Sitting]:
    """A farm book just begun, at the first place of its first sitting."""
    doorway = door.place
    assert isinstance(doorway, Doorway)
    door.press("s", "Hollow Farm", "enter", "Ann", *TO_END)
    with closing(open_book(str(doorway.chosen), clock)) as book:
        sitting = Sitting(House(Walker(book, read_facts(book.desk, clock.now()))))
        sitting.presses = door.presses
        yield sitting.begin()


def test_the_door_says_four_ways_in(door: Keys) -> None:
    assert [row.split()[0] for row in door.text().splitlines() if row.startswith("    ") and row[4].isalpha()] == list(
        "DSIO"
    )


def test_the_demo_is_chosen_by_one_key(door: Keys) -> None:
    doorway = door.place
    door.press("d")
    assert door.place is None
    assert isinstance(doorway, Doorway)
    assert doorway.chosen == DEMO


def test_a_farm_without_anything_says_what_comes_first(farm: Sitting) -> None:
    assert "MY FARM  Hollow Farm. Next: PENS" in farm.text()


def test_three_pens_five_animals_and_four_feeds_are_set_up_by_keys_alone_and_walked(farm: Sitting) -> None:
    """Ten minutes at the bench: every key counted."""
    for chapter, following in (
        (PENS, "Next: ANIMALS"), (ANIMALS, "Next: FEEDS"), (FEEDS, "Next: SCOOPS"), (MEASURES, "Next: WHO GETS WHAT"),
        (PLANS, "A round can be walked"), (MILKING, "A round can be walked"),
    ):  # fmt: skip
        farm.press(*chapter)
        assert following in farm.text(120, 40)
    set_up = farm.presses
    farm.press("escape")
    kinds = [(step.name, step.kind.value) for step in farm.walker.steps]
    assert {("Stall", "hay"), ("Fennel", "feed"), ("Fennel", "milk"), ("Rook", "apart"), ("Sloe", "feed")} <= set(kinds)
    assert due_kg(farm, "Stall") == pytest.approx(2 * 2 * 2.04)
    assert due_kg(farm, "Fennel") == pytest.approx(2.5 * 0.68)
    walk_it(farm)
    assert State.OPEN not in farm.states()
    assert set_up <= SET_UP_MOST
    assert farm.presses - set_up <= 2 * len(farm.walker.steps)


def due_kg(farm: Sitting, name: str) -> float:
    """What one pen or animal is to get."""
    step = next(step for step in farm.walker.steps if step.name == name and isinstance(step, FeedStep))
    return step.due[0].due_kg


def walk_it(farm: Sitting) -> None:
    """Every step as shown, with the figures that have to be typed."""
    for _ in range(len(farm.walker.steps)):
        index = farm.walker.first_open()
        if index is None:
            return
        farm.place = farm.house.lamp(index)
        step = farm.walker.steps[index]
        figure = {"count": str(len(getattr(step, "heads", ()))), "milk": "7.2", "udder": "2"}.get(step.kind.value)
        farm.press(*([figure] if figure else []), "enter")


def test_a_farm_folder_is_read_in_at_the_door(door: Keys) -> None:
    doorway = door.place
    door.press("i", str(FOLDER), "enter")
    assert door.place is None
    assert isinstance(doorway, Doorway)
    with closing(open_book(str(doorway.chosen), doorway.clock)) as book:
        assert read_facts(book.desk, doorway.clock.now()).name == "Tumblewick"


def test_a_folder_that_cannot_be_read_in_is_said_and_the_path_stays(door: Keys, tmp_path: Path) -> None:
    """All mistakes are listed; nothing is left where the book would be."""
    door.press("i", str(tmp_path / "nowhere"), "enter")
    assert "nowhere is no farm folder" in door.text(200)
    assert "nowhere_" in door.text(200)
    assert not (tmp_path / "new" / "farm.penwalk").exists()
    door.press("escape")
    assert isinstance(door.place, Doorway)


def test_a_copy_of_a_book_becomes_ones_own(door: Keys, tmp_path: Path) -> None:
    """The copy itself stays as it is."""
    copy = tmp_path / "stick.penwalk"
    shutil.copy(built(), copy)
    before = copy.read_bytes()
    doorway = door.place
    door.press("o", str(copy), "enter")
    assert isinstance(doorway, Doorway)
    assert doorway.chosen == str(tmp_path / "new" / "farm.penwalk")
    assert copy.read_bytes() == before
    assert [path.name for path in tmp_path.glob("stick*")] == ["stick.penwalk"]


def test_what_is_no_book_is_not_taken_over(door: Keys, tmp_path: Path) -> None:
    note = tmp_path / "note.penwalk"
    note.write_text("milk, eggs", encoding="utf-8")
    door.press("o", str(note), "enter")
    assert "is no book of Penwalk" in door.text(200)
    assert not (tmp_path / "new" / "farm.penwalk").exists()


def test_the_first_sheet_asks_again_where_a_name_is_missing(door: Keys) -> None:
    door.press("s", "pagedown")
    assert "«the farm is called» needs an answer" in door.said
    door.press("escape")
    assert isinstance(door.place, Doorway)


def test_a_town_finds_the_clock(door: Keys) -> None:
    door.press("s", "Hollow Farm", "enter", "Ann", "enter", "enter", "chicago", "enter")
    assert "America/Chicago" in door.text()


def test_a_book_that_cannot_be_made_is_said_and_what_was_typed_stays(tmp_path: Path, clock: HandClock) -> None:
    """A file lies where its folder should be."""
    (tmp_path / "new").write_text("Dear Ann")
    door = Keys(Doorway(tmp_path / "new" / "farm.penwalk", clock))
    door.press("s", "Hollow Farm", "enter", "Ann", *TO_END)
    assert door.said.startswith("No book was made: ")
    assert door.place is not None
    assert door.place.half_typed == "Ann"
    assert "Hollow Farm" in door.text()


@pytest.mark.parametrize("way", ["i", "o"])
def test_the_folder_of_somebody_unknown_is_said_at_the_door(door: Keys, way: str) -> None:
    door.press(way, "~zzqqx", "enter")
    assert "knows nobody of that name" in door.text(200)
    assert "~zzqqx_" in door.text(200)
