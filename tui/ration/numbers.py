"""Every number on the page of a ration, in the order in which why lists them."""

from collections.abc import Iterator

from store.husbandry.why import Value
from store.ration.parts import Balance, Case, Head, RationFeed
from tui.ration.seen import Seen


def all_numbers(seen: Seen) -> Iterator[Value]:
    """Of the balance, then what the needs hang on, then what is known of the marked feed."""
    yield from balance_numbers(seen.after)
    for head in seen.case.heads:
        yield from _of_head(head)
    yield from (seen.case.meal_limit_kg,) if seen.case.meal_limit_kg else ()
    if seen.feed:
        yield from _of_feed(seen.feed)


def need_numbers(case: Case) -> Iterator[Value]:
    """What is needed, each part at least and at most."""
    for need in case.needs:
        yield from (value for value in (need.least, need.most) if value)


def balance_numbers(balance: Balance) -> Iterator[Value]:
    """For each part what is given, then what is needed of it; then the sums."""
    for each in balance.lines:
        yield from (value for value in (each.has, each.need.least, each.need.most) if value)
    yield balance.eaten_kg
    yield from (value for value in (balance.cost, balance.forage_percent) if value)
    yield balance.biggest_meal_kg


def _of_head(head: Head) -> Iterator[Value]:
    known = (
        head.weight_kg, head.condition, head.condition_goal, head.milk_kg, head.milk_fat_percent,
        head.milk_protein_percent, head.days_in_milk, head.days_in_calf, head.gain_kg_day, head.mature_kg,
    )  # fmt: skip
    yield from (value for value in known if value)


def _of_feed(feed: RationFeed) -> Iterator[Value]:
    limits = feed.limits
    known = (
        feed.price_per_kg, feed.there_kg, limits.most_meal_kg, limits.most_day_kg, limits.share_percent,
        limits.step_kg, limits.step_days,
    )  # fmt: skip
    yield from (value for value in (*known, *feed.made.values()) if value)
