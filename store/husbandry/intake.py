"""What was really eaten: after what was left, from a tub that stands free; and the keeper's own rule by milk."""

from collections.abc import Sequence

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import ARITHMETIC, Source, Sure, equation

OWN_RULE = Source("the keeper's own rule", Sure.PRACTICE)
REFUSALS_IN_A_ROW = 3
"""So many feedings in a row of which something was left are told. Common practice."""


@equation("eaten", "given - left", "kg", ARITHMETIC)
def eaten_kg(given_kg: float, left_kg: float) -> float:
    """What was eaten of what was given. [kg] Raises ValueError below zero, or where more was left than given."""
    at_least_zero(given_kg=given_kg, left_kg=left_kg)
    if left_kg > given_kg:
        raise ValueError(f"left_kg is {left_kg}; only {given_kg} was given")
    return given_kg - left_kg


def refused(left_kg: Sequence[float | None]) -> bool:
    """Whether of each of the last three feedings something was left. [kg] newest first; None: nobody looked."""
    last = left_kg[:REFUSALS_IN_A_ROW]
    return len(last) == REFUSALS_IN_A_ROW and all(left is not None and left > 0 for left in last)


@equation("a head and day", "what is gone x 1000 / heads times days", "g", ARITHMETIC)
def a_head_g(gone_kg: float, head_days: float) -> float:
    """What each head took a day. [g] Raises ValueError below zero, and where no head stood there."""
    at_least_zero(gone_kg=gone_kg, head_days=head_days)
    if head_days == 0:
        raise ValueError("head_days is 0; somebody must have stood there")
    return gone_kg * 1000 / head_days


def a_head_and_day_g(gone_kg: float, head_days: float) -> float | None:
    """What each head took a day from what stands free. [g] None where no head stood there.

    gone_kg: by weighing. head_days: heads times days, over every pen where it stood. Raises ValueError below zero.
    """
    at_least_zero(gone_kg=gone_kg, head_days=head_days)
    return a_head_g(gone_kg, head_days) if head_days else None


@equation("by milk", "(milk a day - so much) x feed for a kilogram of milk", "kg", OWN_RULE)
def by_milk_kg(milk_kg_day: float, kg_per_kg: float, above_kg: float) -> float:
    """The keeper's own rule: so much feed a day for each kilogram of milk above some. [kg a day]

    Raises ValueError below zero.
    """
    at_least_zero(milk_kg_day=milk_kg_day, kg_per_kg=kg_per_kg, above_kg=above_kg)
    return max(milk_kg_day - above_kg, 0.0) * kg_per_kg


@equation("by weight", "body weight x percent / 100", "kg", OWN_RULE)
def by_weight_kg(weight_kg: float, percent: float) -> float:
    """The keeper's own rule: so many percent of the body weight a day. [kg a day] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg, percent=percent)
    return weight_kg * percent / 100
