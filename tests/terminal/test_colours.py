"""Colour on the wire, and none where the keeper asks for none."""

import re

import pytest

from tests.terminal.terminal import Terminal
from tests.terminal.walking import DEMO, OTHER_KEY, PENWALK, demo, walk

_STYLE = re.compile(rb"\x1b\[([0-9;:]*)m")
COLOURS = {*range(30, 50), *range(90, 98), *range(100, 108)}
"""ECMA-48 (5th edition, 1991) 8.3.117: 30-37 and 39 set the ink, 40-47 and 49 the paper; 38 and 48 are ISO 8613-6;
90-97 and 100-107 are the bright colours of common terminals (from memory)."""


def colours_in(wire: bytes) -> set[int]:
    """Every colour code that went over the wire."""
    codes = {int(code) for style in _STYLE.findall(wire) for code in re.split(rb"[;:]", style) if code}
    return codes & COLOURS


def look_around(terminal: Terminal) -> None:
    """Some steps, every list, help, a refusal, and the closing with something not recorded."""
    walk(terminal, last=4)
    terminal.press("7.2")
    terminal.wait_for("kg milk")
    terminal.press("\rs")
    terminal.wait_for("why?")
    terminal.press("2")
    terminal.wait_for("> 2")
    terminal.press("\x7f\x7fu")  # the pick first, then the list
    terminal.wait_for("UNDO")
    terminal.press("\x7fh")
    terminal.wait_for("KEYS HERE")
    terminal.press("\x7f\r\r")
    terminal.wait_for("That Enter came too soon")
    terminal.press(OTHER_KEY + "\x1b[C" * 17)
    terminal.wait_for("NOT RECORDED")
    terminal.press("q")
    assert terminal.left() == 0


@pytest.mark.parametrize("term", ["xterm-256color", "xterm", "linux", "screen-256color"])
def test_with_no_color_no_colour_goes_over_the_wire(env: dict[str, str], term: str) -> None:
    with demo(env | {"NO_COLOR": "1", "TERM": term}) as terminal:
        look_around(terminal)
        assert colours_in(terminal.wire) == set()
        assert b"\x1b[1m" in terminal.wire, "bold stays"


@pytest.mark.parametrize("look", ["dark", "light"])
def test_with_no_color_no_colour_goes_over_the_wire_of_a_terminal_that_has_all_colours(
    env: dict[str, str], look: str
) -> None:
    plain = env | {"NO_COLOR": "1", "COLORTERM": "truecolor"}
    with Terminal([PENWALK, "--look", look, *DEMO], plain) as terminal:
        look_around(terminal)
        assert colours_in(terminal.wire) == set()


@pytest.mark.parametrize("look", ["dark", "light"])
def test_without_no_color_there_is_colour(env: dict[str, str], look: str) -> None:
    with Terminal([PENWALK, "--look", look, *DEMO], env) as terminal:
        look_around(terminal)
        assert {38, 48} <= colours_in(terminal.wire)


def test_an_empty_no_color_asks_for_nothing(env: dict[str, str]) -> None:
    """no-color.org: the variable counts "when present and not an empty string"."""
    with demo(env | {"NO_COLOR": ""}) as terminal:
        walk(terminal, last=1)
        assert colours_in(terminal.wire)
