"""What was typed, read as an amount of feed or of milk: tables."""

import pytest
from msgspec.structs import replace

from store.book.facts.feed import Told
from store.book.facts.milk import Pail
from store.book.words import MILK_MOST_KG, STEP_MOST_KG, Units
from store.round.amount import FeedAmount, PailAmount, feed_amount, number_and_unit, pail_amount
from tests.store.round.made import NUTS, PAIL, SCOOP, UNWEIGHED

KG_PER_LB = 0.45359237  # exact: NIST Handbook 44, Appendix C
L_PER_IMPERIAL_GAL = 4.54609  # exact: NIST SP 811, Appendix B.8
L_PER_US_GAL = 3.785411784  # exact: NIST Handbook 44, Appendix C
KG_PER_L = 1.03  # whole milk; checked against measured containers in tests/outside


@pytest.mark.parametrize(
    ("text", "number", "word"),
    [
        ("3", 3, ""),
        ("3.5", 3.5, ""),
        ("7,4", 7.4, ""),
        ("3.", 3, ""),
        ("3,", 3, ""),
        (".5", 0.5, ""),
        (",5", 0.5, ""),
        ("0", 0, ""),
        ("3 1/2", 3.5, ""),
        ("3  1 / 2", 3.5, ""),
        ("3½", 3.5, ""),
        ("3 ½", 3.5, ""),
        ("1/2", 0.5, ""),
        ("½", 0.5, ""),
        ("1/4", 0.25, ""),
        ("¼", 0.25, ""),
        ("3/4", 0.75, ""),
        ("2¾", 2.75, ""),
        ("11/2", 5.5, ""),
        ("  3 1/2  ", 3.5, ""),
        ("16 lb", 16, "lb"),
        ("16lb", 16, "lb"),
        ("16 LB", 16, "lb"),
        ("3 1/2 scoops", 3.5, "scoops"),
        ("3½sc", 3.5, "sc"),
        ("½ us gal", 0.5, "us gal"),
    ],
)
def test_a_number_is_read_as_one_writes_it(text: str, number: float, word: str) -> None:
    """And the word after it stands apart, in small letters."""
    assert number_and_unit(text) == (number, word)


def test_an_amount_with_a_comma_is_a_decimal() -> None:
    """7,4 is seven and four tenths."""
    assert feed_amount("7,4 kg", NUTS, SCOOP, Units.METRIC).kg == 7.4


@pytest.mark.parametrize(
    ("text", "measures"),
    [("3 1/2", 3.5), ("3½", 3.5), ("1/2", 0.5), ("½", 0.5), ("7,4", 7.4), (".5", 0.5), ("0", 0),
     ("3 scoops", 3), ("1 scoop", 1), ("3 sc", 3), ("3 s", 3), ("3 SCOOPS", 3), ("3scoops", 3)],
)  # fmt: skip
@pytest.mark.parametrize("units", Units)
def test_a_feed_told_in_a_measure_is_typed_in_it(text: str, measures: float, units: Units) -> None:
    """Bare, or with the measure's name or its beginning; a scoop weighs what the keeper found."""
    found = feed_amount(text, NUTS, SCOOP, units)
    assert found.measures == measures
    assert found.kg == pytest.approx(measures * 0.675)


@pytest.mark.parametrize(
    ("text", "kg"),
    [
        ("16 lb", 16 * KG_PER_LB),
        ("500 g", 0.5),
        ("2.5 kg", 2.5),
        ("8 oz", KG_PER_LB / 2),
        ("1 1/2 lb.", 1.5 * KG_PER_LB),
    ],
)
@pytest.mark.parametrize("told", [None, SCOOP, UNWEIGHED])
@pytest.mark.parametrize("units", Units)
def test_a_feed_typed_with_a_weight_is_that_weight(text: str, kg: float, told: Told | None, units: Units) -> None:
    """Whatever it is told in, and wherever the farm lies."""
    found = feed_amount(text, NUTS, told, units)
    assert found.measures is None
    assert found.kg == pytest.approx(kg)


@pytest.mark.parametrize(("units", "kg"), [(Units.METRIC, 16), (Units.US, 16 * KG_PER_LB)])
def test_a_bare_number_without_a_measure_is_the_farms_own_weight(units: Units, kg: float) -> None:
    """Kilograms on a metric farm, pounds on an American one."""
    found = feed_amount("16", NUTS, None, units)
    assert found.measures is None
    assert found.kg == pytest.approx(kg)


@pytest.mark.parametrize(
    ("text", "units", "litres"),
    [
        ("2 gal", Units.METRIC, 2 * L_PER_IMPERIAL_GAL),
        ("2 gal", Units.US, 2 * L_PER_US_GAL),
        ("2 usgal", Units.METRIC, 2 * L_PER_US_GAL),
        ("2 usgal", Units.US, 2 * L_PER_US_GAL),
        ("2 igal", Units.US, 2 * L_PER_IMPERIAL_GAL),
        ("11 ipt", Units.METRIC, 11 * L_PER_IMPERIAL_GAL / 8),
        ("11 ipt", Units.US, 11 * L_PER_IMPERIAL_GAL / 8),
        ("11 pt", Units.METRIC, 11 * L_PER_IMPERIAL_GAL / 8),
        ("11 pt", Units.US, 11 * L_PER_US_GAL / 8),
        ("6 qt", Units.US, 6 * L_PER_US_GAL / 4),
        ("5,6 l", Units.METRIC, 5.6),
        ("5,6 l", Units.US, 5.6),
        ("0 l", Units.METRIC, 0),
    ],
)
def test_a_volume_is_milk_alone(text: str, units: Units, litres: float) -> None:
    """No pail is subtracted, and none is kept with it."""
    found = pail_amount(text, PAIL, units)
    assert found.milk_kg == pytest.approx(litres * KG_PER_L)
    assert found.gross_kg is None
    assert found.empty_kg is None


@pytest.mark.parametrize(
    ("text", "units", "gross_kg"),
    [
        ("12,9", Units.METRIC, 12.9),
        ("12.9 kg", Units.US, 12.9),
        ("28.5", Units.US, 28.5 * KG_PER_LB),
        ("28 1/2 lb", Units.METRIC, 28.5 * KG_PER_LB),
        ("1.4", Units.METRIC, 1.4),
    ],
)
def test_a_weight_is_the_pail_as_it_stands_on_the_scale(text: str, units: Units, gross_kg: float) -> None:
    """The empty pail is subtracted, and both are kept."""
    found = pail_amount(text, PAIL, units)
    assert found.milk_kg == pytest.approx(gross_kg - 1.4, abs=1e-12)
    assert found.gross_kg == pytest.approx(gross_kg)
    assert found.empty_kg == 1.4


def test_without_a_pail_what_the_scale_says_is_milk() -> None:
    """Nothing is known that could be subtracted."""
    assert pail_amount("11.5", None, Units.METRIC) == PailAmount(11.5, 11.5, 0)


def test_the_most_of_a_step_is_still_an_amount() -> None:
    """The bound itself is inside."""
    assert feed_amount("9999", NUTS, None, Units.METRIC).kg == STEP_MOST_KG


def test_the_most_of_a_milking_is_still_an_amount() -> None:
    """The bound itself is inside, with the pail below it on the scale."""
    assert pail_amount("80", None, Units.METRIC).milk_kg == MILK_MOST_KG
    assert pail_amount("100", Pail(PAIL.id, "churn", 20), Units.METRIC).milk_kg == MILK_MOST_KG


def test_a_measure_called_otherwise_is_typed_otherwise() -> None:
    """The name is the farm's own."""
    flake = replace(SCOOP, name="flake", plural="flakes", holds_kg=2.0)
    assert feed_amount("3 fl", NUTS, flake, Units.METRIC) == FeedAmount(6, 3)


def test_a_unit_stays_a_unit_where_a_measure_begins_like_it() -> None:
    """500 g are grams and no glasses; `gl` is a glass."""
    glass = replace(SCOOP, name="glass", plural="glasses", holds_kg=0.2)
    assert feed_amount("500 g", NUTS, glass, Units.METRIC) == FeedAmount(0.5, None)
    assert feed_amount("5 gl", NUTS, glass, Units.METRIC) == FeedAmount(1, 5)
