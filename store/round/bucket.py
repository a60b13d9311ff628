"""What stands in a soak bucket at a moment, by the clock and the farm's own rule; whether it is fit, a look says."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from store.book.facts.feed import Batch, SoakLimit
from store.husbandry.soak import Ripeness, hours_soaked, ripeness

THROWN_OUT_WHY = ("sour", "mouldy", "frozen", "too old", "spilt")
"""Why a batch is thrown out; anything else is typed in words."""
WHY_MOST = 80
"""So many letters fit into such a reason."""


@dataclass(frozen=True, slots=True)
class Soaking:
    """How a batch stands. stood_h None: nothing was written of when it was put to soak. [h]

    ripe None: not known, or the farm has no rule for it; then neither ready_at nor past_at is known.
    """

    stood_h: float | None = None
    ripe: Ripeness | None = None
    ready_at: datetime | None = None
    past_at: datetime | None = None

    @property
    def word(self) -> str:
        """The state as it is said."""
        if self.stood_h is None:
            return "NOT KNOWN"
        return self.ripe.upper() if self.ripe else "NO RULE FOR IT"


def soaking_at(batch: Batch | None, limit: SoakLimit | None, now: datetime) -> Soaking:
    """How a batch stands at a moment."""
    if batch is None:
        return Soaking()
    stood_h = hours_soaked(batch.started_at, now)
    if limit is None:
        return Soaking(stood_h)
    ready_at, past_at = (batch.started_at + timedelta(hours=h) for h in (limit.least_h, limit.most_h))
    ripe = ripeness(batch.started_at, now, limit.least_h, limit.most_h)
    return Soaking(stood_h, ripe, ready_at, past_at)
