"""What was eaten: less than given, from a tub, by a rule."""

import pytest

from store.husbandry.intake import a_head_and_day_g, by_milk_kg, by_weight_kg, eaten_kg, refused


def test_what_was_left_was_not_eaten() -> None:
    """3.0 given, 0.6 left."""
    assert eaten_kg(3.0, 0.6) == pytest.approx(2.4)


def test_no_more_can_be_left_than_was_given() -> None:
    """Both are named."""
    with pytest.raises(ValueError, match=r"left_kg is 3\.5; only 3\.0 was given"):
        eaten_kg(3.0, 3.5)


@pytest.mark.parametrize(("left", "told"), [
    ([0.6, 0.2, 0.1], True), ([0.6, 0.2, 0.1, 0.0], True), ([0.0, 0.6, 0.2, 0.1], False),
    ([0.6, None, 0.2, 0.1], False), ([0.6, 0.2], False), ([], False),
])  # fmt: skip
def test_three_refusals_in_a_row_are_told(left: list[float | None], *, told: bool) -> None:
    """Newest first; where nobody looked, nothing is known to have been left."""
    assert refused(left) is told


def test_a_tub_by_its_weight() -> None:
    """20.0 kg are 12.3 after ten days before seven heads: 110 g each a day."""
    assert a_head_and_day_g(20.0 - 12.3, 10 * 7) == pytest.approx(110)


def test_a_tub_before_nobody_says_nothing() -> None:
    """Never a division by nothing."""
    assert a_head_and_day_g(7.7, 0) is None


def test_the_rule_by_milk() -> None:
    """0.25 a kilogram over 5 kg: 17 kg of milk are 3.0 kg; below 5 there is none."""
    assert by_milk_kg(17, 0.25, 5) == pytest.approx(3.0)
    assert by_milk_kg(4, 0.25, 5) == 0


def test_the_rule_by_weight() -> None:
    """1.5 % of 400 kg."""
    assert by_weight_kg(400, 1.5) == pytest.approx(6.0)
