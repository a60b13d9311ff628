"""The head of the page: the sign of how the ration stands, the name, and what is known of the animal or the pen."""

from collections.abc import Iterator

from store.book.words import Stage, Units
from store.herd.condition import points_words
from store.ration.parts import Head
from store.round.dialect import said
from store.round.saying import weight
from tui.page import Line, Role, Size, Span, beside, large_lines, wrapped
from tui.ration.seen import Seen
from tui.ration.verdict import sign_lines, sign_of, widest


def head_lines(seen: Seen, size: Size) -> list[Line]:
    """The sign, as large as there is room for, the name beside it, and the facts; a name without room is plain."""
    sign = sign_of(seen.case, seen.after)
    said = sign_lines(sign, size.width - 3) if sign else []
    facts = ", ".join(facts_of(seen))
    column = size.width - widest(said) - 2 if said else size.width
    name = large_lines(seen.case.name, Role.NAME, column - 4)
    if len(name) == 1 and said:
        head = wrapped(f"{seen.case.name.upper()}  {facts}", size.width, Role.STRONG, "  ")
        return [*head, *((Span("  "), *each) for each in said)]
    left = [(Span("  "), *each) for each in name]
    return [*(beside(left, said, column) if said else left), *wrapped(facts, size.width, Role.TEXT, "  ")]


def facts_of(seen: Seen) -> Iterator[str]:
    """What the needs hang on, in a few words each."""
    heads = seen.case.heads
    if len(heads) == 1:
        yield from _of_one(heads[0], seen)
    elif heads:
        yield f"{len(heads)} heads, fed as one"
        yield from _mean(heads, seen.farm.units)
    else:
        yield "nobody stands here"


def _of_one(head: Head, seen: Seen) -> Iterator[str]:
    units = seen.farm.units
    yield said(head.animal.stage.value, seen.farm.dialect)
    yield f"{weight(head.weight_kg.amount, units)}" if head.weight_kg else "weight not known"
    yield condition_words(head)
    if head.days_in_milk:
        yield f"day {head.days_in_milk.amount:.0f}"
    if head.milk_kg:
        kg = weight(head.milk_kg.amount, units)
        yield f"drinks {kg} milk" if head.animal.stage is Stage.CALF else f"{kg} milk incl. calf"
    if head.days_in_calf:
        yield f"{head.days_in_calf.amount:.0f} days in calf"
    if head.gain_kg_day:
        yield f"to gain {weight(head.gain_kg_day.amount, units)} a day"


def _mean(heads: tuple[Head, ...], units: Units) -> Iterator[str]:
    weights = [head.weight_kg.amount for head in heads if head.weight_kg]
    if weights:
        yield f"{weight(sum(weights) / len(weights), units)} in the mean"
    if len(weights) < len(heads):
        yield f"{len(heads) - len(weights)} without a weight"
    gains = [head.gain_kg_day.amount for head in heads if head.gain_kg_day]
    if gains:
        yield f"to gain {weight(sum(gains) / len(gains), units)} a day"


def condition_words(head: Head) -> str:
    """`condition 3 of 5, goal 3.25`."""
    goal = f", goal {head.condition_goal.amount:g}" if head.condition_goal else ""
    if head.condition is None:
        return f"condition not scored{goal}"
    return f"condition {points_words(head.condition.amount, head.animal.stage)}{goal}"
