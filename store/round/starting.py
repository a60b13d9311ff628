"""What is still to be put to soak for the next feeding round: from when, until when, and what it means to begin now."""

from datetime import datetime, timedelta

from msgspec import Struct

from store.book.facts.feed import Feed
from store.book.snapshot import Snapshot
from store.book.words import State
from store.husbandry.soak import start_window
from store.round.planning import Planning
from store.round.soak import soak_starts
from store.round.steps import SoakStartStep


class StartDue(Struct, frozen=True):
    """A feed to be put to soak, and what it comes to at a moment. dry_kg, water_kg: water None without a rule. [kg]

    earliest, latest: begun between them it is soft, and not past its limit, when the next feeding round begins.
    ready_at: soft from then on, begun at that moment. late: so long after the round begins; zero: in time.
    None: the farm has no rule for the feed, or has not said when that round begins.
    """

    step: SoakStartStep
    feeds_at: datetime | None
    earliest: datetime | None
    latest: datetime | None
    ready_at: datetime | None
    late: timedelta | None

    @property
    def feed(self) -> Feed:
        """What is put to soak."""
        return self.step.feed

    @property
    def dry_kg(self) -> float:
        """How much of it, dry."""
        return self.step.due_kg

    @property
    def water_kg(self) -> float | None:
        """And how much water."""
        return self.step.water_kg


def starts_due(snapshot: Snapshot, now: datetime) -> tuple[StartDue, ...]:
    """What is not yet put to soak for the round after this one, by feed."""
    steps = soak_starts(Planning(snapshot, snapshot.counts()))
    return tuple(begun_at(step, next_begins(snapshot), now) for step in steps if step.state is State.OPEN)


def begun_at(step: SoakStartStep, feeds_at: datetime | None, at: datetime) -> StartDue:
    """What it comes to, put to soak at a moment. feeds_at: when the round that it is for begins, None: not said."""
    if step.limit is None:
        return StartDue(step, feeds_at, None, None, None, None)
    ready_at = at + timedelta(hours=step.limit.least_h)
    if feeds_at is None:
        return StartDue(step, None, None, None, ready_at, None)
    window = start_window(feeds_at, step.limit.least_h, step.limit.most_h)
    late = max(ready_at - feeds_at, timedelta())
    return StartDue(step, feeds_at, window.earliest, window.latest, ready_at, late)


def next_begins(snapshot: Snapshot) -> datetime | None:
    """When the feeding round after this one usually begins; None where the farm has not said it."""
    return snapshot.farm.round_begins(snapshot.turn.after())
