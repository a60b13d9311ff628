"""Soaked feed: how long it stands, when it has to be put to soak, what stands in for it, how too little is shared.

Moments are absolute, so that a night in which the clocks change has the hours that it has. Weights are dry. [h, kg]
"""

from datetime import datetime, timedelta
from enum import StrEnum, auto

from msgspec import Struct

from store.husbandry.bounds import at_least_zero
from store.husbandry.measures import SAME_KG
from store.husbandry.why import ARITHMETIC, Source, Sure, equation

SHARED = Source("what is short is shared out in proportion", Sure.PRACTICE)
IN_ITS_PLACE = Source("what stands in for a feed by the farm's own rule, hay for the rest", Sure.PRACTICE)


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


@equation("part that is there", "what was put to soak / what all of the round are due, at most 1", "", SHARED)
def part_there(there_kg: float, due_kg: float) -> float:
    """The part of what is due that is there, which each gets of what it was due: 1 with enough, down to 0. [kg]

    Common practice. Raises ValueError for a weight below zero.
    """
    at_least_zero(there_kg=there_kg, due_kg=due_kg)
    return there_kg / due_kg if due_kg - there_kg > SAME_KG else 1.0


@equation("what is there", "what is due x the part that is there", "kg", SHARED)
def share_kg(due_kg: float, part: float) -> float:
    """What one gets of what soaked. [kg dry] part: as `part_there`. Raises ValueError below zero."""
    at_least_zero(due_kg=due_kg, part=part)
    return due_kg * part


@equation("water", "the dry weight x water for a kilogram", "kg", ARITHMETIC)
def water_kg(dry_kg: float, water_per_kg: float) -> float:
    """The water that a dry feed is put to soak in. [kg] Raises ValueError below zero."""
    at_least_zero(dry_kg=dry_kg, water_per_kg=water_per_kg)
    return dry_kg * water_per_kg


@equation("in its place", "what is thrown out x so much for a kilogram of it", "kg", IN_ITS_PLACE)
def instead_kg(short_kg: float, ratio: float) -> float:
    """So much of a substitute for so much feed. [kg] Raises ValueError for weights below zero, or a ratio not above."""
    at_least_zero(short_kg=short_kg)
    if not ratio > 0:
        raise ValueError(f"ratio is {ratio}; it must be above 0")
    return short_kg * ratio


@equation("in its place, at most", "the smaller of it and the most for a head x heads", "kg", IN_ITS_PLACE)
def at_most_kg(wanted_kg: float, most_kg: float, heads: float) -> float:
    """No more of a substitute than the farm's limit for a head. [kg] Raises ValueError below zero."""
    at_least_zero(wanted_kg=wanted_kg, most_kg=most_kg, heads=heads)
    return min(wanted_kg, most_kg * heads)


@equation("left for hay", "what is thrown out - what stands in for it / so much for a kilogram", "kg", IN_ITS_PLACE)
def uncovered_kg(short_kg: float, kg: float, ratio: float) -> float:
    """What of a feed its substitute does not cover. [kg] Raises ValueError below zero."""
    at_least_zero(short_kg=short_kg, kg=kg)
    return max(short_kg - kg / ratio, 0.0)


def replaced(short_kg: float, ratio: float, most_kg: float | None, heads: int) -> Replaced:
    """So much of a substitute for so much feed: ratio kg for a kg, at most most_kg a head; None: no such limit. [kg]

    What the limit leaves uncovered is made up by hay, a kilogram for a kilogram. Common practice. Raises ValueError for
    weights or heads below zero, or a ratio that is not above zero.
    """
    at_least_zero(short_kg=short_kg, most_kg=most_kg or 0.0, heads=heads)
    wanted_kg = instead_kg(short_kg, ratio)
    kg = wanted_kg if most_kg is None else at_most_kg(wanted_kg, most_kg, heads)
    return Replaced(kg, uncovered_kg(short_kg, kg, ratio) if kg < wanted_kg else 0.0)


def _in_order(least_h: float, most_h: float) -> None:
    at_least_zero(least_h=least_h, most_h=most_h)
    if most_h < least_h:
        raise ValueError(f"most_h is {most_h}; it must be least_h, {least_h}, or more")
