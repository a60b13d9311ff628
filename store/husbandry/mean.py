"""Plain arithmetic that keeps its why: what fits besides, and means."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import ARITHMETIC, equation


@equation("weight as it lies", "dry matter / dry matter %", "kg", ARITHMETIC)
def as_it_lies_kg(dry_kg: float, dm_percent: float) -> float:
    """The weight of a feed that holds so much dry matter. [kg] Raises ValueError below zero, and for no dry matter."""
    at_least_zero(dry_kg=dry_kg, dm_percent=dm_percent)
    if not dm_percent:
        raise ValueError("dm_percent is 0; it must be above 0")
    return dry_kg / dm_percent * 100


@equation("what she can still eat", "(appetite - dry matter of the rest) / feeds that stand free", "kg", ARITHMETIC)
def room_left_kg(most_kg: float, rest_kg: float, feeds: float) -> float:
    """Dry matter that still fits, of each feed that stands free; none where the rest fills her. [kg]

    Raises ValueError below zero, and for no feed.
    """
    at_least_zero(most_kg=most_kg, rest_kg=rest_kg)
    return mean_of(max(most_kg - rest_kg, 0.0), feeds)


@equation("mean", "the sum / how many", "", ARITHMETIC)
def mean_of(together: float, count: float) -> float:
    """The mean of some. Raises ValueError for none."""
    if count <= 0:
        raise ValueError(f"count is {count}; it must be above 0")
    return together / count
