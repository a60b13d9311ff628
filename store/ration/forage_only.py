"""Forage only while she holds condition: a rule of the keeper's for an animal, that a mix and the limits keep."""

from collections.abc import Iterator

from store.ration.parts import Broken, Case, Head, RationFeed

SLIPPED_POINTS = 0.25
"""So far below her goal she has slipped: nobody scores finer. Common practice. [points]"""


def has_slipped(head: Head) -> bool:
    """Whether she stands a quarter point or more below the condition that she is to hold."""
    goal, found = head.condition_goal, head.condition
    return goal is not None and found is not None and found.amount <= goal.amount - SLIPPED_POINTS


def kept_to_forage(case: Case) -> tuple[Head, ...]:
    """The heads that are to get no grain now: the rule is theirs, and no score says that they slipped."""
    return tuple(head for head in case.heads if head.forage_only and not has_slipped(head))


def is_mineral(feed: RationFeed) -> bool:
    """Whether nothing in it feeds: neither protein nor energy."""
    parts = [feed.made.get(part) for part in ("cp_percent", "tdn_percent", "nel_mcal")]
    return all(part is None or part.amount == 0 for part in parts) and any(parts)


def against_forage_only(case: Case, feed: RationFeed) -> str:
    """Why a feed is against the rule, in words; empty: it is not."""
    kept = () if feed.forage or is_mineral(feed) else kept_to_forage(case)
    if not kept:
        return ""
    goal = f" {kept[0].condition_goal.amount:g}" if kept[0].condition_goal else ""
    return f"{feed.feed.name}: {kept[0].animal.name} gets forage only while she holds condition{goal}, your rule."


def broken_rule(case: Case, given_ids: frozenset[object]) -> Iterator[Broken]:
    """Each feed that is given against the rule. given_ids: the feeds of the plan that is looked at."""
    for feed in case.feeds:
        said = against_forage_only(case, feed) if feed.feed.id in given_ids else ""
        if said:
            yield Broken(feed.feed.name, said)
