"""When something happened, as far as anybody knows."""

from datetime import datetime

from msgspec import Struct


class Span(Struct, frozen=True):
    """What happened at some moment between two, both among them. What was seen has one moment for both."""

    earliest: datetime
    latest: datetime


def span(at: datetime, since: datetime | None = None) -> Span:
    """Of what is written as having happened at a moment, or between another and this one."""
    return Span(since or at, at)
