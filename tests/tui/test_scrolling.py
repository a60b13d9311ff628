"""A page that is longer than the window: every line of it can be reached, and the screen says so."""

import re
from collections.abc import Callable

import pytest

from store.round.summary import summarise
from tests.tui.keys import Sitting
from tui.page import Line, Role, Span, line
from tui.scroll import Scroll
from tui.telling import step_words

SIZES = ((80, 24), (60, 18), (40, 12))
LONG = (1000, 1000)
"""A window in which nothing has to be left off."""
MOST_PRESSES = 300

PLACES: dict[str, Callable[[Sitting], Sitting]] = {
    "closing at once": lambda s: s.press("left", *["right"] * 18),
    "closing": lambda s: (
        s.press("enter", "2", "enter", "enter", "s", "5", "enter", "7.2", "enter", "enter", "s", "1", "enter")
        .to_step("Sloe", "feed").press("l", "2", "enter", *["right"] * 8)
    ),
    "vet": lambda s: s.to_step("Fennel", "milk").press("v"),
    "help": lambda s: s.to_step("Fennel", "feed").press("h"),
    "why": lambda s: s.to_step("Fennel", "feed").press("w"),
}  # fmt: skip


def body(sitting: Sitting, size: tuple[int, int]) -> list[str]:
    """What stands between the walk and what was written last; without the line that says what is left off."""
    rows = sitting.text(*size).split("\n")[2:]
    end = next(at for at, row in enumerate(rows) if row.startswith(" WRITTEN"))
    return [row.replace(">", " ") for row in rows[:end] if row and not row.startswith("  lines ")]


def pressed(sitting: Sitting, key: str, size: tuple[int, int]) -> list[list[str]]:
    """What is seen of a page while one key is pressed until nothing changes any more."""
    seen = [body(sitting, size)]
    for _ in range(MOST_PRESSES):
        before = sitting.text(*size)
        if sitting.press(key).text(*size) == before:
            return seen
        seen.append(body(sitting, size))
    raise AssertionError(f"{key} comes to no end")


def whole(sitting: Sitting, width: int) -> list[str]:
    """Every line of a page, as a window of that width breaks them."""
    return body(sitting, (width, LONG[1]))


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("key", ["down", "pagedown"])
@pytest.mark.parametrize("name", PLACES)
def test_every_line_is_reached(sitting: Sitting, name: str, key: str, size: tuple[int, int]) -> None:
    PLACES[name](sitting)
    lines = whole(sitting, size[0])
    seen = {row for page in pressed(sitting, key, size) for row in page}
    assert set(lines) - seen == set()
    assert lines[-1] in body(sitting, size)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("way", [("down", "up"), ("pagedown", "pageup"), ("pagedown", "up"), ("down", "pageup")])
@pytest.mark.parametrize("name", PLACES)
def test_the_way_back_comes_to_the_first_line(
    sitting: Sitting, name: str, way: tuple[str, str], size: tuple[int, int]
) -> None:
    PLACES[name](sitting)
    lines = whole(sitting, size[0])
    for key in way:
        pressed(sitting, key, size)
    assert lines[0] in body(sitting, size)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("key", ["down", "pagedown"])
@pytest.mark.parametrize("name", ["closing at once", "help"])
def test_one_press_never_jumps_over_a_line(sitting: Sitting, name: str, key: str, size: tuple[int, int]) -> None:
    PLACES[name](sitting)
    last = 0
    for _ in range(MOST_PRESSES):
        found = re.search(r"lines (\d+) to (\d+) of (\d+)", sitting.text(*size))
        assert found is not None
        assert int(found[1]) <= last + 1
        last = int(found[2])
        if last == int(found[3]):
            return
        sitting.press(key)
    raise AssertionError("never came to the last line")


def test_the_screen_says_which_lines_these_are_and_what_to_press(sitting: Sitting) -> None:
    PLACES["closing at once"](sitting)
    assert "lines 1 to 16 of 26, Down for more" in sitting.text()
    pressed(sitting, "down", (80, 24))
    assert "lines 11 to 26 of 26, Up for more" in sitting.text()
    sitting.press(*["up"] * 9)
    assert "lines 4 to 19 of 26, Up and Down for more" in sitting.text()


def test_in_a_large_window_nothing_is_said_and_no_line_moves(sitting: Sitting) -> None:
    PLACES["vet"](sitting)
    before = sitting.text(120, 40)
    assert "for more" not in before
    assert sitting.press("down", "pagedown", "up").text(120, 40) == before


def test_a_window_made_larger_lets_the_marks_of_the_closing_move_again(sitting: Sitting) -> None:
    PLACES["closing at once"](sitting)
    pressed(sitting, "pagedown", (40, 12))
    sitting.text(120, 40)
    sitting.press("down")
    marked = next(row for row in sitting.text(120, 40).split("\n") if ">" in row and "(" in row)
    assert "lucerne pellets (soaked, fit?)" in marked


@pytest.mark.parametrize("size", SIZES)
def test_the_marked_line_is_on_the_screen_wherever_it_is(sitting: Sitting, size: tuple[int, int]) -> None:
    PLACES["closing at once"](sitting)
    for step in summarise(sitting.walker.snapshot, sitting.walker.steps).not_recorded:
        rows = sitting.text(*size).split("\n")
        assert any(">" in row and step_words(sitting.walker, step)[:8] in row for row in rows[2:]), step.name
        sitting.press("down")


def test_enter_goes_to_the_step_that_is_marked_after_moving_on_to_the_end(sitting: Sitting) -> None:
    PLACES["closing at once"](sitting)
    sitting.press("down", "down")
    pressed(sitting, "pagedown", (80, 24))
    assert "COUNT" in sitting.press("enter").text()


def numbered(count: int, marked: int = -1) -> list[Line]:
    """Lines that say their number."""
    return [line(Span(f"{at}", Role.HERE if at == marked else Role.TEXT)) for at in range(1, count + 1)]


@pytest.mark.parametrize("room", [0, 1, 2, 3])
def test_a_window_of_few_rows_gets_no_more_than_these(room: int) -> None:
    assert len(Scroll().window(numbered(9), room)) == room


def test_a_body_that_fits_is_shown_as_it_is() -> None:
    assert Scroll().window(numbered(4), 4) == numbered(4)


def test_the_last_marked_line_is_shown_at_once() -> None:
    rows = Scroll().window(numbered(40, marked=40), 10)
    assert numbered(40, marked=40)[-1] in rows
    assert rows[-1] == line(Span("  lines 32 to 40 of 40, Up for more", Role.WARNING))
