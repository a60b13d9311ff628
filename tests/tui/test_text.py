"""Text from the book and from the keys is text: never markup, never an escape sequence, never wider than its place."""

import pytest
from msgspec.structs import replace
from rich.cells import cell_len

from store.round.plan import plan
from tests.tui.keys import Sitting
from tui.letters import large
from tui.page import Size, clean, cut

NAMES = [
    "Daisy [/]",
    "Bella [dry]",
    "[bold red]Mo[/]",
    "A name of exactly forty characters, long",
    "Süßmilch-Ångström",
    "דבורה",
    "\u202eFlora\u202c",
    "Red\x1b[31mcow\x07\n",
    "牛子",
    "&amp; <b>",
]


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("size", [(80, 24), (120, 36), (40, 12)])
def test_any_name_is_drawn_as_text_on_every_screen(sitting: Sitting, name: str, size: tuple[int, int]) -> None:
    snapshot = sitting.walker.snapshot
    animals = tuple(replace(animal, name=name, tag=name) for animal in snapshot.animals)
    pens = tuple(replace(pen, name=name) for pen in snapshot.pens)
    sitting.walker.snapshot = replace(snapshot, animals=animals, pens=pens)
    sitting.walker.steps = plan(sitting.walker.snapshot)
    places = [sitting.house.lamp(at) for at in range(len(sitting.walker.steps))]
    for place in [*places, sitting.house.closing(), sitting.house.skipping(2, places[2])]:
        page = place.draw(Size(*size))
        assert {sum(cell_len(span.text) for span in line) for line in page.lines} == {size[0]}
        assert "\x1b" not in page.text()
        assert "\x07" not in page.text()
        assert "\u202e" not in page.text()


@pytest.mark.parametrize("name", ["Daisy [/]", "[bold red]Mo[/]", "דבורה"])
def test_a_name_that_cannot_be_drawn_large_stands_in_plain_letters(sitting: Sitting, name: str) -> None:
    snapshot = sitting.walker.snapshot
    sitting.walker.snapshot = replace(snapshot, animals=tuple(replace(a, name=name) for a in snapshot.animals))
    sitting.walker.steps = plan(sitting.walker.snapshot)
    place = sitting.house.lamp(next(at for at, step in enumerate(sitting.walker.steps) if step.name == name))
    assert name in place.draw(Size(80, 24)).text()


def test_accents_are_left_off_large_letters_only() -> None:
    assert large("Änne") == large("ANNE")
    assert large("דבורה") is None


def test_clean_takes_control_and_direction_characters_away() -> None:
    assert clean("a\x1b[0m\u202eb\x00c") == "a [0m b c"


def test_cut_says_that_something_is_left_off_and_counts_wide_letters() -> None:
    assert cut("Fennel", 10) == "Fennel"
    assert cut("Fennel", 4) == "Fen…"
    assert cell_len(cut("牛牛牛牛", 5)) <= 5
    assert cut("Fennel", 0) == ""
