"""Laws of reading an amount, over any text that fits the line."""

import math
from collections.abc import Callable
from typing import TypeVar

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from store.book.facts.feed import Told
from store.book.facts.milk import Pail
from store.book.words import MILK_MOST_KG, PAIL_MOST_KG, STEP_MOST_KG, Units
from store.round.amount import FeedAmount, PailAmount, Unreadable, feed_amount, number_and_unit, pail_amount
from tests.store.round.made import NUTS, PAIL, SCOOP, UNWEIGHED, unhurried

ANY_TEXT = (
    st.text(max_size=20)
    | st.text("0123456789.,/½¼¾ kglbozsptqucsi", max_size=20)
    | st.from_regex(r"\A[0-9]{1,6}([.,][0-9]{1,4}| [1-3]/[2-8])? ?(kg|lb|oz|l|gal|ipt|scoops|)\Z")
)
"""Anything; anything from the likely characters; and what is mostly a number with a unit."""
UNITS = st.sampled_from(Units)
Amount = TypeVar("Amount", FeedAmount, PailAmount)
WORDS = st.sampled_from(("", " kg", "lb", " oz", " gal", " l", " scoops", " ipt"))


def read_or_refused(read: Callable[[], Amount]) -> Amount | str:
    """The amount, or the sentence that refuses it. Any other exception is let through."""
    try:
        return read()
    except Unreadable as refused:
        return str(refused)


@unhurried
@given(ANY_TEXT, st.sampled_from((None, SCOOP, UNWEIGHED)), UNITS)
@example("٣ kg", None, Units.METRIC)
@example("1/٠", None, Units.METRIC)
@example("3²", SCOOP, Units.METRIC)
@example("3\n", SCOOP, Units.METRIC)
@example("3 İ", SCOOP, Units.METRIC)
def test_any_text_is_an_amount_of_feed_within_bounds_or_is_refused(text: str, told: Told | None, units: Units) -> None:
    """Never another exception, and never an amount that the book would not take."""
    found = read_or_refused(lambda: feed_amount(text, NUTS, told, units))
    if isinstance(found, str):
        assert found.endswith(".")
        return
    assert math.isfinite(found.kg)
    assert 0 <= found.kg <= STEP_MOST_KG


@unhurried
@given(ANY_TEXT, st.sampled_from((None, PAIL)), UNITS)
@example("121.4", PAIL, Units.METRIC)
@example("٣ kg", PAIL, Units.METRIC)
def test_any_text_is_an_amount_of_milk_within_bounds_or_is_refused(text: str, pail: Pail | None, units: Units) -> None:
    """Never another exception, and never an amount that the book would not take."""
    found = read_or_refused(lambda: pail_amount(text, pail, units))
    if isinstance(found, str):
        assert found.endswith(".")
        return
    assert math.isfinite(found.milk_kg)
    assert 0 <= found.milk_kg <= MILK_MOST_KG
    if found.gross_kg is not None:
        assert found.milk_kg <= found.gross_kg <= PAIL_MOST_KG


@unhurried
@given(st.integers(0, 999), st.integers(0, 3), WORDS)
def test_a_whole_number_and_quarters_are_their_sum(whole: int, part: int, word: str) -> None:
    """`2 3/4` is two and three quarters, with any unit after it."""
    assert number_and_unit(f"{whole} {part}/4{word}") == (whole + part / 4, word.strip())


@unhurried
@given(st.integers(0, 999), st.sampled_from(((1, "¼"), (2, "½"), (3, "¾"))), st.sampled_from(("", " ")))
def test_a_part_in_one_character_is_the_part_written_out(whole: int, part: tuple[int, str], gap: str) -> None:
    """`2¾`, `2 ¾` and `2 3/4` are one number."""
    assert number_and_unit(f"{whole}{gap}{part[1]}") == number_and_unit(f"{whole} {part[0]}/4")


@unhurried
@given(st.integers(0, 999999), st.text("0123456789", max_size=6), WORDS)
def test_a_decimal_point_and_a_decimal_comma_are_one(whole: int, places: str, word: str) -> None:
    """And both are the number that they look like."""
    point = number_and_unit(f"{whole}.{places}{word}")
    assert point == number_and_unit(f"{whole},{places}{word}")
    assert point[0] == float(f"{whole}.{places}")


@unhurried
@given(st.integers(1, 999), st.integers(1, 999))
def test_a_part_is_its_top_divided_by_its_bottom(top: int, bottom: int) -> None:
    """Whatever they are, but for a bottom of nothing."""
    assert number_and_unit(f"{top}/{bottom}")[0] == pytest.approx(top / bottom)


@unhurried
@given(st.decimals(0, 400, places=2), st.sampled_from(("kg", "lb", "oz", "g")))
def test_a_feed_weighs_the_same_on_every_farm_when_its_unit_is_said(number: object, unit: str) -> None:
    """What a farm shows its amounts in changes nothing that is said outright."""
    found = {feed_amount(f"{number} {unit}", NUTS, SCOOP, units).kg for units in Units}
    assert len(found) == 1
