"""Soak steps at the bench: is what soaked fit to feed, and what must be put to soak for the next round."""

from collections.abc import Iterator, Mapping
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts.feed import Feed, Portion, Told
from store.book.words import Kind
from store.husbandry.soak import water_kg
from store.round.bucket import CHECK, START, needed
from store.round.planning import BENCH, Planning
from store.round.steps import SoakCheckStep, SoakStartStep


def soak_checks(planning: Planning) -> Iterator[SoakCheckStep]:
    """One for each soaked feed that this round gives."""
    for bucket in planning.buckets.values():
        yield SoakCheckStep(
            *planning.head(Kind.SOAK, Subject(feed_id=bucket.feed.id), bucket.feed.name, BENCH, CHECK),
            feed=bucket.feed,
            due_kg=bucket.due_kg,
            batch=bucket.batch,
            limit=planning.snapshot.soak_limits.get(bucket.feed.id),
            fed_kg=bucket.fed_kg,
        )


def soak_starts(planning: Planning) -> Iterator[SoakStartStep]:
    """One for each soaked feed that the next round gives."""
    snapshot = planning.snapshot
    for feed, due_kg in needed(snapshot, snapshot.portions_next):
        limit = snapshot.soak_limits.get(feed.id)
        yield SoakStartStep(
            *planning.head(Kind.SOAK, Subject(feed_id=feed.id), feed.name, BENCH, START),
            feed=feed,
            due_kg=due_kg,
            water_kg=water_kg(due_kg, limit.water_per_kg) if limit else None,
            limit=limit,
            for_slot=snapshot.turn.after().slot,
            told=_told(feed, snapshot.portions_next),
        )


def _told(feed: Feed, portions: Mapping[UUID, tuple[Portion, ...]]) -> Told | None:
    """The measure that a feed is told in, if it is told in one and the same for all."""
    found = {portion.told for plan in portions.values() for portion in plan if portion.feed.id == feed.id}
    return found.pop() if len(found) == 1 else None
