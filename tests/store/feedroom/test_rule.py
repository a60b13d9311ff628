"""The keeper's own rule for a class of animal: read, and what it proposes."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.figures import MilkedFigure
from store.book.opening import Book
from store.book.turn import Turn
from store.book.words import Fate, Kind, State, Units
from store.feedroom.rule import Rule, milk_a_day, rule
from store.round.amount import Unreadable
from tests.store.feedroom.made import TODAY, fed_step, named

LB = 0.45359237  # exact: NIST Handbook 44, Appendix C


@pytest.mark.parametrize(("typed", "found"), [
    ("0.25 per kg milk over 5 kg", Rule(per_kg_milk=0.25, above_kg=5)), ("0,25 a kg of milk", Rule(per_kg_milk=0.25)),
    ("250 g per kg milk over 5", Rule(per_kg_milk=0.25, above_kg=5)), ("2 kg", Rule(fixed_kg=2)),
    ("2", Rule(fixed_kg=2)),
    ("1.5 % of weight", Rule(percent=1.5)), ("1 1/2% of body weight", Rule(percent=1.5)),
])  # fmt: skip
def test_a_rule_is_read(typed: str, found: Rule) -> None:
    """In milk by her milk, dry a fixed amount, a steer by its weight."""
    assert rule(typed, Units.METRIC) == found


def test_pounds_of_feed_for_pounds_of_milk_are_the_same_part() -> None:
    """0.25 lb for each pound over 11 lb."""
    found = rule("0.25 per lb milk over 11 lb", Units.US)
    assert found.per_kg_milk == pytest.approx(0.25)
    assert found.above_kg == pytest.approx(11 * LB)


@pytest.mark.parametrize("typed", ["", "some", "2 l", "0.25 per kg milk over 2 gal", "101 % of weight",
                                   "1 kg % of weight",
                                   "0.25 per kg butter"])  # fmt: skip
def test_what_is_no_rule_is_refused_in_a_sentence(typed: str) -> None:
    """With what to type."""
    with pytest.raises(Unreadable, match=r"\.$"):
        rule(typed, Units.METRIC)


def test_seventeen_kilograms_of_milk_propose_three() -> None:
    """0.25 for each over 5; without her milk nothing is proposed, and a dry cow's amount needs none."""
    by_milk = rule("0.25 per kg milk over 5 kg", Units.METRIC)
    assert by_milk.a_day_kg(17.0, None) == pytest.approx(3.0)
    assert by_milk.a_day_kg(None, 450.0) is None
    assert rule("2 kg", Units.METRIC).a_day_kg(None, None) == 2.0
    assert rule("1.5 % of weight", Units.METRIC).a_day_kg(None, 400.0) == pytest.approx(6.0)
    assert rule("1.5 % of weight", Units.METRIC).a_day_kg(17.0, None) is None


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
