"""Count steps: heads and a look open each pen."""

from collections.abc import Iterator

from store.book.drafts import Subject
from store.book.facts import Pen
from store.book.words import Kind
from store.round.planning import Planning
from store.round.steps import CountStep


def pen_count(planning: Planning, pen: Pen) -> Iterator[CountStep]:
    """The count of a pen that anybody stands in."""
    heads = planning.snapshot.heads(pen.id)
    if heads:
        head = planning.head(Kind.COUNT, Subject(pen_id=pen.id), pen.name, pen.name)
        yield CountStep(*head, pen=pen, heads=heads)
