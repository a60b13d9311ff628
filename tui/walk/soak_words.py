"""When a feed has to be put to soak, in words: for its card, and for the closing."""

from store.round.starting import StartDue
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
