"""What cannot be read as an amount is refused with a sentence: what was found, and what to type."""

import re

import pytest

from store.book.facts.feed import Told
from store.book.words import Units
from store.round.amount import Unreadable, feed_amount, number_and_unit, pail_amount
from tests.store.round.made import NUTS, PAIL, SCOOP, UNWEIGHED

HOW_A_NUMBER_IS_TYPED = "Type a number as 3, 3.5 or 3 1/2"


def refusal_of_feed(text: str, told: Told | None, units: Units = Units.METRIC) -> str:
    """The sentence, which must be one."""
    with pytest.raises(Unreadable) as refused:
        feed_amount(text, NUTS, told, units)
    return checked(str(refused.value))


def refusal_of_milk(text: str, units: Units = Units.METRIC) -> str:
    """The sentence, which must be one."""
    with pytest.raises(Unreadable) as refused:
        pail_amount(text, PAIL, units)
    return checked(str(refused.value))


def checked(sentence: str) -> str:
    """Plain sentences: they end, they are not long, and nothing of the program's inside shows."""
    assert sentence.endswith(".")
    assert len(sentence) < 140
    assert not re.search(r"[{}\[\]_]|None|Error|nan|inf", sentence)
    return sentence


@pytest.mark.parametrize(
    "text",
    ["", "   ", "abc", "scoops", "kg", "-3", "+3", ".", ",", "/", "1/", "/2", "3 4", "3..", "3 1", "1 1/2 3", "%",
     "1234567", "3.1234567", "1.5 1/2", "1/2½", "1/2/3 4"],
)  # fmt: skip
def test_what_is_no_number_is_refused_with_what_was_found_and_how_to_type_one(text: str) -> None:
    """Also nothing at all, and a number longer than any here."""
    for sentence in (refusal_of_feed(text, SCOOP), refusal_of_milk(text)):
        assert f"«{text.strip()}»" in sentence or "is no unit" in sentence
        assert "Type " in sentence


@pytest.mark.parametrize("text", ["", "abc", "-3", "1234567"])
def test_the_sentence_about_a_number_shows_three_ways_to_type_one(text: str) -> None:
    """A whole number, a decimal, a part."""
    with pytest.raises(Unreadable, match=f"«{text}» is no amount. {HOW_A_NUMBER_IS_TYPED}"):
        number_and_unit(text)


@pytest.mark.parametrize("text", ["1/0", "3 1/0", "1/000", "1/0 kg"])
def test_nothing_is_divided_by_zero(text: str) -> None:
    """It says so, and how a part is typed."""
    for sentence in (refusal_of_feed(text, SCOOP), refusal_of_milk(text)):
        assert "divided by 0" in sentence
        assert "Type a part as 1/2 or 3/4" in sentence


@pytest.mark.parametrize(
    ("text", "found"),
    [("3 stone", "stone"), ("3 bags", "bags"), ("3 kgg", "kgg"), ("3-", "-"), ("3%", "%"), ("2e3", "e3"),
     ("3 eu gal", "eu gal"), ("1 pinch of salt", "pinch of salt")],
)  # fmt: skip
def test_an_unknown_unit_is_named_and_the_known_ones_are_listed(text: str, found: str) -> None:
    """The measure of the feed among them."""
    sentence = refusal_of_feed(text, SCOOP)
    assert f"«{found}» is no unit" in sentence
    for word in ("Type ", "kg", "g", "lb", "oz", "l", "gal", "qt", "pt", "scoops", "or no unit"):
        assert word in sentence
    assert f"«{found}» is no unit" in refusal_of_milk(text)


def test_the_measure_of_another_feed_is_no_unit_here() -> None:
    """Hay goes in no scoops, milk in none either."""
    assert "«scoops» is no unit" in refusal_of_feed("3 scoops", None)
    assert "«scoops» is no unit" in refusal_of_milk("3 scoops")


@pytest.mark.parametrize("text", ["3", "3 jugs", "1/2 j"])
def test_a_measure_that_nobody_weighed_asks_for_the_weight(text: str) -> None:
    """It names the measure and the feed, and shows how a weight is typed."""
    assert refusal_of_feed(text, UNWEIGHED) == ("Nobody has weighed a jug of oat nuts yet. Type the weight, as 1.2 kg.")


@pytest.mark.parametrize(
    ("text", "units", "found"),
    [
        ("2 gal", Units.METRIC, "imperial gal"),
        ("2 gal", Units.US, "US gal"),
        ("3 l", Units.METRIC, "L"),
        ("500 ml", Units.US, "mL"),
    ],
)
@pytest.mark.parametrize("told", [None, SCOOP])
def test_a_volume_of_feed_is_refused_for_a_weight(text: str, units: Units, found: str, told: Told | None) -> None:
    """A feed goes by weight: how much a gallon of it weighs, nobody said."""
    assert refusal_of_feed(text, told, units) == (
        f"{found} is a volume; oat nuts goes by weight here. Type kg, g, lb or oz."
    )


@pytest.mark.parametrize(
    ("text", "told"), [("10000", None), ("99999 kg", SCOOP), ("20000", SCOOP), ("999999", None), ("25000 lb", None)]
)
def test_more_feed_than_any_step_is_refused_with_the_most(text: str, told: Told | None) -> None:
    """What was typed, and what is the most."""
    sentence = refusal_of_feed(text, told)
    assert f"«{text}»" in sentence
    assert re.search(r"Type what makes 9999 kg or less", sentence)


@pytest.mark.parametrize("text", ["81.5", "100", "999999", "20 gal", "82 l", "200 lb"])
def test_more_milk_than_any_milking_is_refused_with_the_most(text: str) -> None:
    """What was typed, and what is the most."""
    sentence = refusal_of_milk(text)
    assert f"«{text}»" in sentence
    assert "Type what makes 80.0 kg or less" in sentence


@pytest.mark.parametrize(("text", "kg"), [("1.3", "1.3"), ("0", "0.0"), ("3 lb", "1.4"), ("900 g", "0.90")])
def test_less_than_the_empty_pail_is_refused_with_both_weights(text: str, kg: str) -> None:
    """And with both ways to type milk: on the scale, or as litres."""
    sentence = refusal_of_milk(text)
    assert f"{kg} kg is less than the empty pail (1.4 kg)" in sentence
    assert "Type the pail as it stands on the scale" in sentence
    assert "litres: 5.6 l" in sentence


def test_an_american_farm_is_told_in_pounds() -> None:
    """What was found and what is expected, in the unit that she reads on her scale."""
    with pytest.raises(Unreadable, match=r"2\.0 lb is less than the empty pail \(3\.1 lb\)"):
        pail_amount("2", PAIL, Units.US)
    with pytest.raises(Unreadable, match=r"400 lb of milk.*176 lb or less"):
        pail_amount("403", PAIL, Units.US)
