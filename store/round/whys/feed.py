"""Why a feed step says so much: the plan of a head, the heads, the measure; and what soaked, or stands in for it."""

from collections.abc import Iterator

from msgspec.structs import replace

from store.book.facts.feed import Feed, Told
from store.book.figures import FedFigure
from store.book.words import State
from store.husbandry.measures import SAME_KG, for_heads, in_measures_kg, in_quarters
from store.husbandry.soak import at_most_kg, instead_kg, part_there, share_kg, uncovered_kg
from store.husbandry.why import Value, given, total
from store.round.soaked import is_short
from store.round.steps import DueFeed, FeedStep, Instead, SoakCheckStep, SoakedPart
from store.round.whys.asked import BY_PLAN, YOUR_RULE, Asked


def feed_numbers(asked: Asked, step: FeedStep) -> Iterator[Value]:
    """Each feed: the measures, what they weigh, what is due where that is more or less; then what hay makes up."""
    written = step.entry.of(FedFigure) if step.entry and step.state is State.DONE else ()
    by_feed = {figure.feed_id: figure for figure in written}
    for due in step.due:
        figure = by_feed.get(due.feed.id)
        if figure and figure.given_kg is not None and abs(figure.given_kg - due.as_shown_kg) >= SAME_KG:
            yield given(figure.given_kg, f"{due.feed.name} given", "kg", f"typed as «{figure.typed}»")
        else:
            yield from _planned(asked, step, due, is_given=figure is not None)
    for part in step.soaked:
        if part.instead and part.instead.rest_kg:
            yield _rest(asked, step, part, part.instead)


def _planned(asked: Asked, step: FeedStep, due: DueFeed, *, is_given: bool) -> Iterator[Value]:
    due_kg = due_value(asked, step, due)
    told, holds_kg = due.told, due.told.holds_kg if due.told else None
    if told and holds_kg and due.measures is not None:
        holds = asked.holds(due.feed, told, holds_kg)
        measures = told_in(due.feed, told, due_kg, holds)
        yield measures
        yield in_measures_kg.of(f"{due.feed.name} in them", measures=measures, holds_kg=holds)
    if not is_given or due.measures is None:
        yield due_kg
    short = next((part for part in step.soaked if part.feed.id == due.feed.id and is_short(part)), None)
    if short:
        yield _there(asked, short)


def told_in(feed: Feed, told: Told, kg: Value, holds: Value) -> Value:
    """A weight in the nearest quarter of a measure, under the measure's own name."""
    found = in_quarters.of(f"{told.plural} of {feed.name}", kg=kg, holds_kg=holds)
    return replace(found, unit=told.name if found.amount <= 1 else told.plural)


def due_value(asked: Asked, step: FeedStep, due: DueFeed) -> Value:
    """What all heads of a step are due of a feed. [kg]"""
    name, each = f"{due.feed.name} due", _a_head(asked, step, due)
    if len(step.heads) == 1:
        return replace(each, name=name)
    return for_heads.of(name, a_head_kg=each, heads=asked.heads(step.heads))


def _a_head(asked: Asked, step: FeedStep, due: DueFeed) -> Value:
    """By the plan; with what stands in it for another feed. [kg]"""
    came, name = asked.since(BY_PLAN, due.since), f"{due.feed.name} for one head"
    more = [(part, part.instead) for part in step.soaked if part.instead and part.instead.feed.id == due.feed.id]
    all_kg, heads = due.due_kg, len(step.heads)
    if not more:
        return given(all_kg / heads, name, "kg", came)
    own_kg = (all_kg - sum(instead.kg for _, instead in more)) / heads
    own = [given(own_kg, name, "kg", came)] if own_kg > 0 and due.since else []
    return total(name, "kg", [*own, *(_stand_in(part, instead, heads) for part, instead in more)])


def _stand_in(part: SoakedPart, instead: Instead, heads: int) -> Value:
    """What a head gets in the place of a feed that was thrown out. [kg]"""
    name = f"{instead.feed.name} for {part.feed.name}"
    wanted = instead_kg.of(name, **_thrown_out(part, instead, heads))
    if instead.most_kg is None:
        return wanted
    most = given(instead.most_kg, "the most for a head", "kg", YOUR_RULE)
    one = given(1, "heads", "head", "reckoned for one head")
    return at_most_kg.of(name, wanted_kg=wanted, most_kg=most, heads=one)


def _thrown_out(part: SoakedPart, instead: Instead, heads: int) -> dict[str, Value]:
    short = given(part.due_kg / heads, f"{part.feed.name} thrown out", "kg", BY_PLAN)
    ratio = given(instead.ratio, f"{instead.feed.name} for a kilogram of it", "kg", YOUR_RULE)
    return {"short_kg": short, "ratio": ratio}


def _rest(asked: Asked, step: FeedStep, part: SoakedPart, instead: Instead) -> Value:
    """What is made up by hay, a kilogram for a kilogram. [kg]"""
    heads = len(step.heads)
    stand_in = for_heads.of(
        f"{instead.feed.name} in its place", a_head_kg=_stand_in(part, instead, heads),
        heads=asked.heads(step.heads),
    )  # fmt: skip
    return uncovered_kg.of("to be made up by hay", **_thrown_out(part, instead, 1), kg=stand_in)


def _there(asked: Asked, part: SoakedPart) -> Value:
    """What is there of a feed of which too little soaked. [kg dry]"""
    due = given(part.due_kg, f"{part.feed.name} due", "kg", BY_PLAN)
    checks = (each for each in asked.steps if isinstance(each, SoakCheckStep) and each.feed.id == part.feed.id)
    check = next((each for each in checks if each.batch), None)
    if check is None or check.batch is None:
        return due
    there = given(check.batch.dry_kg, f"{part.feed.name} put to soak, dry", "kg", "written when it was put to soak")
    all_of = given(check.due_kg, f"{part.feed.name} due to all of this round", "kg", BY_PLAN)
    shared = part_there.of(there_kg=there, due_kg=all_of)
    return share_kg.of(f"{part.feed.name} there is", due_kg=due, part=shared)
