"""A measure that nobody weighed, two feeds mixed, a soaked feed."""

import pytest
from hypothesis import given, strategies

from store.husbandry.feeds.density import likely
from store.husbandry.feeds.mixing import first_of_two, soaked, timothy_digestibility
from store.husbandry.ration.sums import dry
from store.husbandry.why import given as a_value


def test_a_scoop_that_nobody_weighed_has_a_range_and_says_where_from() -> None:
    found = likely("Barley, rolled", a_value(3, "scoop", "L", "your measure"))
    assert found is not None
    assert [found.least_kg.amount, found.most_kg.amount] == pytest.approx([1.2, 1.44])
    assert [each.words for each in found.least_kg.sources()] == ["plain arithmetic", "usual bulk densities"]


def test_a_feed_whose_density_nobody_knows_has_none() -> None:
    assert likely("Wheat straw", a_value(3, "scoop", "L", "your measure")) is None


percents = strategies.floats(0, 100)


@given(percents, percents, strategies.floats(0, 1))
def test_a_mix_of_two_feeds_has_the_target(first: float, second: float, part: float) -> None:
    target = first * part + second * (1 - part)
    if abs(first - second) < 0.01 or not min(first, second) <= target <= max(first, second):
        return
    share = first_of_two(first, second, target) / 100
    assert share * first + (1 - share) * second == pytest.approx(target, abs=1e-6)


def test_two_feeds_cannot_make_what_neither_reaches() -> None:
    with pytest.raises(ValueError, match="target_percent is 20"):
        first_of_two(8.0, 16.0, 20.0)


@given(strategies.floats(0.1, 50), percents, strategies.floats(0, 200))
def test_soaking_changes_no_dry_matter(dry_kg: float, dm_percent: float, water_kg: float) -> None:
    wet = soaked(dry_kg, dm_percent, water_kg)
    assert dry(dry_kg + water_kg, wet) == pytest.approx(dry(dry_kg, dm_percent), abs=1e-9)


def test_nothing_soaks_to_nothing() -> None:
    with pytest.raises(ValueError, match="dry_kg"):
        soaked(0, 88.3, 0)


def test_hay_that_is_cut_later_is_poorer() -> None:
    assert timothy_digestibility(28) > timothy_digestibility(60)
