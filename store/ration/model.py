"""A ration as a small integer programme: whole quarters of a measure in each meal, limits that are sums of them.

It knows nothing of cows: `mix.py` makes it of a case. Every limit is a row of so much for each quarter; a share of the
whole is one too, as (what counts) - share x (all of it) <= 0.
"""

from enum import StrEnum

from msgspec import Struct


class Kind(StrEnum):
    """What gives way first where nothing fits: a need may stay short, a limit is for safety."""

    NEED = "need"
    LIMIT = "limit"


WEIGHT = {Kind.NEED: 1.0, Kind.LIMIT: 100.0}
"""A broken limit counts so much more than a need that is short by the same part. Ours: safety comes first."""


class Row(Struct, frozen=True):
    """One need or limit: the sum of per_quarter x quarters lies between least and most; None: no such bound.

    scale: what one whole of it is, so that a shortage in grams and one in megacalories weigh alike; above 0.
    """

    name: str
    kind: Kind
    per_quarter: tuple[float, ...]
    least: float | None
    most: float | None
    scale: float


class Model(Struct, frozen=True):
    """Choices are the feeds in each meal. most: quarters of each, whole. now: quarters as they are given today.

    cost: of a quarter of each, what is to be least; change_weight: what a quarter more or less than now counts.
    whole: False where a choice need not be whole quarters, as hay that is eaten free. fresh: the choices, by place, of
    each feed that is not given now: to begin one counts fresh_weight of change, however little of it.
    """

    rows: tuple[Row, ...]
    most: tuple[float, ...]
    now: tuple[float, ...]
    cost: tuple[float, ...]
    change_weight: tuple[float, ...]
    whole: tuple[bool, ...]
    fresh: tuple[tuple[int, ...], ...] = ()
    fresh_weight: float = 0.0

    def change(self, quarters: tuple[float, ...]) -> float:
        """How much some quarters change of what is given now."""
        moved = zip(self.change_weight, quarters, self.now, strict=True)
        begun = sum(any(quarters[at] for at in feed) for feed in self.fresh)
        return sum(weight * abs(count - now) for weight, count, now in moved) + begun * self.fresh_weight


class Solved(Struct, frozen=True):
    """Quarters of each choice. amiss: by how much each row is missed, in its own unit; below zero short, above over.

    proven False: time ran out, and a better one may exist. score: what was made least.
    """

    quarters: tuple[float, ...]
    score: float
    amiss: tuple[tuple[str, float], ...] = ()
    proven: bool = True


TOLERANCE = 1e-6
"""A row is kept where it is missed by less than this part of its scale: the solver's own precision."""


def missed(row: Row, quarters: tuple[float, ...]) -> float:
    """By how much a row is missed, in its own unit: below zero short, above zero over, 0 where it is kept."""
    found = sum(each * count for each, count in zip(row.per_quarter, quarters, strict=True))
    if row.least is not None and found < row.least - TOLERANCE * row.scale:
        return found - row.least
    if row.most is not None and found > row.most + TOLERANCE * row.scale:
        return found - row.most
    return 0.0
