"""Whether a time that is typed for a round lies so far back that it is asked about."""

from datetime import datetime, timedelta

from store.book.snapshot import Snapshot, counting
from store.book.words import Kind, State

A_DAY = timedelta(days=1)


def done_before(snapshot: Snapshot) -> datetime | None:
    """When the round before this one was done with its last step; None where it has none that is done."""
    entries = counting(snapshot.last.entries).values()
    done = (each.happened_at for each in entries if each.state is State.DONE and each.kind is not Kind.ROUND)
    return max(done, default=None)


def is_long_ago(snapshot: Snapshot, at: datetime) -> bool:
    """Whether a moment is more than a day before the day of this round begins."""
    return at < snapshot.turn.day_begins(snapshot.farm.zone) - A_DAY
