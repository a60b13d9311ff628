"""Limits of a feed and rules by class, as screens, from the lists of my farm."""

from collections.abc import Callable

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.drafts import RowDraft, Subject
from store.book.words import SettingName
from tests.tui.keys import Sitting
from tests.tui.lines import line


def limits(at: Sitting) -> Sitting:
    """The limits of the feed of a step."""
    return line(at.to_step("lucerne pellets", "soak").press("f"), "its limits")


def rules(at: Sitting) -> Sitting:
    """The rules by class, behind who gets what."""
    return line(at.to_step("Hazel", "feed").press("f", "escape", "5", "enter"), "rules by class")


SCREENS: dict[str, Callable[[Sitting], Sitting]] = {
    "limits": lambda s: limits(s).press("down", "2 l", "enter"),
    "limits, at their end": lambda s: limits(s).press("2", "down", "2", "down", "4", "pagedown"),
    "a first rule": lambda s: rules(s).press("down", "down", "0.25 a gallon", "enter"),
    "a rule, at its end": lambda s: rules(s).press("down", "down", "0.25 per kg milk over 5 kg", "pagedown"),
    "rules": lambda s: rules(s).press("down", "down", "0.25 per kg milk over 5 kg", "pagedown", "enter"),
    "settings of rations": lambda s: s.to_step("Hazel", "feed").press("f", "escape", "9", "enter", *["down"] * 23),
}


@pytest.mark.parametrize("name", SCREENS)
def test_the_screen_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert SCREENS[name](sitting).text() == screen


def test_an_american_rule_is_in_pounds_and_american_words(sitting: Sitting) -> None:
    for name, value in ((SettingName.DIALECT, "american"), (SettingName.UNITS, "us")):
        sitting.walker.change([RowDraft("setting", {"name": name, "value": value})], Subject(), "words")
    rules(sitting).press("5", "down", "down", "0.25 per lb milk over 10 lb", "pagedown")
    assert "beef cow with calf, dairy nuts a day: 0.25 per lb milk over 10.00 lb" in sitting.text(120, 36)
