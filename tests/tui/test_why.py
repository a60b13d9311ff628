"""Why, by keys: from a place into a number, into what it is made of, and back up."""

from collections.abc import Callable, Iterator

import pytest
from syrupy.assertion import SnapshotAssertion

from store.round.steps import FeedStep
from tests.tui.keys import Sitting
from tests.tui.whys import comes_out
from tui.place import Place
from tui.why.amounts import shown
from tui.words import spelled

SIZES = ((80, 24), (60, 18), (120, 36))


def steps_of(sitting: Sitting) -> Iterator[Place]:
    """A place for each step of the round."""
    for index in range(len(sitting.walker.steps)):
        yield sitting.house.lamp(index)


def test_every_number_of_every_step_comes_out_of_what_its_why_lists(sitting: Sitting) -> None:
    numbers = [value for place in steps_of(sitting) for value in place.numbers()]
    assert len(numbers) > 10
    for value in numbers:
        comes_out(value)


def test_what_a_feed_step_says_is_what_its_why_reckons(sitting: Sitting) -> None:
    walker = sitting.walker
    for place, step in zip(steps_of(sitting), walker.steps, strict=True):
        if isinstance(step, FeedStep):
            sitting.place = place
            page = sitting.text(120, 60)
            for value in place.numbers():
                words = shown(value, walker.farm.units, walker.zone)
                said = spelled(value.amount) if value.unit not in ("kg", "lb") else words
                assert said in page, (step.name, value.name)


def test_into_a_number_and_into_what_it_is_made_of_and_back(sitting: Sitting) -> None:
    sitting.to_step("Stall", "hay").press("w")
    assert "WHY  Stall" in sitting.text()
    sitting.press("enter")
    first = sitting.text()
    sitting.press("enter")
    second = sitting.text()
    assert first != second
    assert sitting.press("backspace").text() == first
    assert "WHY  Stall" in sitting.press("left").text()
    assert "HAY for the whole pen" in sitting.press("escape").text()
    assert sitting.written() == 0


WHYS: dict[str, Callable[[Sitting], Sitting]] = {
    "the feed room": lambda s: s.press("d", "w", "enter"),
    "the numbers of a feed": lambda s: s.to_step("Fennel", "feed").press("w"),
    "scoops": lambda s: s.to_step("Fennel", "feed").press("w", "enter"),
    "what a scoop holds": lambda s: s.to_step("Fennel", "feed").press("w", "enter", "down", "right"),
    "put to soak": lambda s: s.to_step("lucerne pellets", "soak", 1).press("w", "down", "enter"),
    "a milking": lambda s: (
        s.to_step("Fennel", "milk")
        .press("7.2", "enter")
        .to_step("Fennel", "milk")
        .press("w", *["down"] * 6, "enter", "enter")
    ),
}


@pytest.mark.parametrize("name", WHYS)
def test_the_page_of_a_why_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert WHYS[name](sitting).text() == screen


def test_w_again_leads_from_any_depth_to_the_place(sitting: Sitting) -> None:
    before = sitting.to_step("Fennel", "feed").text()
    assert sitting.press("w", "enter", "enter", "w").text() == before


def test_where_nothing_is_reckoned_w_says_so(sitting: Sitting) -> None:
    sitting.to_step("Tansy", "udder").press("w")
    assert "Nothing here is reckoned." in sitting.text()


def test_a_figure_half_typed_stays_below(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "feed").press("down", "3")
    assert "3" in sitting.press("w").text()
