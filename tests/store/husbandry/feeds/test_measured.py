"""A measure that nobody weighed."""

import pytest

from store.husbandry.feeds.density import likely
from store.husbandry.why import given as a_value


def test_a_scoop_that_nobody_weighed_has_a_range_and_says_where_from() -> None:
    found = likely("Barley, rolled", a_value(3, "scoop", "L", "your measure"))
    assert found is not None
    assert [found.least_kg.amount, found.most_kg.amount] == pytest.approx([1.2, 1.44])
    assert [each.words for each in found.least_kg.sources()] == ["plain arithmetic", "usual bulk densities"]


def test_a_feed_whose_density_nobody_knows_has_none() -> None:
    assert likely("Wheat straw", a_value(3, "scoop", "L", "your measure")) is None
