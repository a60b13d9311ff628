"""What stands in the soak buckets of a round: how much, found fit or not, and what the clock says of it."""

from collections.abc import Iterator, Mapping
from datetime import datetime, timedelta
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Subject
from store.book.facts.feed import Batch, Feed, Portion, SoakLimit
from store.book.figures import FedFigure, SoakedFigure
from store.book.snapshot import Snapshot, Written
from store.book.words import Kind, Soak, State
from store.husbandry.soak import Ripeness, hours_soaked, part_there, ripeness

THROWN_OUT_WHY = ("sour", "mouldy", "frozen", "too old", "spilt")
"""Why a batch is thrown out; anything else is typed in words."""
WHY_MOST = 80
"""So many letters fit into such a reason."""
CHECK, START = "check", "start"
"""The two occasions of a round at one bucket."""


class Bucket(Struct, frozen=True):
    """A soaked feed of this round. [kg dry]

    due_kg: what all plans of the round take. batch None: nothing was written down as put to soak.
    found: what the look at it found; None: nobody has looked. fed_kg: fed of it in this round already.
    """

    feed: Feed
    due_kg: float
    batch: Batch | None
    found: Soak | None
    fed_kg: float

    @property
    def part(self) -> float:
        """The part of what is due that was put to soak; 1 where that is not known."""
        return part_there(self.batch.dry_kg, self.due_kg) if self.batch else 1.0


def read_buckets(snapshot: Snapshot, counts: Mapping[UUID, Written]) -> Iterator[Bucket]:
    """One for each soaked feed that this round gives, by name."""
    for feed, due_kg in needed(snapshot, snapshot.portions):
        step_id = snapshot.turn.step_id(snapshot.farm.id, Kind.SOAK, Subject(feed_id=feed.id).id, CHECK)
        found = _found(counts.get(step_id))
        yield Bucket(feed, due_kg, snapshot.batches.get(feed.id), found, _fed_kg(feed, counts))


def needed(snapshot: Snapshot, portions: Mapping[UUID, tuple[Portion, ...]]) -> Iterator[tuple[Feed, float]]:
    """Each soaked feed of some plans, and its dry weight over all heads, where any is due. [kg]"""
    sums: dict[UUID, float] = {}
    for portion, heads in takers(snapshot, portions):
        sums[portion.feed.id] = sums.get(portion.feed.id, 0.0) + portion.due_kg * heads
    for feed in sorted((snapshot.feeds[id_] for id_ in sums), key=lambda feed: feed.name):
        if sums[feed.id] > 0:
            yield feed, sums[feed.id]


def takers(snapshot: Snapshot, portions: Mapping[UUID, tuple[Portion, ...]]) -> Iterator[tuple[Portion, int]]:
    """Each portion of a soaked feed, and for how many heads: an animal is one, a pen as many as stand in it."""
    kept = {animal.id for animal in snapshot.animals}
    for subject_id, plan in portions.items():
        heads = 1 if subject_id in kept else len(snapshot.heads(subject_id))
        yield from ((portion, heads) for portion in plan if portion.feed.soaked)


def _found(check: Written | None) -> Soak | None:
    looked = check.the(SoakedFigure) if check and check.state is State.DONE else None
    return looked.act if looked else None


def _fed_kg(feed: Feed, counts: Mapping[UUID, Written]) -> float:
    """What this round has fed of it so far, as the entries that count have it. [kg]"""
    done = (entry for entry in counts.values() if entry.state is State.DONE)
    return sum(fed.given_kg or 0.0 for entry in done for fed in entry.of(FedFigure) if fed.feed_id == feed.id)


class Soaking(Struct, frozen=True):
    """How a batch stands by the clock. stood_h None: nothing was written of when it was put to soak. [h]

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
