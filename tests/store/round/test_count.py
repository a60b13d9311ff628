"""Count steps: heads and a look open each pen; a short count stays open, with what was seen."""

import pytest

from store.book.figures import CountedFigure
from store.book.opening import Book
from store.book.words import Kind, State
from store.round.confirm import counted, left_open, skipped
from store.round.plan import plan
from store.round.steps import CountStep
from store.round.summary import summarise
from tests.farm import hand as hand_at
from tests.farm import morning
from tests.store.round.made import dawn, hand, moved, walk, without_animal, wrote
from tests.store.round.named import count_of, steps_of


def test_every_pen_that_anybody_stands_in_is_counted_first() -> None:
    """Before its forage and its animals."""
    assert [(step.name, len(step.heads)) for step in steps_of(dawn(), CountStep)] == [
        ("Stall", 2),
        ("Calf pen", 1),
        ("Orchard", 2),
    ]
    for place in ("Stall", "Calf pen", "Orchard"):
        assert next(step for step in plan(dawn()) if step.place == place).kind is Kind.COUNT


def test_an_empty_pen_is_not_counted() -> None:
    """There is nobody to see."""
    assert ("Calf pen", "Calf pen", "count") not in walk(without_animal(dawn(), "Rook"))


def test_the_heads_follow_an_animal_that_moves() -> None:
    """One less here, one more there; and the counts stay the same steps."""
    after = moved(dawn(), "Hazel", "Orchard")
    assert [animal.name for animal in count_of(after, "Orchard").heads] == ["Hazel", "Sloe", "Tansy"]
    assert [animal.name for animal in count_of(after, "Stall").heads] == ["Fennel"]
    assert count_of(after, "Stall").step_id == count_of(dawn(), "Stall").step_id


@pytest.mark.parametrize(("seen", "state"), [(2, State.DONE), (3, State.DONE), (1, State.OPEN), (0, State.OPEN)])
def test_a_count_is_done_when_all_are_seen_and_open_while_one_is_missing(seen: int, state: State) -> None:
    """What was seen is kept beside what was expected, either way."""
    draft = counted(hand(dawn()), count_of(dawn(), "Orchard"), seen)
    assert draft.state is state
    assert draft.figures == (CountedFigure(2, seen),)


def test_a_short_count_stays_open_with_the_count_kept() -> None:
    """Found an hour later: the first count is history, the second one counts."""
    after = wrote(dawn(), counted(hand(dawn()), count_of(dawn(), "Orchard"), 1))
    step = count_of(after, "Orchard")
    assert step.state is State.OPEN
    assert step.entry is not None
    assert step.entry.the(CountedFigure) == CountedFigure(2, 1)
    assert step in summarise(after, plan(after)).not_recorded
    after = wrote(after, counted(hand(after), step, 2))
    assert count_of(after, "Orchard").state is State.DONE
    assert [entry.the(CountedFigure) for entry in after.entries] == [CountedFigure(2, 1), CountedFigure(2, 2)]


def test_a_count_skipped_or_left_open_keeps_how_many_were_due() -> None:
    """And saw nobody, which is not zero."""
    step = count_of(dawn(), "Stall")
    for draft in (skipped(hand(dawn()), step, "no time"), left_open(hand(dawn()), step)):
        assert draft.figures == (CountedFigure(2, None),)


def test_a_short_count_comes_back_from_the_book_open_and_short(book: Book) -> None:
    """Through the file."""
    found = morning(book)
    book.append(counted(hand_at(book, found), count_of(found, "Stall"), 1))
    step = count_of(morning(book), "Stall")
    assert step.state is State.OPEN
    assert step.entry is not None
    assert step.entry.figures == (CountedFigure(2, 1),)
