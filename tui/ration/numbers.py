"""Every number on the page of a ration, in the order in which why lists them, each by what it is of."""

from collections.abc import Iterable, Iterator

from msgspec.structs import replace

from store.husbandry.why import Value, given
from store.ration.asked import ASSUMED
from store.ration.balance import SHORT_BELOW_PERCENT
from store.ration.parts import Balance, Case, Line, Part, RationFeed
from tui.ration.calf_lines import calf_numbers
from tui.ration.said import SHARES, line_of
from tui.ration.seen import Seen
from tui.ration.water_line import water_numbers

LIMITS = {
    "most_meal_kg": "most in a meal", "most_day_kg": "most in a day", "share_percent": "most of the dry matter",
    "step_kg": "most more at one step", "step_days": "days from step to step",
}  # fmt: skip
"""What the limits of a feed are called in a list."""
OF_HEAD = (
    "weight_kg", "condition", "condition_goal", "milk_kg", "days_in_milk", "days_in_calf", "gain_kg_day",
)  # fmt: skip
"""What the head of the page says of one animal."""


def all_numbers(seen: Seen) -> Iterator[Value]:
    """Of the marked feed what is on its line, then of the balance, then what the marked feed is made of.

    What the needs hang on is found by walking down from them; what no need hangs on comes last.
    """
    found = tuple(_with_names(seen))
    yield from (*found, *_not_reached(seen.case, found))


def _not_reached(case: Case, found: Iterable[Value]) -> Iterator[Value]:
    """The meal limit, and what the head of the page says of one animal, where no other number is made of it."""
    reached = {_sign(value) for each in found for value in _below(each)}
    of_head = [getattr(head, name) for head in case.heads[:1] for name in OF_HEAD if len(case.heads) == 1]
    limit = _named(case.meal_limit_kg, "most loose feed of a meal") if case.meal_limit_kg else None
    yield from (value for value in (limit, *of_head) if value and _sign(value) not in reached)


def _below(value: Value) -> Iterator[Value]:
    """It, and all that it is made of."""
    yield value
    for each in value.inputs.values():
        yield from _below(each)


def _sign(value: Value) -> tuple[float, str, str]:
    return value.amount, value.unit, value.came


def _with_names(seen: Seen) -> Iterator[Value]:
    if seen.feed:
        yield from _of_feed(seen.feed, seen.farm.currency)
    yield from _of_balance(seen.after, seen.farm.currency)
    yield from calf_numbers(seen)
    yield from water_numbers(seen)
    if seen.feed:
        yield from (_named(value, f"{value.name} in {seen.feed.feed.name}") for value in seen.feed.made.values())


def need_numbers(case: Case) -> Iterator[Value]:
    """What is needed, each part at least and at most."""
    for need in case.needs:
        yield from (value for value in (need.least, need.most) if value)


def _of_balance(balance: Balance, currency: str) -> Iterator[Value]:
    """For each part what is given, then what is needed of it; then the sums."""
    for each in balance.lines:
        yield from _of_line(each)
    if balance.lines:
        yield given(SHORT_BELOW_PERCENT, "enough begins at", "% of a need", "no scoop is more exact", ASSUMED)
    if line_of(balance, Part.DRY_MATTER) is None:
        yield _named(balance.eaten_kg, f"{Part.DRY_MATTER} given")
    if balance.cost:
        yield replace(balance.cost, name="cost a day", unit=currency)
    yield balance.biggest_meal_kg


def _of_line(line: Line) -> Iterator[Value]:
    part, need = line.need.part, line.need
    least = "at least" if need.unit in SHARES else "needed"
    named = ((line.has, "given"), (need.least, least), (need.most, "at most"))
    yield from (_named(value, f"{part} {words}") for value, words in named if value)


def _of_feed(feed: RationFeed, currency: str) -> Iterator[Value]:
    name = feed.feed.name
    found = ((getattr(feed.limits, field), words) for field, words in LIMITS.items())
    yield from (_named(value, f"{name}, {words}") for value, words in found if value)
    if feed.there_kg:
        yield _named(feed.there_kg, f"{name} on hand")
    if feed.price_per_kg:
        yield replace(feed.price_per_kg, name=f"price of {name}", unit=f"{currency}/kg" if currency else "")


def _named(value: Value, name: str) -> Value:
    return replace(value, name=name)
