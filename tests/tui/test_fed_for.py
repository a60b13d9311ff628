"""What an animal is fed for, seen bulling, served, tested, as screens: from her step by keys, and taken back."""

from collections.abc import Callable

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.drafts import RowDraft, Subject
from store.book.register import read_register
from store.book.words import SettingName
from tests.tui.keys import Sitting
from tests.tui.lines import line


def sheet(at: Sitting, words: str) -> Sitting:
    """The sheet behind the line that begins so, of Hazel."""
    return line(at.to_step("Hazel", "feed").press("f"), words)


SCREENS: dict[str, Callable[[Sitting], Sitting]] = {
    "an animal": lambda s: s.to_step("Hazel", "feed").press("f"),
    "fed for": lambda s: sheet(s, "what she is fed for").press("6 of 10", "enter"),
    "fed for, at its end": lambda s: sheet(s, "what she is fed for").press(
        "3 1/4", "down", "down", "down", "y", "pagedown"
    ),
    "bulling": lambda s: sheet(s, "bulling").press("enter", "pagedown"),
    "bulling, at its end": lambda s: sheet(s, "bulling").press("down", "1", "pagedown"),
    "served": lambda s: sheet(s, "served").press("yesterday", "enter", "y", "pagedown"),
    "weighed, and it can hardly be hers": lambda s: sheet(s, "weight or").press("1350", "pagedown"),
    "taped": lambda s: sheet(s, "weight or").press("down", "182", "pagedown"),
    "tested": lambda s: sheet(s, "her milk was tested").press("4.6", "enter", "3.5", "pagedown"),
}


def american(at: Sitting) -> Sitting:
    """The same farm in American words and pounds."""
    for name, value in ((SettingName.DIALECT, "american"), (SettingName.UNITS, "us")):
        at.walker.change([RowDraft("setting", {"name": name, "value": value})], Subject(), "words")
    return at


@pytest.mark.parametrize("name", SCREENS)
def test_the_screen_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert SCREENS[name](sitting).text() == screen


def test_an_american_cow_is_in_heat(sitting: Sitting) -> None:
    page = sheet(american(sitting), "in heat").press("down", "1", "pagedown").text()
    assert "in heat, stood: serve this evening" in page
    assert "bulling" not in page.lower()


def test_an_american_goal_is_in_pounds(sitting: Sitting) -> None:
    page = sheet(american(sitting), "what she is fed for").press("down", "1.8", "pagedown").text()
    assert "a gain of 1.80 lb a day" in page


def test_a_goal_is_taken_back_by_u(sitting: Sitting) -> None:
    sheet(sitting, "what she is fed for").press("3", "pagedown", "enter", "u", "enter")
    register = read_register(sitting.walker.book.desk, sitting.walker.book.clock.now())
    (goal,) = register.all("feeding_goal")
    assert goal["condition"] is None
