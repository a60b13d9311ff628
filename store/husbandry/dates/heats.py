"""Bulling: when she is served after it, and when to look for the next."""

from datetime import date, datetime, timedelta

from msgspec import Struct

NEXT_DAYS = (17, 24)
"""From one heat to the next. [days] Source: biologyinsights.com/how-long-are-cows-in-heat-and-what-are-the-signs."""
NOON_H = 12


class Serve(Struct, frozen=True):
    """When to serve her: that day, in its evening or its morning."""

    on: date
    evening: bool


def serve_after(seen: datetime) -> Serve:
    """When she is served, seen bulling at a time on the farm's clock.

    Source: extension.psu.edu, Timing of Insemination: first seen standing in the morning, served in the afternoon; in
    the afternoon, the next morning.
    """
    if seen.hour < NOON_H:
        return Serve(seen.date(), evening=True)
    return Serve(seen.date() + timedelta(days=1), evening=False)


def next_heat(seen_on: date) -> tuple[date, date]:
    """Between which days she bulls again, after a heat or a service that did not hold."""
    least, most = NEXT_DAYS
    return seen_on + timedelta(days=least), seen_on + timedelta(days=most)
