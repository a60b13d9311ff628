"""Every screen of the round, as text at 80 x 24 and at other sizes."""

from collections.abc import Callable

import pytest
from rich.cells import cell_len
from syrupy.assertion import SnapshotAssertion

from tests.tui.keys import Sitting
from tui.page import Size

SCREENS: dict[str, Callable[[Sitting], Sitting]] = {
    "soak check": lambda s: s,
    "soak start": lambda s: s.to_step("lucerne pellets", "soak", 1),
    "count": lambda s: s.to_step("Stall", "count"),
    "a short count": lambda s: s.to_step("Stall", "count").press("1", "enter"),
    "hay of a pen": lambda s: s.to_step("Stall", "hay").press("down", "2"),
    "two feeds": lambda s: s.to_step("Fennel", "feed"),
    "an amount being typed": lambda s: s.to_step("Fennel", "feed").press("down", "3 1/2"),
    "an amount that cannot be read": lambda s: s.to_step("Fennel", "feed").press("3 bushels", "enter"),
    "a milking": lambda s: s.to_step("Fennel", "milk"),
    "a milking typed": lambda s: s.to_step("Fennel", "milk").press("7.2", "down"),
    "a milking written": lambda s: s.to_step("Fennel", "milk").press("7.2", "enter").to_step("Fennel", "milk"),
    "a milking after the calf got out": lambda s: s.to_step("Fennel", "milk").press("m", "1", "enter"),
    "let the calf in": lambda s: s.to_step("Rook", "apart"),
    "an udder": lambda s: s.to_step("Tansy", "udder").press("2"),
    "a task": lambda s: s.to_step("Feed room shut and chained", "task"),
    "reasons": lambda s: s.to_step("Hazel", "milk").press("s", "2"),
    "later": lambda s: s.to_step("Stall", "hay").press("l", "2"),
    "later, and never moved on": lambda s: s.to_step("Hazel", "milk").press("l"),
    "a quarter": lambda s: s.to_step("Hazel", "milk").press("m", "2", "enter", "3"),
    "what is wrong with it": lambda s: s.to_step("Hazel", "milk").press("m", "2", "enter", "3", "enter", "1"),
    "a quarter written": lambda s: s.to_step("Hazel", "milk").press("m2", "enter", "3", "enter", "1", "enter"),
    "more": lambda s: s.to_step("Fennel", "milk").press("m"),
    "why feed": lambda s: s.to_step("Hazel", "feed").press("w"),
    "why milk": lambda s: s.to_step("Hazel", "milk").press("w"),
    "buckets": lambda s: s.press("b", "3"),
    "a whole pen": lambda s: s.to_step("Orchard", "hay").press("a", "a"),
    "go to": lambda s: s.press("g", "haz", "down"),
    "note": lambda s: s.to_step("Sloe", "feed").press("n", "left hind foot", "down"),
    "persons": lambda s: s.press("p"),
    "time": lambda s: s.press("t", "6:10"),
    "vet": lambda s: s.to_step("Fennel", "milk").press("v"),
    "locked": lambda s: s.press("z", "qwerty"),
    "rounds": lambda s: s.press("r"),
    "a past round": lambda s: s.press("r", "2", "enter"),
    "undo": lambda s: s.press("enter", "2", "enter", "u"),
    "help": lambda s: s.to_step("Fennel", "feed").press("h"),
    "closing at once": lambda s: s.press("left", *["right"] * 18),
    "closing": lambda s: (
        s.press("enter", "2", "enter", "enter", "3", "enter", "7.2", "enter", "enter", "s", "5", "enter", "10", "enter")
        .to_step("Fennel", "feed").press("3 1/2", "enter")
        .to_step("Water trough runs", "task").press("l", "2", "enter", *["right"] * 8)
    ),
    "ending": lambda s: s.press("left", *["right"] * 18).press("e"),
    "ended": lambda s: s.press("left", *["right"] * 18).press("e", "enter"),
}  # fmt: skip
CARE: dict[str, Callable[[Sitting], Sitting]] = {
    "a look": lambda s: s.to_step("Sloe", "look", 0).press("2"),
    "a temperature": lambda s: s.to_step("Sloe", "look", 1).press("38.6"),
    "a score": lambda s: s.to_step("Tansy", "look"),
    "a score that no animal has": lambda s: s.to_step("Tansy", "look").press("25", "enter"),
    "a dose": lambda s: s.to_step("Sloe", "dose").press("1"),
    "a dose written": lambda s: s.to_step("Sloe", "dose").press("1", "enter").to_step("Sloe", "dose"),
    "left for you": lambda s: s.begin(),
}
"""On a morning with looks and a dose."""
SIZES = ((80, 24), (120, 36), (60, 18), (40, 12))


@pytest.mark.parametrize("name", SCREENS)
def test_the_screen_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert SCREENS[name](sitting).text() == screen


@pytest.mark.parametrize("name", CARE)
def test_the_screen_of_what_falls_due_is_as_kept(cared: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert CARE[name](cared).text() == screen


@pytest.mark.parametrize("name", CARE)
@pytest.mark.parametrize("size", SIZES)
def test_what_falls_due_keeps_its_name_and_its_key_on_every_size(
    cared: Sitting, name: str, size: tuple[int, int]
) -> None:
    text = CARE[name](cared).text(*size)
    assert {cell_len(line) for line in text.splitlines()} <= set(range(size[0] + 1))
    assert "Enter" in text
    assert "█" in text or name == "left for you"


@pytest.mark.parametrize("name", SCREENS)
@pytest.mark.parametrize("size", SIZES)
def test_every_screen_fills_its_size_exactly(sitting: Sitting, name: str, size: tuple[int, int]) -> None:
    place = SCREENS[name](sitting).place
    assert place is not None
    lines = place.draw(Size(*size)).lines
    assert len(lines) == size[1]
    assert {sum(cell_len(span.text) for span in line) for line in lines} == {size[0]}


@pytest.mark.parametrize("size", SIZES)
def test_name_amount_and_enter_stay_on_every_size(sitting: Sitting, size: tuple[int, int]) -> None:
    text = sitting.to_step("Hazel", "feed").text(*size)
    assert "DAIRY NUTS" in text
    assert "Enter" in text
    assert "█" in text


@pytest.mark.parametrize("name", SCREENS)
@pytest.mark.parametrize("size", [(0, 0), (1, 1), (3, 2), (80, 0), (0, 24)])
def test_no_window_is_too_small_to_be_drawn(sitting: Sitting, name: str, size: tuple[int, int]) -> None:
    """Keys that were typed while the program loads are taken before the window has a size."""
    place = SCREENS[name](sitting).place
    assert place is not None
    assert len(place.draw(Size(*size)).lines) == size[1]


@pytest.mark.parametrize("name", CARE)
@pytest.mark.parametrize("size", [(0, 0), (1, 1)])
def test_what_falls_due_is_drawn_in_no_window_too(cared: Sitting, name: str, size: tuple[int, int]) -> None:
    place = CARE[name](cared).place
    assert place is not None
    assert len(place.draw(Size(*size)).lines) == size[1]


def test_a_line_of_many_places_is_cut_with_one_sign(sitting: Sitting) -> None:
    for width in range(20, 80):
        assert "……" not in sitting.text(width)
