"""Count steps: heads and a look open each pen."""

from collections.abc import Iterator

from store.book.drafts import Subject
from store.book.facts import Animal, Pen
from store.book.words import Apart, Kind
from store.round.planning import Planning
from store.round.steps import CountStep


def pen_count(planning: Planning, pen: Pen) -> Iterator[CountStep]:
    """The count of a pen in which anybody is expected."""
    heads = tuple(animal for animal in planning.snapshot.animals if _where(planning, animal) == pen.id)
    if heads:
        yield CountStep(*planning.head(Kind.COUNT, Subject(pen_id=pen.id), pen.name, pen.name), pen=pen, heads=heads)


def _where(planning: Planning, animal: Animal) -> object:
    """Her own pen; for a calf that was let in, or got out, before this round: its cow's."""
    snapshot = planning.snapshot
    now = {entry.happened_at for entry in snapshot.entries if entry.kind is Kind.APART}
    for share in snapshot.shares:
        last = next((each for each in share.partings if each.at not in now), None)
        if share.calf_id == animal.id and last and last.state is not Apart.SHUT_AWAY:
            return next((cow.pen_id for cow in snapshot.animals if cow.id == share.cow_id), animal.pen_id)
    return animal.pen_id
