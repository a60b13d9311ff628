"""Count steps: heads and a look open each pen."""

from collections.abc import Iterator
from datetime import datetime
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts.farm import Animal, Pen
from store.book.words import Apart, Kind
from store.round.planning import Planning
from store.round.steps import CountStep


def pen_count(planning: Planning, pen: Pen) -> Iterator[CountStep]:
    """The count of a pen in which anybody was expected when the round began; who was let out of it since is not due."""
    animals = planning.snapshot.animals
    if any(_where(planning, animal, _this_round(planning)) == pen.id for animal in animals):
        head = planning.head(Kind.COUNT, Subject(pen_id=pen.id), pen.name, pen.name)
        since = _this_round(planning) if head[-1] else frozenset()
        heads = tuple(animal for animal in animals if _where(planning, animal, since) == pen.id)
        yield CountStep(*head, pen=pen, heads=heads)


def _this_round(planning: Planning) -> frozenset[datetime]:
    """When calves were let in, or got out, in this very round."""
    return frozenset(entry.happened_at for entry in planning.snapshot.entries if entry.kind is Kind.APART)


def _where(planning: Planning, animal: Animal, leave_out: frozenset[datetime]) -> UUID | None:
    """Her own pen; for a calf that was let in, or got out: its cow's."""
    snapshot = planning.snapshot
    for share in snapshot.shares:
        last = next((each for each in share.partings if each.at not in leave_out), None)
        if share.calf_id == animal.id and last and last.state in (Apart.LET_IN, Apart.GOT_OUT, Apart.TOGETHER):
            cow_id = last.cow_id or share.cow_id
            return next((cow.pen_id for cow in snapshot.animals if cow.id == cow_id), animal.pen_id)
    return animal.pen_id
