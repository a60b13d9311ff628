"""Forage only while she holds condition: the rule in words, and the first step where she has slipped."""

from collections.abc import Iterator

from store.ration.forage_only import has_slipped
from store.ration.parts import Head, RationFeed
from store.round.saying import weight
from tui.ration.seen import Seen
from tui.ration.trial import Cell

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
    return f"First step: {weight(first_kg(feed), seen.farm.units)} {feed.feed.name} a day; M tries it."


def first_feed(seen: Seen) -> RationFeed | None:
    """Of the feeds that are no forage and that she may get, the one of which there is most."""
    feeds = (feed for feed in seen.case.feeds if not (feed.forage or feed.free or feed.barred))
    return max(feeds, key=lambda feed: feed.there_kg.amount if feed.there_kg else 0.0, default=None)


def first_kg(feed: RationFeed) -> float:
    """How much of it more a day. [kg]"""
    return feed.limits.step_kg.amount if feed.limits.step_kg else FIRST_STEP_KG


def first_step(seen: Seen, feed: RationFeed) -> dict[Cell, float]:
    """The first step as amounts: more of it in the last meal of the day. [kg]"""
    cell = (seen.case.slots[-1], feed.feed.id)
    return {cell: seen.case.now.get(cell, 0.0) + first_kg(feed)}
