"""What is written in the feed room, as drafts outside of any round: delivered, weighed, lost, and taken back."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Draft, Subject
from store.book.figures import DeliveredFigure, LostFigure, StockedFigure
from store.book.stocks import Delivered, FeedStock, Lost, Stocked
from store.book.words import Kind, State

Found = Delivered | Stocked | Lost
KINDS = {Delivered: Kind.DELIVERY, Stocked: Kind.STOCK, Lost: Kind.LOSS}


class FeedHand(Struct, frozen=True):
    """Who writes in the feed room, and when it happened."""

    person_id: UUID
    now: datetime
    happened_from: datetime | None = None


def delivered(hand: FeedHand, feed_id: UUID, figure: DeliveredFigure, shown: Delivered | None = None) -> Draft:
    """Feed came in. shown: what this corrects."""
    return _draft(hand, Kind.DELIVERY, feed_id, figure, shown)


def weighed(hand: FeedHand, stock: FeedStock, bin_kg: float, typed: str = "", shown: Stocked | None = None) -> Draft:
    """What lies dry in bin and bags was weighed; what soaks at this moment is still there too, and is added. [kg]"""
    return _draft(hand, Kind.STOCK, stock.feed.id, StockedFigure(bin_kg + stock.soaking_kg, typed), shown)


def lost(hand: FeedHand, feed_id: UUID, figure: LostFigure, shown: Lost | None = None) -> Draft:
    """Feed that no animal ate. shown: what this corrects; a batch that was thrown out is mended in its round."""
    return _draft(hand, Kind.LOSS, feed_id, figure, shown)


def taken_back(hand: FeedHand, feed_id: UUID, shown: Found) -> Draft:
    """It did not happen: undone. The entry stays in the book as its history."""
    kind = KINDS[type(shown)]
    return Draft(shown.step_id, kind, Subject(feed_id=feed_id), None, State.OPEN, hand.now, hand.person_id, shown.id)


def _draft(
    hand: FeedHand,
    kind: Kind,
    feed_id: UUID,
    figure: DeliveredFigure | StockedFigure | LostFigure,
    shown: Found | None,
) -> Draft:
    subject, done = Subject(feed_id=feed_id), State.DONE
    if shown:
        return Draft(shown.step_id, kind, subject, None, done, shown.at, hand.person_id, shown.id, figures=(figure,))
    return Draft(None, kind, subject, None, done, hand.now, hand.person_id, None, hand.happened_from, figures=(figure,))
