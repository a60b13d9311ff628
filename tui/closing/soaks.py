"""What the closing says of the soak for the next round: what is still to be put in, and when; what will be late."""

from collections.abc import Iterator

from store.book.words import State
from store.round.saying import weight
from store.round.starting import StartDue, begun_at, starts_due
from store.round.steps import SoakStartStep
from tui.walk.soak_words import late_words, window_words
from tui.walker import Walker
from tui.words import clock


def soak_lines(walker: Walker) -> Iterator[str]:
    """A line for each feed that is still to be put to soak, and for each that will not be ready in time."""
    if not walker.live:
        return
    for due in starts_due(walker.snapshot, walker.book.clock.now()):
        yield f"{_what(walker, due)}, for {window_words(due, walker.zone)}{_ready(walker, due, 'begun now ready')}"
    for step in walker.steps:
        if isinstance(step, SoakStartStep) and step.entry and step.state is State.DONE:
            begun = begun_at(step, walker.next_begins(), step.entry.happened_at)
            if begun.late:
                yield f"{step.name}{_ready(walker, begun, 'ready')}"


def _what(walker: Walker, due: StartDue) -> str:
    """`beet pulp 3.5 kg dry + 7.0 kg water`."""
    units = walker.farm.units
    water = f" + {weight(due.water_kg, units)} water" if due.water_kg is not None else ""
    return f"{due.feed.name} {weight(due.dry_kg, units)} dry{water}"


def _ready(walker: Walker, due: StartDue, words: str) -> str:
    """Only where it is late."""
    return f"; {words} {clock(due.ready_at, walker.zone)}{late_words(due)}" if due.late and due.ready_at else ""
