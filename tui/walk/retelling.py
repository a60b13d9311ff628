"""A measure weighed anew: what every plan that is told in it comes to. A proposal; plans are kept in weight."""

from collections.abc import Iterator

from store.book.facts.feed import Feed, Told
from store.book.reading.needs import read_needs
from store.book.reading.stock import names_at, read_settings
from store.feedroom.scoop import Held, Retold, retold
from store.round.saying import exact
from tui.walker import Walker
from tui.words import measured


def retold_words(walker: Walker, feed: Feed, told: Told, held: Held) -> Iterator[str]:
    """The change, then a line for each plan."""
    desk, now = walker.book.desk, walker.book.clock.now()
    names = names_at(desk, now)
    units = walker.farm.units
    yield f"{exact(held.now_kg, units)}, before {exact(held.before_kg, units)}: {held.change_percent:+.1f} %"
    for line in retold(read_needs(desk, now), feed.id, told.id, held, read_settings(desk, now).change_step_kg):
        yield f"{names.get(line.subject.id, '')} {line.slot}: {_comes_to(walker, line, told)}"


def _comes_to(walker: Walker, line: Retold, told: Told) -> str:
    """`1.35 kg, was 2 scoops, now 1 1/2 scoops`."""
    due = exact(line.due_kg, walker.farm.units)
    now = "no quarter is near enough" if line.proposed is None else f"now {measured(line.proposed, told)}"
    return f"{due}, was {line.was:.2f} {told.plural}, {now}"
