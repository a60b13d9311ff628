"""A feed in the feed room: what is there, how many rounds it lasts, and how far book and scale may lie apart."""

from collections.abc import Iterable

from msgspec import Struct

from store.husbandry.bounds import above_zero, at_least_zero
from store.husbandry.why import ARITHMETIC, Source, Sure, equation

SCALE_KG, SCALE_PART = 0.3, 0.01
"""Book and scale agree within the larger of these: kilograms, and a part of what is there. Common practice."""
RATIO_LEAST, RATIO_MOST = 0.6, 1.6
"""A measure that held less or more than this of what the book believed would have been seen. Common practice."""
ROUNDS_A_DAY = 2
DUST_KG = 1e-6
"""Sums of kilograms are not exact; nobody runs short by a milligram."""


def in_bucket_kg(moves_kg: Iterable[float]) -> float:
    """What is in a soak bucket, by what went in (above zero) and came out (below) in the order it happened. [kg]

    Never below zero: what was fed beyond it was never written down as put in.
    """
    found = 0.0
    for kg in moves_kg:
        found = max(found + kg, 0.0)
    return found if found > DUST_KG else 0.0


@equation("what is there", "weighed + delivered - fed - lost", "kg", ARITHMETIC)
def there_kg(weighed_kg: float, delivered_kg: float, fed_kg: float, lost_kg: float) -> float:
    """What must be there of a feed: weighed, and since then delivered, fed and lost. [kg]

    Below zero where more was fed than the book ever saw come in. Raises ValueError below zero of any of the four.
    """
    at_least_zero(weighed_kg=weighed_kg, delivered_kg=delivered_kg, fed_kg=fed_kg, lost_kg=lost_kg)
    return weighed_kg + delivered_kg - fed_kg - lost_kg


class Lasting(Struct, frozen=True):
    """For how many rounds to come a feed is enough, and by how much the next one is short. [kg]

    short_kg None: enough for every round that was looked at. used_kg: what those rounds take together.
    """

    rounds: int
    short_kg: float | None
    used_kg: float


def lasting(there_kg: float, needs_kg: Iterable[float]) -> Lasting:
    """How many rounds of these needs a stock covers, from the next one on. [kg]

    needs_kg: of each round to come in turn; it may be endless only where it is more than nothing again and again.
    A stock below zero covers no round that needs anything. Raises ValueError for a need below zero.
    """
    used_kg, rounds = 0.0, 0
    for need_kg in needs_kg:
        at_least_zero(need_kg=need_kg)
        left_kg = max(there_kg - used_kg, 0.0)
        if need_kg > left_kg + DUST_KG:
            return Lasting(rounds, need_kg - left_kg, used_kg)
        used_kg, rounds = used_kg + need_kg, rounds + 1
    return Lasting(rounds, None, used_kg)


@equation("rounds that it lasts", "how many of these rounds it covers, one after the other", "rounds", ARITHMETIC)
def rounds_covered(there_kg: float, **needs_kg: float) -> float:
    """As `lasting`, of rounds that are given one by one. [kg] Raises ValueError as that."""
    return lasting(there_kg, needs_kg.values()).rounds


@equation("short by", "what the first round that it does not cover needs - what is left for it", "kg", ARITHMETIC)
def short_by_kg(there_kg: float, **needs_kg: float) -> float:
    """The same for what lacks in the first round that is short; 0: none is. [kg] Raises ValueError as `lasting`."""
    return lasting(there_kg, needs_kg.values()).short_kg or 0.0


@equation("a day", "what some days take / how many days", "kg", ARITHMETIC)
def a_day_of(kg: float, days: float) -> float:
    """What a day takes on the average. [kg] Raises ValueError below zero, and for no day."""
    at_least_zero(kg=kg)
    above_zero(days=days)
    return kg / days


@equation("full days", "the rounds / 2, whole days only", "full days", ARITHMETIC)
def full_days(rounds: float) -> float:
    """Whole days of both rounds. [d] Raises ValueError below zero."""
    at_least_zero(rounds=rounds)
    return rounds // ROUNDS_A_DAY


@equation(
    "book and scale agree within", "0.3 kg, or 1 % of what is there if that is more", "kg",
    Source("what a scale and a level scoop can be out by", Sure.PRACTICE),
)  # fmt: skip
def agree_within_kg(stock_kg: float) -> float:
    """How far book and scale may lie apart and still agree: 0.3 kg, or 1 % of what is there. [kg] Common practice."""
    return max(SCALE_KG, SCALE_PART * abs(stock_kg))


def ratio_needed(book_kg: float, weighed_kg: float, told_kg: float) -> float | None:
    """By how much a measure must have held more (above 1) than the book believed, so that book and scale agree.

    book_kg, weighed_kg: what should be there, and what is. told_kg: what was fed by that measure, as the book has it.
    None where nothing was fed by it, or where it would have had to hold less than 0.6 or more than 1.6 of that.
    Raises ValueError for told_kg or weighed_kg below zero.
    """
    at_least_zero(weighed_kg=weighed_kg, told_kg=told_kg)
    if told_kg <= DUST_KG:
        return None
    ratio = 1 + (book_kg - weighed_kg) / told_kg
    return ratio if RATIO_LEAST <= ratio <= RATIO_MOST else None
