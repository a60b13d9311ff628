"""Something else that was given: a few apples, a handful more. It counts in her day beside what was planned."""

from collections.abc import Collection

from store.book.drafts import Draft
from store.book.facts.feed import Feed
from store.book.figures import FedFigure
from store.book.words import Kind
from store.round.amount import Unreadable, amount_and_words, feed_amount
from store.round.confirm import Hand, unplanned
from store.round.steps import FeedStep

HOW = "Type a weight and a feed, as 2 kg apples."


def extra_fed(hand: Hand, step: FeedStep, feeds: Collection[Feed], typed: str) -> Draft:
    """A weight of a feed in use, by letters of its name, to whom a step feeds.

    Raises Unreadable, also where the feed is never for one of them.
    """
    amount, name = amount_and_words(typed)
    feed = _named(name, feeds)
    barred = next((animal for animal in step.heads if animal.species in feed.not_for), None)
    if barred:
        raise Unreadable(f"{feed.name} is never for {barred.species.value}, and {barred.name} would get it.")
    given = feed_amount(amount, feed, None, hand.units)
    return unplanned(hand, Kind.FEED, step.subject, FedFigure(feed.id, None, None, given.kg, typed.strip()))


def _named(name: str, feeds: Collection[Feed]) -> Feed:
    """The feed whose name holds every word; the shortest such name. Raises Unreadable."""
    words = name.lower().split()
    found = [feed for feed in feeds if feed.in_use and words and all(word in feed.name.lower() for word in words)]
    if not found:
        listed = ", ".join(sorted(feed.name for feed in feeds if feed.in_use))
        raise Unreadable(f"«{name}» is no feed here; there are {listed or 'none'}. {HOW} F sets up another feed.")
    return min(found, key=lambda feed: len(feed.name))
