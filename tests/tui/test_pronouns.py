"""Lists about an animal speak of it by its sex, and ask nothing of a male that only a cow can do."""

import pytest

from store.book.words import Stage
from tui.pronouns import pronouns


@pytest.mark.parametrize(("stage", "who"), [
    (Stage.STEER, "he"), (Stage.BULL, "he"), (Stage.CALF, "it"), (Stage.OTHER, "it"), (Stage.HEIFER, "she"),
    (Stage.IN_MILK, "she"),
])  # fmt: skip
def test_each_class_has_its_pronoun(stage: Stage, who: str) -> None:
    assert pronouns(stage).who == who
