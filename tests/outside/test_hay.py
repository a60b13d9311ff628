"""Hay for a winter against printed figures that take more than one equation."""

import pytest

from store.husbandry.hay import LOSS_BY_FEEDER, bales_last, in_bales, to_give

COW_LB, OF_WEIGHT, DAYS = 1350, 0.025, 120
PRINTED_ALL_LB, BALES_LB = 5148, {880: 5.85, 1267: 4.06}
"""A cow of 1350 lb that eats 2.5 % of her weight in dry matter; hay with 90 % dry matter, 8 % lost in storage, 5 % at
feeding. Source: agproud.com/articles/58069, "Estimating hay needs"."""


@pytest.mark.parametrize("bale_lb", BALES_LB)
def test_what_a_cow_needs_for_the_winter_is_what_is_printed(bale_lb: int) -> None:
    """To the place it is printed; whole bales are those and the rest of one."""
    a_day_lb = to_give(COW_LB * OF_WEIGHT, 90, 8, 5)
    assert int(a_day_lb * DAYS) == PRINTED_ALL_LB
    assert round(in_bales(a_day_lb * DAYS, bale_lb), 2) == BALES_LB[bale_lb]
    eaten_lb = a_day_lb * 0.95
    assert bales_last(0, bale_lb, 5, eaten_lb, DAYS).need == int(BALES_LB[bale_lb]) + 1


@pytest.mark.parametrize("percent", [5.3, 13.0, 20.5, 21.0])
def test_the_losses_of_the_printed_bale_stand_in_the_table(percent: float) -> None:
    """Source: extension.illinois.edu/beef-cattle/bale-feeder-design."""
    assert percent in {each.percent for each in LOSS_BY_FEEDER}
