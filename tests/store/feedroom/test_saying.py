"""How rounds and days are said."""

from datetime import date, timedelta

import pytest

from store.book.turn import Turn
from store.feedroom.saying import by_day_words, round_words

TUESDAY = date(2026, 3, 10)


@pytest.mark.parametrize(("days", "slot", "said"), [
    (0, "evening", "this evening"), (1, "morning", "on Wednesday morning"), (5, "evening", "on Sunday evening"),
    (6, "morning", "on Monday morning next week"), (12, "evening", "on Sunday evening next week"),
    (13, "morning", "on the morning of Monday 23 March"), (-1, "evening", "on Monday evening"),
    (-2, "evening", "on the evening of Sunday 8 March"),
])  # fmt: skip
def test_a_round_is_said_by_its_weekday_while_that_is_plain(days: int, slot: str, said: str) -> None:
    """Seen from a Tuesday; a week begins on Monday."""
    assert round_words(Turn(TUESDAY + timedelta(days=days), slot), TUESDAY) == said


@pytest.mark.parametrize(("days", "said"), [
    (-3, "today"), (0, "today"), (1, "by Wednesday"), (6, "by Monday"), (7, "by Tuesday 17 March"),
])  # fmt: skip
def test_a_day_by_which_is_said_by_its_weekday_within_a_week(days: int, said: str) -> None:
    """What is over is today."""
    assert by_day_words(TUESDAY + timedelta(days=days), TUESDAY) == said
