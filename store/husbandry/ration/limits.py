"""The most of a feed that is usual, for one head and day, by the row of the table that it resembles.

They are starting values: the farm's own limit of a feed goes before them.
"""

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from store.husbandry.feeds.table import GRAINS
from store.husbandry.ration.grain import HAY_SUFFERS_PERCENT, MINNESOTA, MISSISSIPPI, MOST_PERCENT, grain
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Source, Sure, Value, given

VIRGINIA = Source("sites.ext.vt.edu/newsletter-archive/dairy/1996-11/knowfeed.html, know your feeds")
COTTON = Source("cottoninc.com, whole cottonseed, feeding limitations: 5 to 8 lb a day, about 15 % of the dry matter")
DISTILLERS = Source("en.engormix.com a34192 and dairyherd.com, 20 percent distillers OK for lactating cows")
FORSTER = Source(
    "Forster et al. 1994, Anim. Feed Sci. Technol. 47:259: 0.8 % of weight cut intake; the share is ours", Sure.ASSUMED
)
OIL = Source(
    "0.4 kg of soya oil cut milk fat, 3 % of it cut fibre digestion 9 % (fwi.co.uk; mendeley.com); ours is below",
    Sure.ASSUMED,
)
CITRUS = Source(
    "cattletoday.com/threads/55165, after Florida BUL829: up to 40 % if calcium and phosphorus are balanced"
)
MOLASSES = Source("at most 10 % of the diet, from 15 % on risk of scours", Sure.MEMORY)
ELLINBANK = Source("sgst.com.au/2016/02/how-much-concentrate: 8 kg in two feeds, large cows on pasture")
SMALL_FARM = Source("2 to 3 kg of concentrate in one meal on a small farm", Sure.MEMORY)
MEAL_LARGE_KG, MEAL_SMALL_KG = 4.0, 2.5
"""The most concentrate in one meal: of a large cow (ELLINBANK, half of 8 kg), of a small one (SMALL_FARM)."""
COW_FROM_KG, LARGE_FROM_KG = 300.0, 550.0
"""Nothing is printed of a lighter animal; from the second weight on a cow counts as large here. Assumed."""


class FeedMost(Struct, frozen=True):
    """The usual most of feeds like some rows. lb_day: as it lies. share_percent: of the dry matter of the day."""

    like: tuple[str, ...]
    source: Source
    lb_day: float | None = None
    share_percent: float | None = None


_GRAINS = tuple(row.name for row in GRAINS)
MOSTS = (
    FeedMost(("Whole cottonseed, linted",), VIRGINIA, lb_day=7.0),
    FeedMost(("Whole cottonseed, linted",), COTTON, share_percent=15.0),
    FeedMost(("Maize (corn) distillers with solubles",), VIRGINIA, lb_day=7.0),
    FeedMost(("Maize (corn) distillers with solubles",), DISTILLERS, share_percent=20.0),
    FeedMost(("Wheat middlings",), VIRGINIA, lb_day=5.0),
    FeedMost(("Soya (soybean) hulls",), VIRGINIA, lb_day=5.0),
    FeedMost(("Rice bran, full fat",), FORSTER, share_percent=15.0),
    FeedMost(("Vegetable oil, rice bran oil",), OIL, lb_day=0.25 / KG_PER_LB, share_percent=1.5),
    FeedMost(("Citrus pulp, dried",), CITRUS, share_percent=40.0),
    FeedMost(("Molasses, cane",), MOLASSES, share_percent=10.0),
)
"""Of a source that prints two ways of telling it, both: the stricter holds."""


def usual(resembles: str, weight_kg: Value | None = None, *, lives_on_forage: bool = False) -> Mapping[str, Value]:
    """The usual most of a feed like a row of the table, by the columns of a feed's own limits.

    `most_day_kg` (as it lies), `share_percent` (of the dry matter). weight_kg: hers, for what hangs on it, or None.
    lives_on_forage: she gives no milk that is sold or drunk and is not fattened: grain only as far as hay is still
    digested well.
    """
    found: dict[str, Value] = {}
    for each in MOSTS:
        if resembles in each.like:
            found |= _of(each)
    if resembles in _GRAINS and weight_kg:
        percent, source = (HAY_SUFFERS_PERCENT, MISSISSIPPI) if lives_on_forage else (MOST_PERCENT, MINNESOTA)
        share = given(percent, "share of her weight", "%", "a table", source)
        most = grain.of("usual most a day", weight_kg=weight_kg, percent=share)
        found["most_day_kg"] = replace(most, came="the usual limit")
    return found


def meal_most(weight_kg: Value | None) -> Value | None:
    """The usual most of loose feed in one meal of a cow. [kg] None: it is lighter than one.

    weight_kg None: not known, and then as a small cow.
    """
    if weight_kg and weight_kg.amount < COW_FROM_KG:
        return None
    large = weight_kg is not None and weight_kg.amount >= LARGE_FROM_KG
    amount, source = (MEAL_LARGE_KG, ELLINBANK) if large else (MEAL_SMALL_KG, SMALL_FARM)
    return given(amount, "usual most of a meal", "kg", "the usual limit", source)


def _of(most: FeedMost) -> dict[str, Value]:
    told = {"most_day_kg": (most.lb_day and round(most.lb_day * KG_PER_LB, 2), "kg"),
            "share_percent": (most.share_percent, "%")}  # fmt: skip
    return {
        column: given(amount, "usual most a day", unit, "the usual limit", most.source)
        for column, (amount, unit) in told.items()
        if amount is not None
    }
