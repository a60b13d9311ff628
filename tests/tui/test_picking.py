"""Lists that are picked from: by the number of a line, of one digit or of more, and by the marked line."""

import pytest

from tests.tui.keys import Sitting
from tui.farm.listing import Chapter, Entry, Listing
from tui.help import Help
from tui.walk.picking import Picking


@pytest.fixture
def long(sitting: Sitting) -> Sitting:
    """A list of twelve; each opens the help."""
    entries = [Entry(f"line {number}", lambda listing: Help(listing.rooms, listing)) for number in range(1, 13)]
    sitting.place = Listing(sitting.house, sitting.house.closing(), Chapter("TWELVE", lambda _: entries))
    return sitting


def row(sitting: Sitting) -> int | None:
    """The number of the marked line."""
    assert isinstance(sitting.place, Picking)
    return None if sitting.place.row is None else sitting.place.row + 1


@pytest.mark.parametrize(
    ("typed", "picks"), [("1", 1), ("10", 10), ("12", 12), ("13", 3), ("29", 9), ("112", 2), ("0", 1), ("20", 2)]
)
def test_a_second_digit_goes_on_with_the_number_while_there_is_a_line_of_it(
    long: Sitting, typed: str, picks: int
) -> None:
    assert row(long.press(typed)) == picks
    assert f"> {picks:>2}  line {picks}\n" in long.text()


def test_the_tenth_line_behind_m_opens_and_does_not_write_the_first(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("m")
    assert "10  Treatments of her" in sitting.text()
    sitting.press("10", "enter")
    assert sitting.written() == 0
    assert "TREATMENT OF Fennel" in sitting.text()


@pytest.mark.parametrize("key", ["backspace", "escape"])
def test_the_number_is_taken_away_before_the_list_is_left(long: Sitting, key: str) -> None:
    assert row(long.press("1", key)) is None
    assert long.press("enter").said.startswith("Nothing is picked yet.")
    assert row(long.press("2")) == 2
    assert "CLOSING" in long.press(key, key).text()


def test_after_an_arrow_or_enter_a_digit_begins_a_number_anew(long: Sitting) -> None:
    assert row(long.press("1", "down", "1")) == 1
    assert row(long.press("enter", "escape", "2")) == 2


def test_an_empty_list_says_so_and_opens_nothing(long: Sitting) -> None:
    long.place = Listing(long.house, long.house.closing(), Chapter("NONE", lambda _: []))
    assert long.press("1", "enter").said == "Nothing is added here."
