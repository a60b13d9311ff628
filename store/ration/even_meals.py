"""The same mix with each feed shared out over the meals as evenly as the limits let it be: it costs the same."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import inf

from msgspec.structs import replace

from store.ration.choices import Choice
from store.ration.model import Model, Solved, missed
from store.ration.solving import Least

SAME = 1e-9


def evened(model: Model, found: Sequence[Choice], solved: Solved, least: Least) -> Solved:
    """Feed by feed; what a row is missed by stays as it is, and where that is to be least so does the change.

    Two meals; of an odd quarter the first gets more.
    """
    change = model.change(solved.quarters) if least is Least.CHANGE else inf
    quarters = solved.quarters
    for at, (one, other) in enumerate(pairwise(found)):
        if one.feed is other.feed:
            shared = (_with(quarters, at, first) for first in _from_the_middle(int(quarters[at] + quarters[at + 1])))
            fit = (
                each for each in shared if model.change(each) <= change + SAME and _amiss(model, each) == solved.amiss
            )
            quarters = next(fit, quarters)
    return replace(solved, quarters=quarters)


def _from_the_middle(together: int) -> Iterator[int]:
    """How many of some quarters the first meal gets, the most even first."""
    yield from sorted(range(together + 1), key=lambda first: (abs(together - 2 * first), -first))


def _with(quarters: tuple[float, ...], at: int, first: int) -> tuple[float, ...]:
    together = quarters[at] + quarters[at + 1]
    return (*quarters[:at], float(first), together - first, *quarters[at + 2 :])


def _amiss(model: Model, quarters: tuple[float, ...]) -> tuple[tuple[str, float], ...]:
    each = ((row.name, missed(row, quarters)) for row in model.rows)
    return tuple(row for row in each if row[1])
