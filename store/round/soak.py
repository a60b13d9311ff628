"""Soak steps at the bench: is what soaked fit to feed, and what must be put to soak for the next round."""

from collections.abc import Iterator, Mapping
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts.feed import Feed, Portion, Told
from store.book.figures import FedFigure
from store.book.words import Kind, State
from store.round.planning import BENCH, Planning
from store.round.steps import SoakCheckStep, SoakStartStep


def soak_checks(planning: Planning) -> Iterator[SoakCheckStep]:
    """One for each soaked feed that this round gives."""
    snapshot = planning.snapshot
    for feed, due_kg in _needed(planning, snapshot.portions):
        head = planning.head(Kind.SOAK, Subject(feed_id=feed.id), feed.name, BENCH, "check")
        yield SoakCheckStep(
            *head,
            feed=feed,
            due_kg=due_kg,
            batch=snapshot.batches.get(feed.id),
            limit=snapshot.soak_limits.get(feed.id),
            fed_kg=_fed_kg(planning, feed),
        )


def soak_starts(planning: Planning) -> Iterator[SoakStartStep]:
    """One for each soaked feed that the next round gives."""
    snapshot = planning.snapshot
    for feed, due_kg in _needed(planning, snapshot.portions_next):
        limit = snapshot.soak_limits.get(feed.id)
        yield SoakStartStep(
            *planning.head(Kind.SOAK, Subject(feed_id=feed.id), feed.name, BENCH, "start"),
            feed=feed,
            due_kg=due_kg,
            water_kg=due_kg * limit.water_per_kg if limit else None,
            limit=limit,
            for_slot=snapshot.turn.after().slot,
            told=_told(feed, snapshot.portions_next),
        )


def _fed_kg(planning: Planning, feed: Feed) -> float:
    """What this round has fed of it so far, as the entries that count have it."""
    done = (entry for entry in planning.counts.values() if entry.state is State.DONE)
    return sum(fed.given_kg or 0.0 for entry in done for fed in entry.of(FedFigure) if fed.feed_id == feed.id)


def _told(feed: Feed, portions: Mapping[UUID, tuple[Portion, ...]]) -> Told | None:
    """The measure that a feed is told in, if it is told in one and the same for all."""
    found = {portion.told for plan in portions.values() for portion in plan if portion.feed.id == feed.id}
    return found.pop() if len(found) == 1 else None


def _needed(planning: Planning, portions: Mapping[UUID, tuple[Portion, ...]]) -> Iterator[tuple[Feed, float]]:
    """Each soaked feed of some plans, and its dry weight over all heads. [kg]"""
    sums: dict[UUID, float] = {}
    for subject_id, plan in portions.items():
        for portion in plan:
            if portion.feed.soaked:
                heads = _heads(planning, subject_id)
                sums[portion.feed.id] = sums.get(portion.feed.id, 0.0) + portion.due_kg * heads
    for feed in sorted((planning.snapshot.feeds[id_] for id_ in sums), key=lambda feed: feed.name):
        if sums[feed.id] > 0:
            yield feed, sums[feed.id]


def _heads(planning: Planning, subject_id: UUID) -> int:
    """A kept animal counts once, a pen as many as stand in it."""
    if any(animal.id == subject_id for animal in planning.snapshot.animals):
        return 1
    return len(planning.snapshot.heads(subject_id))
