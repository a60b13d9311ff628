"""One reading of the book: what every statement of a round is asked with."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import Any

from store.book.clock import micros
from store.book.desk import FoundRow, ReadingDesk
from store.book.facts.farm import FarmFacts
from store.book.reading import facts
from store.book.turn import Turn

SHARED_BEFORE, QUARTERS_BEFORE = timedelta(days=30), timedelta(days=30)
"""A pair that ended, or a quarter that was found so, longer ago says nothing of this round."""

FOR_EVER = 2**63 - 1
"""Later than any moment. [microseconds]"""


class Reading:
    """One reading of the book: every statement with the same moment and round."""

    def __init__(self, desk: ReadingDesk, turn: Turn, now: datetime) -> None:
        """For a round, as the book stands at a moment."""
        self.desk = desk
        self.farm: FarmFacts = facts.read_facts(desk, now)
        self.values: dict[str, Any] = {
            "at": micros(now),
            "air": self.farm.air.value,
            "known": FOR_EVER,
            "weeks_ago": micros(now - QUARTERS_BEFORE),
            **named(turn),
        }

    def rows(self, statement: str, **more: Any) -> Sequence[FoundRow]:
        """What a statement finds."""
        return self.desk.rows(statement, self.values | more)


def named(turn: Turn) -> dict[str, str]:
    """A round as its statements ask for it."""
    return {"day": turn.day.isoformat(), "slot": turn.slot}
