"""Every screen of the round, as text at 80 x 24 and at other sizes."""

from collections.abc import Callable

import pytest
from rich.cells import cell_len
from syrupy.assertion import SnapshotAssertion

from tests.tui.keys import Sitting
from tui.page import Size

SCREENS: dict[str, Callable[[Sitting], Sitting]] = {
    "a task": lambda s: s,
    "a pen fed as one": lambda s: s.to_step("Stall", "feed"),
    "two feeds": lambda s: s.to_step("Fennel", "feed"),
    "an amount being typed": lambda s: s.to_step("Fennel", "feed").press("down", "3 1/2"),
    "an amount that cannot be read": lambda s: s.to_step("Fennel", "feed").press("3 bushels", "enter"),
    "a milking": lambda s: s.to_step("Fennel", "milk"),
    "a milking typed": lambda s: s.to_step("Fennel", "milk").press("7.2", "down"),
    "a milking written": lambda s: s.to_step("Fennel", "milk").press("7.2", "enter").to_step("Fennel", "milk"),
    "reasons": lambda s: s.to_step("Hazel", "milk").press("s", "2"),
    "undo": lambda s: s.press("enter", "enter", "u"),
    "help": lambda s: s.to_step("Fennel", "feed").press("h"),
    "closing at once": lambda s: s.press("left", *["right"] * 13),
    "closing": lambda s: (
        s.press("enter", "enter", "3", "enter", "7.2", "enter", "s", "5", "enter", "10", "enter")
        .to_step("Fennel", "feed").press("3 1/2", "enter").press(*["right"] * 12)
    ),
}  # fmt: skip
SIZES = ((80, 24), (120, 36), (60, 18), (40, 12))


@pytest.mark.parametrize("name", SCREENS)
def test_the_screen_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert SCREENS[name](sitting).text() == screen


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
