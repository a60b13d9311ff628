"""How much more hay a cold night asks for, for a few rounds; capped by appetite and by the farm's own limits.

Forage only: more grain at once makes cattle sick, and does not warm them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from store.book.drafts import RowDraft
from store.herd.outside import Hay, OutsidePen
from store.herd.stretch import Stretch

LEAST_PERCENT = 1.0
"""Less than this nobody can weigh out. Common practice. [%]"""


@dataclass(frozen=True, slots=True)
class Limits:
    """What holds an addition back. most_percent: of what they get now; step_kg: a head and meal, None: no limit."""

    most_percent: float
    step_kg: float | None = None


@dataclass(frozen=True, slots=True)
class More:
    """One feed of one slot: what a head gets now and would get. [kg] limit: what held it back, in words."""

    hay: Hay
    kg: float
    limit: str = ""

    @property
    def percent(self) -> float:
        """More than without it."""
        return (self.kg / self.hay.lasting_kg - 1) * 100

    @property
    def changes(self) -> bool:
        """Whether a head gets another amount than now."""
        return self.hay.passing or self.kg != self.hay.lasting_kg


def more_hay(pen: OutsidePen, asked_percent: float, limits: Limits) -> tuple[More, ...]:
    """Every hay of a pen, with so much more of it as the cold asks for and they can eat."""
    held = [(asked_percent, ""), (limits.most_percent, "the most you allow")]
    if pen.spare_percent is not None:
        held.append((pen.spare_percent, "all that they can eat"))
    return tuple(_more(hay, held, limits.step_kg) for hay in pen.hay)


def _more(hay: Hay, held: Sequence[tuple[float, str]], step_kg: float | None) -> More:
    steps = [] if step_kg is None else [(step_kg / hay.lasting_kg * 100, "your limit for one step")]
    percent, limit = min((*held, *steps), key=lambda each: each[0])
    if percent < LEAST_PERCENT:
        return More(hay, hay.lasting_kg, limit)
    return More(hay, hay.lasting_kg * (1 + percent / 100), limit)


def is_left_alone(more: More, stretch: Stretch) -> bool:
    """Whether a planned change of this feed falls into these rounds: then it is left to that change."""
    ends = stretch.ends(more.hay.slot)
    rows = more.hay.portion.rows
    return more.changes and not more.hay.passing and any(stretch.now < row.begins_at < ends for row in rows)


def plan_rows(more: More, stretch: Stretch) -> Iterator[RowDraft]:
    """The rows that give it in these rounds, and the one that puts the old amount back after them."""
    if not more.changes or is_left_alone(more, stretch):
        return
    begins, ends = stretch.begins(more.hay.slot), stretch.ends(more.hay.slot)
    yield _row(more, more.kg, begins)
    for row in more.hay.portion.rows:
        if begins < row.begins_at < ends:  # where an earlier forecast went back
            yield _row(more, more.kg, row.begins_at)
    yield _row(more, more.hay.lasting_kg, ends)


def _row(more: More, due_kg: float, begins_at: datetime) -> RowDraft:
    hay, portion = more.hay, more.hay.portion
    values = {
        "slot": hay.slot,
        "animal_id": hay.subject.animal_id,
        "pen_id": hay.subject.pen_id,
        "feed_id": portion.feed.id,
        "measure_id": portion.told.id if portion.told else None,
        "position": portion.position,
        "due_kg": due_kg,
        "begins_at": begins_at,
    }
    return RowDraft("feed_plan", values)
