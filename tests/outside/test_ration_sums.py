"""Sums of whole rations, as others print them."""

from collections.abc import Sequence

import pytest

from store.husbandry.ration.sums import Given, cost, supply
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Printed, Source, example, given

HOARDS = Source(
    "hoards.com/article-35249, fibre from forage: 30 % of corn silage at 38 and 19 % of lucerne at 40 are 19 %"
)
GRASS = Source("hoards.com/article-35249, fibre from forage: 12 % of grass hay at 63 instead of the lucerne, 19 % too")
PURDUE = Source("ansc.purdue.edu/courses/ansc221v/how2cap.htm: 80 of corn and 17 of soybean meal bring so much")
ALABAMA = Source("aces.edu, by-product feeds quick reference guide: a ton of soybean hulls holds 1350 lb of TDN")
FAT = Source(
    "megalac.com/resources-advice/fats-advice/57-how-much-fat-to-feed, table 1: 20 kg of dry matter, 3.5 % fat"
)
BATCH = Source(
    "m.farms.com/news/manual-for-batch-mix-spreadsheet: 58.9 lb of silage of 28.5 % are 16.8 lb of dry matter"
)
CUBES = Source("beef.unl.edu/cattleproduction/BuyingSupplements: a ton of cubes of 90 % is 1800 lb dry")
BALAGE = Source("Nevada Special Publication 09-19, figure 1: 2000 lb of balage with 60 % water leave 800 lb")


def fed(kg: float, forage: bool = False, price: float | None = None, **percent: float) -> Given:
    """So much of a feed of which these parts are known; all of it dry matter where nothing else is said."""
    made = {part: given(each, part, "%", "printed") for part, each in {"dm_percent": 100.0, **percent}.items()}
    money = None if price is None else given(price, "price", "", "printed")
    return Given("a feed", made, given(kg, "a feed", "kg", "printed"), forage, money)


def rest(kg: float) -> Given:
    """The rest of a diet, of which only the fibre is said to be none from forage."""
    return fed(kg, ndf_percent=20.0)


SUMS: tuple[tuple[str, Printed, Sequence[Given]], ...] = (
    ("forage fibre", example(19.0, 0.05, HOARDS),
     [fed(30, True, ndf_percent=38), fed(19, True, ndf_percent=40), rest(51)]),
    ("forage fibre", example(19.0, 0.05, GRASS),
     [fed(30, True, ndf_percent=38), fed(12, True, ndf_percent=63), rest(58)]),
    ("phosphorus", example(326.0, 0.5, PURDUE), [fed(80, p_percent=0.28), fed(17, p_percent=0.6)]),
    ("calcium", example(58.5, 0.05, PURDUE), [fed(80, ca_percent=0.02), fed(17, ca_percent=0.25)]),
    ("TDN", example(1350 * KG_PER_LB, 0.5 * KG_PER_LB, ALABAMA),
     [fed(2000 * KG_PER_LB, dm_percent=90, tdn_percent=75)]),
    ("fat kg", example(0.7, 0.0005, FAT), [fed(20, fat_percent=3.5)]),
    ("dry matter", example(16.8 * KG_PER_LB, 0.05 * KG_PER_LB, BATCH), [fed(58.9 * KG_PER_LB, dm_percent=28.5)]),
    ("dry matter", example(1800.0, 0.5, CUBES), [fed(2000, dm_percent=90)]),
    ("dry matter", example(800.0, 0.5, BALAGE), [fed(2000, dm_percent=40)]),
)  # fmt: skip
CHECKED = {"ration": tuple(printed for _, printed, _ in SUMS)}


@pytest.mark.parametrize(("part", "printed", "ration"), [pytest.param(*each, id=each[1].source.words) for each in SUMS])
def test_a_sum_comes_out_as_printed(part: str, printed: Printed, ration: Sequence[Given]) -> None:
    assert supply(ration)[part].amount == pytest.approx(printed.gives, abs=printed.within)


def test_a_ton_costs_what_it_costs() -> None:
    found = cost([fed(2000 * KG_PER_LB, price=180 / (2000 * KG_PER_LB))])
    assert found is not None
    assert found.amount == pytest.approx(180)
