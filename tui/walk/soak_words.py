"""Soaked feed in words: when it has to be put to soak, what replaces it, how far too little goes."""

from store.book.words import Units
from store.round.saying import bare, weight
from store.round.starting import StartDue
from store.round.steps import Instead, SoakedPart
from tui.words import clock


def late_words(due: StartDue) -> str:
    """`, LATE: 40 min after the round begins`; empty where it is ready in time, or that is not known."""
    if not due.late:
        return ""
    minutes = round(due.late.total_seconds() / 60)
    long = f"{minutes // 60} h {minutes % 60:02d}" if minutes >= 60 else f"{minutes} min"
    return f", LATE: {long} after the round begins"


def window_words(due: StartDue, zone: str) -> str:
    """`the evening round at 17:30: put to soak between 23:30 and 15:30`; without its time, what sets that."""
    slot = due.step.for_slot
    if due.feeds_at is None:
        return f"the {slot} round. When it begins is not set: F, SETTINGS"
    if due.earliest is None or due.latest is None:
        return f"the {slot} round at {clock(due.feeds_at, zone)}. How long it soaks is not set: F, FEEDS"
    span = f"between {clock(due.earliest, zone)} and {clock(due.latest, zone)}"
    return f"the {slot} round at {clock(due.feeds_at, zone)}: put to soak {span}"


def short_words(part: SoakedPart, units: Units) -> str:
    """`1.2 of 1.5 kg: too little was put to soak`."""
    there = weight(part.there_kg, units).split()[0]
    return f"{there} of {weight(part.due_kg, units)}: too little was put to soak"


def thrown_out_words(part: SoakedPart, units: Units) -> str:
    """`instead of 1.5 kg lucerne pellets: 1.2 kg nuts (ratio 0.8, at most 2.0 kg a head)`."""
    due = f"{weight(part.due_kg, units)} {part.feed.name}"
    if part.there_kg > 0:
        return f"{due} are written as given, and the rest was thrown out"
    if part.instead is None:
        return f"{part.feed.name} THROWN OUT, nothing stands in for it: F, {part.feed.name} sets what does"
    return f"THROWN OUT. Instead of {due}: {_instead_words(part.instead, units)}"


def _instead_words(instead: Instead, units: Units) -> str:
    most = "no cap" if instead.most_kg is None else f"cap {weight(instead.most_kg, units)} a head"
    rest = f", and {weight(instead.rest_kg, units)} hay" if instead.rest_kg else ""
    return f"{weight(instead.kg, units)} {instead.feed.name} (ratio {bare(instead.ratio)}, {most}){rest}"
