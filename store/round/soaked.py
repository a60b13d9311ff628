"""What a feed step gives of what soaks: its part of the bucket, or what stands in for it where that was thrown out."""

from collections.abc import Mapping, Sequence
from uuid import UUID

from msgspec.structs import replace

from store.book.facts.feed import Feed, Portion, Told
from store.book.figures import FedFigure
from store.book.snapshot import Snapshot, Written
from store.book.words import Soak, State
from store.husbandry.soak import replaced, share_kg
from store.round.bucket import Bucket
from store.round.measured import SURE
from store.round.steps import FeedStep, Instead, SoakedPart


def soaked_parts(
    snapshot: Snapshot, buckets: Mapping[UUID, Bucket], portions: Sequence[Portion], heads: int, entry: Written | None
) -> tuple[SoakedPart, ...]:
    """How each soaked feed of some portions stands. entry: what the book holds for their step."""
    fed = {fed.feed_id for fed in entry.of(FedFigure)} if entry and entry.state is State.DONE else set()
    return tuple(
        _part(snapshot, buckets[each.feed.id], each.due_kg * heads, heads, is_fed=each.feed.id in fed)
        for each in portions
        if each.feed.id in buckets
    )


def _part(snapshot: Snapshot, bucket: Bucket, due_kg: float, heads: int, *, is_fed: bool) -> SoakedPart:
    """What is written as fed before it was thrown out stays as it was written."""
    if bucket.found is not Soak.THROWN_OUT or is_fed:
        return SoakedPart(bucket.feed, bucket.found, due_kg, share_kg(due_kg, bucket.part))
    return SoakedPart(bucket.feed, bucket.found, due_kg, 0.0, _instead(snapshot, bucket.feed, due_kg, heads))


def _instead(snapshot: Snapshot, feed: Feed, short_kg: float, heads: int) -> Instead | None:
    rule = snapshot.substitutes.get(feed.id)
    if rule is None or rule.most_kg == 0:
        return None
    found = replaced(short_kg, rule.ratio, rule.most_kg, heads)
    return Instead(snapshot.feeds[rule.by_id], found.kg, found.rest_kg, rule.ratio, rule.most_kg)


def with_substitutes(
    snapshot: Snapshot, portions: Sequence[Portion], parts: Sequence[SoakedPart], heads: int
) -> tuple[Portion, ...]:
    """The portions with what stands in for the feeds that were thrown out: more of a feed of the plan, or one added."""
    stand_in = [part.instead for part in parts if part.instead]
    replaced_ids = {part.feed.id for part in parts if part.instead}
    more_kg: dict[UUID, float] = {}
    for each in stand_in:
        more_kg[each.feed.id] = more_kg.get(each.feed.id, 0.0) + each.kg / heads
    kept = [each for each in portions if each.feed.id not in replaced_ids]
    in_plan = tuple(replace(each, due_kg=each.due_kg + more_kg.pop(each.feed.id, 0.0)) for each in kept)
    return in_plan + tuple(Portion(snapshot.feeds[id_], kg, _told(snapshot, id_)) for id_, kg in more_kg.items())


def _told(snapshot: Snapshot, feed_id: UUID) -> Told | None:
    """The measure in which somebody else of this round is told it."""
    plans = (each for plan in snapshot.portions.values() for each in plan)
    return next((each.told for each in plans if each.feed.id == feed_id and each.told), None)


def is_short(part: SoakedPart) -> bool:
    """Whether too little of it soaked: as soon as the bucket says so, each gets its part, however little it is less."""
    return part.there_kg < part.due_kg


def soak_question(step: FeedStep) -> str:
    """What has to be asked before a step is written: a soaked feed that nobody looked at; empty where there is none."""
    part = next((part for part in step.soaked if part.found is None), None)
    if part is None:
        return ""
    name = part.feed.name
    return f"Look at the soaked {name} first: G {name[:5].strip()} goes there. All the same: {SURE} then Enter."
