"""The head of the page: the name and how its energy stands, both large, and what is known of the animal or the pen."""

from collections.abc import Iterator

from store.book.words import Stage, Units
from store.herd.condition import points_words
from store.ration.parts import Head, Part, Verdict
from store.round.dialect import said
from store.round.saying import weight
from tui.page import Line, Role, Size, Span, beside, large_lines, width_of, wrapped
from tui.ration.said import line_of, needs_are_kept, percent_of
from tui.ration.seen import Seen
from tui.walk.title import ROOMY

ENERGY = "ENERGY"


def head_lines(seen: Seen, size: Size) -> list[Line]:
    """The name, the verdict, and the facts below."""
    verdict, role = verdict_words(seen)
    first, *rest = wrapped(", ".join(facts_of(seen)), size.width, Role.TEXT, "  ")
    left = size.width - width_of(first) - len(ENERGY) - 2
    of = (Span(" " * left + ENERGY, Role.QUIET),) if verdict and left > 0 else ()
    return [*_large(seen.case.name, verdict, role, size), (*first, *of), *rest]


def verdict_words(seen: Seen) -> tuple[str, Role]:
    """`SHORT 92%`: how the energy of what is new stands; nothing where no need is kept."""
    energy = line_of(seen.after, Part.ENERGY)
    if energy is None:
        return (Verdict.NOT_KNOWN.upper() if needs_are_kept(seen.case) else ""), Role.WARNING
    if energy.verdict is Verdict.ENOUGH:
        return energy.verdict.upper(), Role.NAME
    percent = percent_of(energy)
    return energy.verdict.upper() + ("" if percent is None else f" {percent:.0f}%"), Role.WARNING


def _large(name: str, verdict: str, role: Role, size: Size) -> list[Line]:
    """Side by side; where the name is too long for that, it stands in plain letters beside the verdict."""
    for scale in (2, 1) if size.width >= ROOMY.width and size.height >= ROOMY.height else (1,):
        right = large_lines(verdict, role, size.width - 4, scale) if verdict else []
        column = size.width - max(map(width_of, right), default=0) - 2
        left = large_lines(name, Role.NAME, column - 3)
        if len(left) > 1:
            break
    else:
        left = wrapped(name.upper(), column - 1, Role.NAME, "")
    return beside([(Span("  "), *each) for each in left], right, column) if right else [(Span("  "), *e) for e in left]


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
    if head.condition is None:
        return "condition not scored"
    goal = f", goal {head.condition_goal.amount:g}" if head.condition_goal else ""
    return f"condition {points_words(head.condition.amount, head.animal.stage)}{goal}"
