"""The usual most of a feed."""

from store.husbandry.feeds.table import BY_NAME
from store.husbandry.ration.limits import MOSTS, meal_most, usual
from store.husbandry.why import given as a_value


def test_a_feed_that_has_a_usual_most_says_where_from() -> None:
    found = usual("Whole cottonseed, linted")
    assert {column: (each.amount, each.unit) for column, each in found.items()} == {
        "most_day_kg": (3.18, "kg"), "share_percent": (15.0, "%"),
    }  # fmt: skip
    assert all(each.source and each.source.words for each in found.values())


def test_grain_hangs_on_her_weight_and_is_not_guessed_without_it() -> None:
    found = usual("Barley, rolled", a_value(500, "weight", "kg", "weighed"))
    assert found["most_day_kg"].amount == 12.5
    assert found["most_day_kg"].inputs["weight_kg"].came == "weighed"
    assert usual("Barley, rolled") == {}


def test_less_grain_is_usual_for_those_that_live_on_forage() -> None:
    found = usual("Barley, rolled", a_value(612, "weight", "kg", "weighed"), lives_on_forage=True)
    assert round(found["most_day_kg"].amount, 2) == 3.06


def test_a_feed_of_which_no_most_is_known_has_none() -> None:
    assert usual("Grass hay, mid (55-60 % NDF)", a_value(500, "weight", "kg", "weighed")) == {}
    assert usual("a feed of which nothing is known") == {}


def test_every_limit_names_rows_that_are_there() -> None:
    assert all(row in BY_NAME for each in MOSTS for row in each.like)
    assert all(each.lb_day or each.share_percent for each in MOSTS)


def test_a_cow_whose_weight_nobody_knows_is_taken_as_small() -> None:
    small, large = meal_most(None), meal_most(a_value(650, "weight", "kg", "weighed"))
    assert small
    assert large
    assert small.amount < large.amount
    assert meal_most(a_value(60, "weight", "kg", "weighed")) is None
