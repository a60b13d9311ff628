"""How soaked beet pulp keeps, and in how much water, as printed. None for cattle was found: all are of horses."""

import pytest

from store.book.opening import Book
from store.book.words import Air
from store.herd.forecast import HOT_FROM_C
from store.herd.soaking import WATER_PER_KG, SoakingSheet
from store.husbandry.units import celsius
from store.husbandry.why import Printed, Source, example
from tests.store.herd.filled import filled, id_of, register

EQUUS = Source(
    "pressreader.com/usa/equus/20150201/281960311136811: within 12 h at most; hot and humid, it ferments in 2 h"
)
ARTICLE = Source(
    "ntro.it.com, how-long-is-beet-pulp-good-for-once-soaked: 12 h where hot, 24 h below 70 F, up to 48 h in winter"
)
HORSE = Source("thehorse.com/181856/how-to-soak-beet-pulp-for-horses: twice as much water as pulp")
PELLETS = Source("listentoyourhorse.com, how to soak feed, alfalfa, timothy or grass pellets: 2 of water for 1")
MOST_H: tuple[tuple[Air, Printed], ...] = (
    (Air.HOT, example(2, 0, EQUUS)), (Air.MILD, example(12, 0, EQUUS)), (Air.COLD, example(12, 0, EQUUS)),
    (Air.HOT, example(12, 0, ARTICLE)), (Air.MILD, example(24, 0, ARTICLE)), (Air.COLD, example(48, 0, ARTICLE)),
)  # fmt: skip
"""Where two disagree, the stricter one counts. [h]"""
HOT_FROM = example(70, 0.5, ARTICLE)
WATER = (example(2, 0, HORSE), example(2, 0, PELLETS))
CHECKED = {"soak": (*(each for _, each in MOST_H), HOT_FROM, *WATER)}


@pytest.mark.parametrize("air", Air)
def test_a_feed_that_has_no_rule_starts_with_the_strictest_that_is_printed(book: Book, air: Air) -> None:
    """And what stands there can be written as it stands."""
    found = register(book)
    sheet = SoakingSheet(found, id_of(found, "feed_as", "grass hay"))
    rows = {row.values["air"]: row.values for row in sheet.rows(filled(sheet).answers())}
    assert rows[air]["most_h"] == min(each.gives for of, each in MOST_H if of is air)


def test_hot_air_and_water_are_as_printed() -> None:
    """70 F, and two of water for one of feed."""
    assert celsius(HOT_FROM.gives) == pytest.approx(HOT_FROM_C, abs=HOT_FROM.within)
    assert all(each.gives == WATER_PER_KG for each in WATER)
