"""A draft by itself."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Subject
from store.round.confirm import noted
from tests.store.round.made import dawn, hand


def test_nothing_can_have_happened_between_a_moment_and_an_earlier_one() -> None:
    draft = noted(hand(dawn()), Subject(), "a loud bang", tell=False)
    assert replace(draft, happened_from=draft.happened_at).happened_from == draft.happened_at
    with pytest.raises(ValueError, match="must not be behind"):
        replace(draft, happened_from=draft.happened_at + timedelta(microseconds=1))
