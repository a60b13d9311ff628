"""Hay needs against printed figures."""

import pytest

from store.husbandry.hay import LOSS_BY_FEEDER, to_give

COW_LB, OF_WEIGHT, DRY_PART, STORED_PART, FED_PART = 1350, 0.025, 0.90, 0.92, 0.95
DAYS, BALES_LB = 120, {880: 5.85, 1267: 4.06}
PRINTED_LB, PRINTED_ALL_LB = 42.91, 5148.7
"""A cow of 1350 lb that eats 2.5 % of her weight in dry matter; hay with 90 % dry matter, 8 % lost in storage, 5 % at
feeding; 120 days in bales of 880 or 1267 lb. Source: agproud.com/articles/58069, "Estimating hay needs"; the second
decimal of the daily and the whole need is recomputed from the printed factors."""

EATEN_LB = {0.88: (24, 27), 0.89: (22, 24.7)}
"""By dry matter part: dry matter eaten, and hay as fed. [lb] Sources: thecattlesite.com/articles/3154, "How much forage
does a beef cow consume each day" (24 lb); progressivecattle.com, "Forage intake in beef cattle" (22 lb)."""

BALE_LB, WASTED_LB = 1200, {5.3: 63.6, 13.0: 156, 20.5: 246, 21.0: 252}
"""Waste of a bale of 1200 lb at four feeders. Source: extension.illinois.edu/beef-cattle/bale-feeder-design."""


def test_what_a_cow_needs_is_what_is_printed() -> None:
    """Losses multiply."""
    a_day_lb = to_give(COW_LB * OF_WEIGHT, DRY_PART, STORED_PART, FED_PART)
    assert round(a_day_lb, 2) == PRINTED_LB
    assert round(a_day_lb * DAYS, 1) == PRINTED_ALL_LB


@pytest.mark.parametrize("bale_lb", BALES_LB)
def test_so_do_the_bales_for_the_winter(bale_lb: int) -> None:
    """To the place it is printed."""
    a_day_lb = to_give(COW_LB * OF_WEIGHT, DRY_PART, STORED_PART, FED_PART)
    assert round(a_day_lb * DAYS / bale_lb, 2) == BALES_LB[bale_lb]


@pytest.mark.parametrize("dry_part", EATEN_LB)
def test_hay_as_fed_of_its_dry_matter(dry_part: float) -> None:
    """To the place it is printed."""
    dry_lb, as_fed_lb = EATEN_LB[dry_part]
    places = 1 if isinstance(as_fed_lb, float) else 0
    assert round(to_give(dry_lb, dry_part), places) == as_fed_lb


@pytest.mark.parametrize("percent", WASTED_LB)
def test_the_losses_of_the_table_are_those_of_the_printed_bale(percent: float) -> None:
    """Each of the four stands in the table, and gives the printed pounds."""
    assert percent in {each.percent for each in LOSS_BY_FEEDER}
    assert BALE_LB * percent / 100 == pytest.approx(WASTED_LB[percent])
