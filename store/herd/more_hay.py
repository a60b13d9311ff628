"""How much more hay a cold night asks for, for a few rounds; capped by appetite and by the farm's own limits.

Forage only: more grain at once makes cattle sick, and does not warm them.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime

from msgspec import Struct

from store.book.drafts import RowDraft
from store.herd.outside import Hay, OutsidePen
from store.herd.stretch import Stretch

LEAST_PERCENT = 1.0
"""Less than this nobody can weigh out. Common practice. [%]"""


class Limits(Struct, frozen=True):
    """What holds an addition back. most_percent: of what they get now; step_kg: a head and meal, None: no limit."""

    most_percent: float
    step_kg: float | None = None


class More(Struct, frozen=True):
    """One feed of one slot: what a head gets now and would get. [kg] limit: what held it back, in words."""

    hay: Hay
    kg: float
    limit: str = ""

    @property
    def percent(self) -> float:
        """More than without it."""
        return (self.kg / self.hay.course.lasting_kg - 1) * 100

    @property
    def changes(self) -> bool:
        """Whether a head gets another amount than now."""
        course = self.hay.course
        return course.lasting_kg != self.kg or course.lasting_kg != course.now_kg


def more_hay(pen: OutsidePen, asked_percent: float, limits: Limits) -> tuple[More, ...]:
    """Every hay of a pen, with so much more of it as the cold asks for and they can eat."""
    held = [(asked_percent, ""), (limits.most_percent, "the most you allow")]
    if pen.spare_percent is not None:
        held.append((pen.spare_percent, "all that they can eat"))
    return tuple(_more(hay, held, limits.step_kg) for hay in pen.hay)


def _more(hay: Hay, held: Sequence[tuple[float, str]], step_kg: float | None) -> More:
    lasting_kg = hay.course.lasting_kg
    steps = [] if step_kg is None else [(step_kg / lasting_kg * 100, "your limit for one step")]
    percent, limit = min((*held, *steps), key=lambda each: each[0])
    return More(hay, lasting_kg if percent < LEAST_PERCENT else lasting_kg * (1 + percent / 100), limit)


def is_left_alone(more: More, stretch: Stretch) -> bool:
    """Whether a planned change of this feed falls into these rounds: then it is left to that change."""
    return more.changes and any(row.begins_at < stretch.ends(more.hay.slot) for row in more.hay.course.planned)


def plan_rows(more: More, stretch: Stretch) -> Iterator[RowDraft]:
    """The rows that give it in these rounds, and those that put the old amount back after them."""
    if not more.changes or is_left_alone(more, stretch):
        return
    lasting_kg, ends = more.hay.course.lasting_kg, stretch.ends(more.hay.slot)
    yield _row(more, more.kg, stretch.begins(more.hay.slot))
    for row in more.hay.course.passing:  # of an earlier forecast: it says nothing any more
        yield _row(more, more.kg if row.begins_at < ends else lasting_kg, row.begins_at)
    yield _row(more, lasting_kg, ends)


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
