"""Why so much is put to soak, in so much water, and from when to when: the plans that take it, the farm's rule."""

from collections.abc import Iterator, Mapping
from datetime import datetime
from uuid import UUID

from store.book.facts.feed import Feed, Portion, SoakLimit
from store.husbandry.measures import for_heads
from store.husbandry.moments import hours_between, later, moment, sooner
from store.husbandry.soak import water_kg
from store.husbandry.why import Value, given, total
from store.round.bucket import takers
from store.round.starting import next_begins
from store.round.steps import SoakCheckStep, SoakStartStep
from store.round.whys.asked import BEGINS, BY_PLAN, YOUR_RULE, Asked
from store.round.whys.feed import told_in

Portions = Mapping[UUID, tuple[Portion, ...]]


def start_numbers(asked: Asked, step: SoakStartStep) -> Iterator[Value]:
    """The dry weight, the measures, the water; from when to when, and when it is ready."""
    dry = dry_value(asked, step.feed, asked.snapshot.portions_next, step.for_slot)
    yield dry
    if step.told and step.told.holds_kg:
        yield told_in(step.feed, step.told, dry, asked.holds(step.feed, step.told, step.told.holds_kg))
    if step.limit:
        yield water_value(step.limit, dry)
        yield from _window(asked, step, step.limit)


def water_value(limit: SoakLimit, dry: Value) -> Value:
    """By the farm's rule. [kg]"""
    rule = given(limit.water_per_kg, "water for a kilogram", "kg", YOUR_RULE)
    return water_kg.of(f"{limit.water.value} water", dry_kg=dry, water_per_kg=rule)


def dry_value(asked: Asked, feed: Feed, portions: Portions, slot: str) -> Value:
    """What all plans of a round take of a soaked feed. [kg dry]"""
    own = {subject: plan for subject, plan in portions.items() if any(each.feed.id == feed.id for each in plan)}
    parts = [_taken(asked, feed, subject, {subject: plan}) for subject, plan in own.items()]
    return total(f"{feed.name} for the {slot}, dry", "kg", parts)


def _taken(asked: Asked, feed: Feed, subject_id: UUID, plan: Portions) -> Value:
    """What one animal, or a pen, takes of it. [kg dry]"""
    portion, count = next(each for each in takers(asked.snapshot, plan) if each[0].feed.id == feed.id)
    whose = asked.snapshot.names.get(subject_id, "somebody")
    each = given(portion.due_kg, f"{whose}, {feed.name}", "kg", asked.since(BY_PLAN, portion.since))
    if count == 1:
        return each
    heads = given(count, "heads", "heads", "counted by the book")
    return for_heads.of(f"{whose}, {feed.name}", a_head_kg=each, heads=heads)


def _window(asked: Asked, step: SoakStartStep, limit: SoakLimit) -> Iterator[Value]:
    """When it is ready, begun now; between when and when it has to be begun."""
    yield ready_value(limit, moment(asked.now, "begun", "now"))
    begins = next_begins(asked.snapshot)
    if begins:
        feeds = moment(begins, f"the {step.for_slot} round begins", BEGINS)
        yield sooner.of("not before", until=feeds, by_h=most_h(limit))
        yield sooner.of("put to soak by", until=feeds, by_h=least_h(limit))


def ready_value(limit: SoakLimit, begun: Value) -> Value:
    """From when on it is soft."""
    return later.of("ready", since=begun, by_h=least_h(limit))


def past_value(limit: SoakLimit, begun: Value) -> Value:
    """Until when it may be fed."""
    return later.of("its limit", since=begun, by_h=most_h(limit))


def least_h(limit: SoakLimit) -> Value:
    """From the farm's rule. [h]"""
    return given(limit.least_h, f"soft after, in {limit.water.value} water", "h", YOUR_RULE)


def most_h(limit: SoakLimit) -> Value:
    """From the farm's rule. [h]"""
    return given(limit.most_h, f"to be fed within, in {limit.water.value} water", "h", YOUR_RULE)


def check_numbers(asked: Asked, step: SoakCheckStep) -> Iterator[Value]:
    """How long it stood, from when to when it may be fed, what is in it, and what this round needs of it."""
    if step.batch:
        begun = started(step.batch.started_at)
        yield hours_between.of("it has soaked", since=begun, until=moment(asked.now, "now", "the clock"))
        if step.limit:
            yield ready_value(step.limit, begun)
            yield past_value(step.limit, begun)
        yield given(step.batch.dry_kg, "in the bucket, dry", "kg", "written when it was put to soak")
        if step.batch.water_kg is not None:
            yield given(step.batch.water_kg, "water in it", "kg", "written when it was put to soak")
    yield dry_value(asked, step.feed, asked.snapshot.portions, asked.snapshot.turn.slot)


def started(at: datetime) -> Value:
    """When it was put to soak."""
    return moment(at, "put to soak", "written when it was put to soak")
