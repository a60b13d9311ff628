"""What a feed is bought for costs in it: a kilogram of protein or of TDN, a megacalorie of net energy."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import ARITHMETIC, Source, equation, example

ALABAMA = Source("aces.edu, by-product feeds quick reference guide: $180 a ton, 90 % dry matter, 75 % TDN")
US_TON_LB = 2000.0


@equation(
    "price of a part", "price / (dry matter % x what it holds %)", "", ARITHMETIC,
    example(0.13, 0.005, ALABAMA, price_per_kg=180 / US_TON_LB, dm_percent=90.0, percent=75.0),
)  # fmt: skip
def price_of_part(price_per_kg: float, dm_percent: float, percent: float) -> float:
    """What a kilogram of protein, or of TDN, costs in a feed. The price is of the feed as it lies.

    Raises ValueError below zero, or where the feed holds none of it.
    """
    at_least_zero(price_per_kg=price_per_kg, dm_percent=dm_percent, percent=percent)
    if not dm_percent * percent:
        raise ValueError(f"percent is {percent}, dm_percent {dm_percent}; both must be above 0")
    return price_per_kg / (dm_percent / 100) / (percent / 100)


@equation("price of a Mcal", "price / (dry matter % x net energy of a kilogram)", "", ARITHMETIC)
def price_of_mcal(price_per_kg: float, dm_percent: float, nel_mcal: float) -> float:
    """The same of net energy. Raises ValueError as `price_of_part`."""
    return price_of_part(price_per_kg, dm_percent, nel_mcal * 100)
