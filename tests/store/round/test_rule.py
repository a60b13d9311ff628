"""The keeper's own rule for a class of animal: read, and what it proposes."""

import pytest
from msgspec.structs import asdict

from store.book.words import Units
from store.round.amount import Unreadable
from store.round.rule import Rule, rule, rule_words

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


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("found", [
    Rule(fixed_kg=2), Rule(per_kg_milk=0.25, above_kg=5), Rule(per_kg_milk=0.25), Rule(percent=1.5),
    Rule(fixed_kg=1, per_kg_milk=0.2, above_kg=8, percent=0.5), Rule(),
])  # fmt: skip
def test_a_rule_is_said_as_it_can_be_typed_again(found: Rule, units: Units) -> None:
    """To the places that are shown."""
    words = rule_words(found, units)
    again = rule(words, units) if words else Rule()
    assert asdict(again) == pytest.approx(asdict(found), abs=0.005)


def test_parts_are_added_and_none_is_told_twice() -> None:
    assert rule("1 kg + 0.2 per kg milk over 8 kg", Units.METRIC) == Rule(1, 0.2, 8)
    with pytest.raises(Unreadable, match="«1 kg \\+ 2 kg» tells one thing twice"):
        rule("1 kg + 2 kg", Units.METRIC)
