"""Feed steps: one for each animal with a plan of its own, one for each pen fed as one."""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.facts.farm import Animal, Pen
from store.book.facts.feed import Portion
from store.book.words import Kind
from store.husbandry.measures import for_heads, in_measures_kg, in_quarters
from store.round.planning import Planning
from store.round.soaked import is_short, soaked_parts, with_substitutes
from store.round.steps import DueFeed, FeedStep, SoakedPart


def pen_feed(planning: Planning, pen: Pen) -> Iterator[FeedStep]:
    """The step of a pen fed as one, while anybody stands in it."""
    heads = planning.snapshot.heads(pen.id)
    if heads and pen.id in planning.snapshot.portions:
        yield _step(planning, Subject(pen_id=pen.id), pen.name, pen.name, heads)


def animal_feed(planning: Planning, animal: Animal, place: str) -> Iterator[FeedStep]:
    """The step of an animal with a plan of its own."""
    if animal.id in planning.snapshot.portions:
        yield _step(planning, Subject(animal_id=animal.id), animal.name, place, (animal,))


ROUNDING = 1e-9
"""A due weight this close below a quarter is that quarter: sums of kilograms are not exact."""


def due_feed(portion: Portion, heads: int) -> DueFeed:
    """A portion for so many heads, told in the nearest quarter of its measure.

    By weight instead where nobody weighed the measure, or where a quarter is more than is due.
    """
    due_kg = for_heads(portion.due_kg, heads)
    holds_kg = portion.told.holds_kg if portion.told else None
    measures = None
    if holds_kg is not None and 4 * due_kg >= holds_kg * (1 - ROUNDING):
        measures = in_quarters(due_kg, holds_kg)
    as_shown_kg = due_kg if measures is None or holds_kg is None else in_measures_kg(measures, holds_kg)
    plan = (portion.since, portion.position, portion.rows)
    return DueFeed(portion.feed, portion.told, due_kg, measures, as_shown_kg, *plan)


def _step(planning: Planning, subject: Subject, name: str, place: str, heads: tuple[Animal, ...]) -> FeedStep:
    snapshot, count = planning.snapshot, len(heads)
    portions = snapshot.portions[subject.id]
    kind = Kind.HAY if any(portion.feed.baled for portion in portions) else Kind.FEED
    head = planning.head(kind, subject, name, place)
    parts = soaked_parts(snapshot, planning.buckets, portions, count, head[-1])
    due = (due_feed(portion, count) for portion in with_substitutes(snapshot, portions, parts, count))
    return FeedStep(
        *head,
        animal=heads[0] if subject.animal_id else None,
        heads=heads,
        due=tuple(_what_is_there(each, parts) for each in due),
        before=snapshot.given_before.get(subject.id),
        soaked=parts,
    )


def _what_is_there(due: DueFeed, parts: Sequence[SoakedPart]) -> DueFeed:
    """Where less of it soaked than is due, what there is: told by weight, so that all of it together is the batch."""
    short = next((part for part in parts if part.feed.id == due.feed.id and is_short(part)), None)
    return replace(due, measures=None, as_shown_kg=short.there_kg) if short else due
