"""Soaked feed: how long it stands, when it has to be put to soak, what stands in for it, how too little is shared.

Moments are absolute, so that a night in which the clocks change has the hours that it has. Weights are dry. [h, kg]
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum, auto

from store.husbandry.bounds import at_least_zero


class Ripeness(StrEnum):
    """Whether a batch may be fed, as far as the clock says it."""

    TOO_EARLY = "too early"
    READY = auto()
    PAST = "past its limit"


@dataclass(frozen=True, slots=True)
class Window:
    """From when to when something has to be begun; both ends are in it."""

    earliest: datetime
    latest: datetime


@dataclass(frozen=True, slots=True)
class Replaced:
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


def shared_out(there_kg: float, due_kg: Sequence[float]) -> tuple[float, ...]:
    """What each gets where less is there than is due: the same part of what it was due; with enough, all of it. [kg]

    Common practice. Raises ValueError for a weight below zero.
    """
    at_least_zero(there_kg=there_kg, **{f"due_kg[{at}]": kg for at, kg in enumerate(due_kg)})
    all_kg = sum(due_kg)
    part = there_kg / all_kg if all_kg > there_kg else 1.0
    return tuple(kg * part for kg in due_kg)


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
