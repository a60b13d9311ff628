"""What feed costs: by its price, a day, a litre. Money is in the farm's own currency, and never converted."""

from store.husbandry.bounds import above_zero, at_least_zero
from store.husbandry.why import ARITHMETIC, equation


@equation("price of a kilogram", "the price of the delivery / its weight", "", ARITHMETIC)
def price_a_kg(price: float, kg: float) -> float:
    """What a kilogram costs. [money/kg] Raises ValueError below zero, and for no weight."""
    at_least_zero(price=price, kg=kg)
    if kg == 0:
        raise ValueError("kg is 0; a delivery with a price weighs something")
    return price / kg


@equation("cost", "the weight x the price of a kilogram", "", ARITHMETIC)
def cost_of(kg: float, price_per_kg: float) -> float:
    """What so much feed costs. [money] Raises ValueError below zero."""
    at_least_zero(kg=kg, price_per_kg=price_per_kg)
    return kg * price_per_kg


@equation("for each", "the cost / how many", "", ARITHMETIC)
def for_each(cost: float, count: float) -> float:
    """What it comes to for a day, or a litre. [money] Raises ValueError below zero, and for none."""
    at_least_zero(cost=cost)
    above_zero(count=count)
    return cost / count
