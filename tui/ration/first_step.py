"""Forage only while she holds condition: the rule in words, and the first step where she has slipped."""

from collections.abc import Iterator

from store.ration.forage_only import has_slipped
from store.ration.parts import Head, Part, RationFeed
from store.round.saying import weight
from tui.ration.said import line_of
from tui.ration.seen import Seen
from tui.ration.trial import Cell

EATS_ENOUGH_PART = 0.9
"""While she eats less than this of what she can, more forage comes first. Common practice."""
FORAGE_STEP_KG = 1.0
"""The first step of forage without a step of its own. [kg a day] Common practice."""
FIRST_STEP_KG = 0.25
"""The first step of a feed without a step of its own. [kg a day] Common practice: a small handful, then look again."""


def forage_only_words(seen: Seen, head: Head) -> Iterator[str]:
    """The rule, how she stands to it, and what to do next."""
    if not head.forage_only:
        return
    goal = f" {head.condition_goal.amount:g}" if head.condition_goal else ""
    rule = f"FORAGE ONLY  {head.animal.name}: no grain while she holds condition{goal}."
    if head.condition is None:
        yield f"{rule} She was never scored: M scores her."
    elif not has_slipped(head):
        yield f"{rule} She holds it: {head.condition.amount:g}, {head.condition.came}. M scores her again."
    else:
        yield f"{rule} She slipped to {head.condition.amount:g}, {head.condition.came}. {_proposal(seen)}"


def _proposal(seen: Seen) -> str:
    feed = first_feed(seen)
    if feed is None:
        return "No concentrate on hand may be given to her: more or better forage first."
    words = f"First step: {weight(first_kg(feed), seen.farm.units)} {feed.feed.name} a day; M tries it."
    return f"She can eat more: forage first. {words}" if feed.forage else words


def can_eat_more(seen: Seen) -> bool:
    """Whether what she gets now leaves her appetite unfilled; where that is not known, no."""
    most = line_of(seen.before, Part.DRY_MATTER)
    can = most.need.most if most else None
    return can is not None and seen.before.eaten_kg.amount < EATS_ENOUGH_PART * can.amount


def first_feed(seen: Seen) -> RationFeed | None:
    """Of what she may get that of which there is most: forage while she can eat more, hay before other forage."""
    feeds = [feed for feed in seen.case.feeds if not (feed.free or feed.barred)]
    forage = [feed for feed in feeds if feed.forage] if can_eat_more(seen) else []
    offered = forage or [feed for feed in feeds if not feed.forage]
    return max(
        offered, key=lambda feed: (feed.feed.baled, feed.there_kg.amount if feed.there_kg else 0.0), default=None
    )


def first_kg(feed: RationFeed) -> float:
    """How much of it more a day. [kg]"""
    usual_kg = FORAGE_STEP_KG if feed.forage else FIRST_STEP_KG
    return feed.limits.step_kg.amount if feed.limits.step_kg else usual_kg


def first_step(seen: Seen, feed: RationFeed) -> dict[Cell, float]:
    """The first step as amounts: more of it in the last meal of the day. [kg]"""
    cell = (seen.case.slots[-1], feed.feed.id)
    return {cell: seen.case.now.get(cell, 0.0) + first_kg(feed)}
