"""At which of her planned milkings it is her turn: counted from the last pail, nothing else."""

from datetime import date, timedelta

import pytest

from store.book.facts.milk import PastPail
from store.book.rhythm import is_her_turn
from store.book.turn import Turn
from store.book.words import EVENING, MORNING
from tests.farm import MORNING as AT

DAY = date(2026, 3, 11)
BOTH, ONE = (MORNING, EVENING), (MORNING,)


def pail(turn: Turn, milk_kg: float | None = 6.0, *, on_paper: bool = False) -> PastPail:
    """A milking of a round."""
    return PastPail(AT, milk_kg, held_back=False, on_paper=on_paper, turn=turn)


def rounds_back(count: int) -> Turn:
    """The round so many before this morning's."""
    turn = Turn(DAY, MORNING)
    for _ in range(count):
        turn = turn.before()
    return turn


@pytest.mark.parametrize(("every", "back"), [(1, 1), (2, 2), (2, 3), (3, 3), (4, 9)])
def test_milked_twice_a_day_it_is_her_turn_so_many_rounds_on(every: int, back: int) -> None:
    """Every other one: a day after the last."""
    assert is_her_turn(every, BOTH, (pail(rounds_back(back)),), Turn(DAY, MORNING))


@pytest.mark.parametrize(("every", "back"), [(2, 1), (3, 2), (4, 3)])
def test_before_that_it_is_not(every: int, back: int) -> None:
    """She is felt only."""
    assert not is_her_turn(every, BOTH, (pail(rounds_back(back)),), Turn(DAY, MORNING))


def test_milked_once_a_day_every_other_one_is_every_other_day() -> None:
    """The evenings are not planned and do not count."""
    yesterday, before = (pail(Turn(DAY - timedelta(days=days), MORNING)) for days in (1, 2))
    assert not is_her_turn(2, ONE, (yesterday,), Turn(DAY, MORNING))
    assert is_her_turn(2, ONE, (before,), Turn(DAY, MORNING))


def test_one_that_was_left_out_on_purpose_is_not_passed_over() -> None:
    """She was to be milked last evening and was not: it is her turn now; what is on paper was a milking."""
    left_out = (pail(rounds_back(1), None), pail(rounds_back(3)))
    assert is_her_turn(2, BOTH, left_out, Turn(DAY, MORNING))
    assert not is_her_turn(2, BOTH, (pail(rounds_back(1), None, on_paper=True),), Turn(DAY, MORNING))


def test_never_milked_yet_it_is_her_turn() -> None:
    """The first one; so too where all that is known comes later, as in a past round that is looked at."""
    assert is_her_turn(2, BOTH, (), Turn(DAY, MORNING))
    assert is_her_turn(2, BOTH, (pail(Turn(DAY, EVENING)),), Turn(DAY, MORNING))
