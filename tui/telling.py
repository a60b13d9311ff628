"""An entry in words: when, who, whose step, and its figures."""

from store.book.snapshot import Written
from store.book.words import State
from tui.walker import Walker
from tui.words import clock, weight


def entry_words(walker: Walker, entry: Written) -> str:
    """`06:42 Ann   Fennel: dairy nuts 2.4 kg + lucerne pellets 0.90 kg dry`."""
    when = clock(entry.happened_at, walker.farm.zone)
    return f"{when} {who(walker, entry)}   {name(walker, entry)}: {figure(walker, entry)}"


def who(walker: Walker, entry: Written) -> str:
    """The name of who wrote it."""
    return walker.name_of(entry.person_id)


def name(walker: Walker, entry: Written) -> str:
    """Whose step it is."""
    step = next((step for step in walker.steps if step.step_id == entry.step_id), None)
    return step.name if step else f"{entry.kind.value}, no longer planned"


def figure(walker: Walker, entry: Written) -> str:
    """What an entry says, in a few words."""
    if entry.state is State.OPEN:
        return "open again"
    if entry.state is State.SKIPPED:
        return f"skipped, {entry.reason}"
    if entry.milked and entry.milked.milk_kg is not None and entry.milked.fate:
        return f"milk {weight(entry.milked.milk_kg, walker.farm.units)} to {entry.milked.fate.value}"
    return _given(walker, entry) or "done"


def _given(walker: Walker, entry: Written) -> str:
    feeds = walker.snapshot.feeds
    return " + ".join(
        f"{feeds[fed.feed_id].name} {weight(fed.given_kg, walker.farm.units)}"
        f"{' dry' if feeds[fed.feed_id].soaked else ''}"
        for fed in entry.fed
        if fed.given_kg is not None
    )
