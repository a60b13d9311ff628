"""Every place can be left."""

from collections.abc import Iterator

import pytest

from tests.tui.keys import Sitting
from tui.place import Place
from tui.yard.locked import Locked


def places(of: type[Place] = Place) -> Iterator[type[Place]]:
    """Every place with keys of its own."""
    for each in of.__subclasses__():
        yield from places(each)
        if "KEYS" in vars(each):
            yield each


@pytest.mark.parametrize("place", sorted({each for each in places() if each is not Locked}, key=str))
def test_ctrl_c_leaves_wherever_one_is(place: type[Place]) -> None:
    """Locked, which is for wiping the keys, is left by its word alone."""
    assert any("ctrl+c" in key.names and key.act for key in place.KEYS)


def test_q_leaves_what_looks_back(sitting: Sitting) -> None:
    assert sitting.to_step("Fennel", "milk").press("y", "q").place is None


def test_h_lists_the_keys_of_what_looks_back(sitting: Sitting) -> None:
    assert "KEYS HERE" in sitting.to_step("Fennel", "milk").press("y", "h").text()
