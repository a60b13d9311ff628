"""What a ration supplies: its sums, and what cannot be summed."""

import pytest
from hypothesis import given, strategies

from store.husbandry.feeds.made import made
from store.husbandry.feeds.table import BY_NAME, FEEDS
from store.husbandry.ration.sums import Given, cost, lacking, supply
from store.husbandry.why import Value
from store.husbandry.why import given as a_value


def fed(kg: float, name: str, price: float | None = None, **typed: float | None) -> Given:
    """So much of a feed that is as a row of the table, or as its label says."""
    money = None if price is None else a_value(price, "price", "", "typed")
    forage = name in BY_NAME and BY_NAME[name].forage
    return Given(name, made(typed, "tag", name), a_value(kg, name, "kg", "your plan"), forage, money)


HAY, BARLEY, OIL = "Grass hay, mid (55-60 % NDF)", "Barley, rolled", "Vegetable oil, rice bran oil"


def test_a_ration_of_hay_and_barley() -> None:
    found = supply([fed(10, HAY), fed(2, BARLEY)])
    assert found["dry matter"].amount == pytest.approx(8.38 + 1.82)
    assert found["protein"].amount == pytest.approx(1340.22)  # 8.38 x 133 + 1.82 x 124
    assert found["forage"].amount == pytest.approx(8.38 / 10.2 * 100)
    assert found["fibre"].amount == pytest.approx((8.38 * 57.7 + 1.82 * 20.8) / 10.2)
    assert found["calcium to phosphorus"].amount == pytest.approx(56.4 / 31.4, rel=0.01)


def test_a_figure_can_be_asked_why_down_to_what_was_typed() -> None:
    found = supply([fed(10, HAY, cp_percent=11.2), fed(2, BARLEY)])["protein"]
    in_hay = found.inputs["part_0"]
    assert in_hay.name == f"protein in {HAY}"
    assert in_hay.inputs["percent"].came == "your label"
    assert in_hay.inputs["dry_kg"].inputs["kg"].came == "your plan"
    assert any("table 15-1" in source.words for source in found.sources())


def test_what_a_feed_does_not_tell_is_not_summed_as_nothing() -> None:
    ration = [fed(10, HAY), fed(0.1, "Mineral, see its tag")]
    found = supply(ration)
    assert "calcium" not in found
    assert "protein" in found
    assert lacking(ration, "ca_percent") == ("Mineral, see its tag",)
    assert supply([fed(1, "a feed of which nothing is known")]) == {}


def test_a_feed_of_which_nothing_is_given_lacks_nothing() -> None:
    assert supply([fed(10, HAY), fed(0, "a feed of which nothing is known")])["calcium"].amount > 0


def test_the_cost_is_not_known_where_one_price_is_not() -> None:
    priced = cost([fed(10, HAY, 0.2), fed(2, BARLEY, 0.35)])
    assert priced is not None
    assert priced.amount == pytest.approx(2.7)
    assert cost([fed(10, HAY, 0.2), fed(2, BARLEY)]) is None
    assert cost([]) is None


GRAM = 0.001
kilograms = strategies.just(0.0) | strategies.floats(GRAM, 30)
amounts = strategies.lists(
    strategies.tuples(kilograms, strategies.sampled_from([each.name for each in FEEDS])), max_size=6
)
"""Nothing, or what a scale shows: a gram at least."""


@given(amounts, strategies.floats(0.1, 3))
def test_twice_the_ration_supplies_twice_as_much_and_the_same_shares(
    ration: list[tuple[float, str]], times: float
) -> None:
    once, more = supply([fed(*each) for each in ration]), supply([fed(kg * times, name) for kg, name in ration])
    for part in once.keys() & more.keys():
        of_same = 1.0 if once[part].unit in ("%", ": 1") else times
        assert more[part].amount == pytest.approx(once[part].amount * of_same, abs=1e-9)


@given(amounts)
def test_a_share_lies_between_nothing_and_all(ration: list[tuple[float, str]]) -> None:
    found = supply([fed(*each) for each in ration])
    shares: list[Value] = [value for value in found.values() if value.unit == "%"]
    assert all(-1e-9 <= each.amount <= 100 + 1e-9 for each in shares)
    assert (
        found.get("fibre", a_value(100, "", "%", "")).amount >= found["forage fibre"].amount - 1e-9 if shares else True
    )


def test_a_negative_amount_is_refused() -> None:
    with pytest.raises(ValueError, match="kg"):
        supply([fed(-1, HAY)])
