"""Soaked feed: how long it stands, when it has to be put to soak, what stands in for it, how too little is shared.

Moments are absolute, so that a night in which the clocks change has the hours that it has. Weights are dry. [h, kg]
"""

from datetime import datetime, timedelta
from enum import StrEnum, auto

from msgspec import Struct

from store.husbandry.bounds import at_least_zero
from store.husbandry.measures import SAME_KG


class Ripeness(StrEnum):
    """Whether a batch may be fed, as far as the clock says it."""

    TOO_EARLY = "too early"
    READY = auto()
    PAST = "past its limit"


class Window(Struct, frozen=True):
    """From when to when something has to be begun; both ends are in it."""

    earliest: datetime
    latest: datetime


class Replaced(Struct, frozen=True):
    """What stands in for a feed. rest_kg: of the feed itself, what that does not cover. [kg]"""

    kg: float
    rest_kg: float


def hours_soaked(started_at: datetime, now: datetime) -> float:
    """How long it has stood; 0 where it is put to soak only later. [h]"""
    return max((now - started_at) / timedelta(hours=1), 0.0)


def ripeness(started_at: datetime, now: datetime, least_h: float, most_h: float) -> Ripeness:
    """Soft from least_h on; past its limit after most_h; at either hour itself it may be fed. [h]

    Raises ValueError for hours below zero, or a longest time below the least.
    """
    _in_order(least_h, most_h)
    stood_h = hours_soaked(started_at, now)
    if stood_h < least_h:
        return Ripeness.TOO_EARLY
    return Ripeness.READY if stood_h <= most_h else Ripeness.PAST


def start_window(feed_at: datetime, least_h: float, most_h: float) -> Window:
    """When it has to be put to soak to be ready, and not past its limit, at a feeding time. [h]

    Raises ValueError for hours below zero, or a longest time below the least.
    """
    _in_order(least_h, most_h)
    return Window(feed_at - timedelta(hours=most_h), feed_at - timedelta(hours=least_h))


def part_there(there_kg: float, due_kg: float) -> float:
    """The part of what is due that is there, which each gets of what it was due: 1 with enough, down to 0. [kg]

    Common practice. Raises ValueError for a weight below zero.
    """
    at_least_zero(there_kg=there_kg, due_kg=due_kg)
    return there_kg / due_kg if due_kg - there_kg > SAME_KG else 1.0


def replaced(short_kg: float, ratio: float, most_kg: float | None, heads: int) -> Replaced:
    """So much of a substitute for so much feed: ratio kg for a kg, at most most_kg a head; None: no such limit. [kg]

    What the limit leaves uncovered is made up by hay, a kilogram for a kilogram. Common practice. Raises ValueError for
    weights or heads below zero, or a ratio that is not above zero.
    """
    at_least_zero(short_kg=short_kg, most_kg=most_kg or 0.0, heads=heads)
    if not ratio > 0:
        raise ValueError(f"ratio is {ratio}; it must be above 0")
    wanted_kg = short_kg * ratio
    kg = wanted_kg if most_kg is None else min(wanted_kg, most_kg * heads)
    return Replaced(kg, short_kg - kg / ratio if kg < wanted_kg else 0.0)


def _in_order(least_h: float, most_h: float) -> None:
    at_least_zero(least_h=least_h, most_h=most_h)
    if most_h < least_h:
        raise ValueError(f"most_h is {most_h}; it must be least_h, {least_h}, or more")
