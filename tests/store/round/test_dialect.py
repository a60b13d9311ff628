"""British words and American ones."""

import pytest

from store.book.words import Dialect
from store.round.dialect import AMERICAN, said


@pytest.mark.parametrize(
    ("british", "american"),
    [("suckler", "beef cow with calf"), ("LEFT HIND", "LEFT REAR"), ("cleansing not passed", "afterbirth not passed")],
)
def test_a_word_is_said_as_the_farm_says_it(british: str, american: str) -> None:
    assert said(british, Dialect.AMERICAN) == american
    assert said(british, Dialect.BRITISH) == british


def test_no_word_is_changed_inside_another_or_twice() -> None:
    assert said("hindsight, a peanuts", Dialect.AMERICAN) == "hindsight, a peanuts"
    for word in AMERICAN.values():
        assert said(word, Dialect.AMERICAN) == word


def test_a_name_of_the_keepers_own_stays_as_it_is() -> None:
    own = ("dairy nuts", "Lucerne")
    assert said("dairy nuts at most, in all nuts", Dialect.AMERICAN, own) == "dairy nuts at most, in all pellets"
    assert said("Lucerne, a suckler", Dialect.AMERICAN, own) == "Lucerne, a beef cow with calf"
