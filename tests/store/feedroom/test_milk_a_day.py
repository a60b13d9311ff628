"""What a cow gave a day: the mean of the days that are in the book."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.figures import MilkedFigure
from store.book.opening import Book
from store.book.turn import Turn
from store.book.words import Fate, Kind, State
from store.feedroom.milk_a_day import milk_a_day
from tests.store.feedroom.made import TODAY, fed_step, named


def test_the_mean_is_of_the_days_that_are_in_the_book(room: Book) -> None:
    """16 and 18 kg in two pails each; eight days ago is too long, and a pail on paper is not known."""
    fennel = Subject(animal_id=named(room, "Fennel"))
    for ago, pails_kg in ((1, (9.0, 7.0)), (6, (10.0, 8.0)), (7, (99.0 - 60, 1.0))):
        for slot, kg in zip(("morning", "evening"), pails_kg, strict=True):
            turn = Turn(TODAY - timedelta(days=ago), slot)
            room.append(fed_step(room, turn, Kind.MILK, fennel, (MilkedFigure(kg, fate=Fate.HOUSE),)))
    on_paper = fed_step(room, Turn(TODAY, "morning"), Kind.MILK, fennel, (MilkedFigure(None),))
    room.append(replace(on_paper, state=State.ON_PAPER))
    assert milk_a_day(room.desk, TODAY) == {fennel.animal_id: pytest.approx(17.0)}
