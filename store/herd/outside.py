"""Who stands outside, what hay they get in either round of a day, and how much more of it they could eat."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Subject
from store.book.facts.farm import Animal, Pen
from store.book.facts.feed import Portion
from store.book.register import Register
from store.book.snapshot import Snapshot
from store.book.words import Species, Stage
from store.herd.course import Course, course_of
from store.husbandry.needs.appetite import MIDDLE_TDN, dry_by_rule_kg, growing_by_rule_kg, milking_by_rule_kg

DRY_PERCENT = 88.0
"""Of a feed whose dry matter nobody knows: hay and nuts lie near it. Common practice. [%]"""
MILKING, GROWING = (Stage.IN_MILK, Stage.SUCKLER), (Stage.HEIFER, Stage.STEER, Stage.CALF)


class Hay(Struct, frozen=True):
    """One baled feed that each head of a pen, or one animal in it, gets in a slot."""

    subject: Subject
    name: str
    heads: int
    slot: str
    portion: Portion
    course: Course


class OutsidePen(Struct, frozen=True):
    """A pen with cattle that get hay. spare_percent: so much more hay they could eat; None: not known."""

    pen: Pen
    heads: tuple[Animal, ...]
    hay: tuple[Hay, ...]
    spare_percent: float | None
    free: tuple[str, ...]  # hay that stands free in it

    @property
    def by_the_rule(self) -> bool:
        """Whether the rule of cold is made for them: no cow in milk stands in it, and not calves alone."""
        return by_the_rule(self.heads)


def by_the_rule(heads: Iterable[Animal]) -> bool:
    """Whether the rule of cold is made for those who stand together."""
    stages = {animal.stage for animal in heads}
    return Stage.IN_MILK not in stages and stages != {Stage.CALF}


def outside_pens(register: Register, rounds: Sequence[Snapshot]) -> Iterator[OutsidePen]:
    """The pens in which cattle get hay, in walking order. rounds: one for each slot of a day."""
    for pen in rounds[0].pens:
        heads = rounds[0].heads(pen.id)
        hay = tuple(each for snapshot in rounds for each in _hay(snapshot, pen, heads))
        free = tuple(_free(register, rounds[0], pen))
        if any(animal.species is Species.CATTLE for animal in heads) and (hay or free):
            spare = None if free else _spare_percent(register, rounds, pen, heads, hay)
            yield OutsidePen(pen, heads, hay, spare, free)


def _free(register: Register, snapshot: Snapshot, pen: Pen) -> Iterator[str]:
    for row in register.all("free_feed"):
        feed = snapshot.feeds.get(row["feed_id"])
        if feed and feed.baled and row["offered"] and row["pen_id"] == pen.id:
            yield feed.name


def _hay(snapshot: Snapshot, pen: Pen, heads: tuple[Animal, ...]) -> Iterator[Hay]:
    at = snapshot.turn.begins(snapshot.farm.zone)
    subjects = (
        (Subject(pen_id=pen.id), pen.name, len(heads)),
        *((Subject(animal_id=animal.id), animal.name, 1) for animal in heads),
    )
    for subject, name, count in subjects:
        for portion in snapshot.portions.get(subject.id, ()):
            if portion.feed.baled and count and portion.due_kg > 0:
                course = course_of(portion.rows, max(at, portion.since or at))
                yield Hay(subject, name, count, snapshot.turn.slot, portion, course)


def _spare_percent(
    register: Register, rounds: Sequence[Snapshot], pen: Pen, heads: tuple[Animal, ...], hay: Sequence[Hay]
) -> float | None:
    """So much more hay than now until they are full: appetite by weight, less all that they get. None: not weighed."""
    weights = [(register.get("body", animal.id) or {}).get("weight_kg") for animal in heads]
    hay_kg = sum(each.course.lasting_kg * each.heads * _dry(register, each.portion.feed.id) for each in hay)
    if not all(weights) or not hay_kg:
        return None
    tdn = (register.get("composition", hay[0].portion.feed.id) or {}).get("tdn_percent")
    tdn = MIDDLE_TDN if tdn is None else tdn
    most_kg = sum(_eats_kg(animal.stage, kg, tdn) for animal, kg in zip(heads, weights, strict=True) if kg)
    other_kg = sum(_other_kg(register, snapshot.portions, pen, heads) for snapshot in rounds)
    return max(most_kg - other_kg - hay_kg, 0.0) / hay_kg * 100


def _eats_kg(stage: Stage, weight_kg: float, tdn_percent: float) -> float:
    """The most dry matter of a day, by the rule of thumb for beef cattle."""
    if stage in GROWING:
        return growing_by_rule_kg(weight_kg)
    return (milking_by_rule_kg if stage in MILKING else dry_by_rule_kg)(weight_kg, tdn_percent)


def _other_kg(
    register: Register, portions: Mapping[UUID, tuple[Portion, ...]], pen: Pen, heads: tuple[Animal, ...]
) -> float:
    """Dry matter of what they get beside hay in one round. [kg]"""
    fed = ((pen.id, len(heads)), *((animal.id, 1) for animal in heads))
    return sum(
        portion.due_kg * count * _dry(register, portion.feed.id)
        for id_, count in fed
        for portion in portions.get(id_, ())
        if not portion.feed.baled
    )


def _dry(register: Register, feed_id: UUID) -> float:
    """The part of a feed that is dry matter."""
    known = (register.get("composition", feed_id) or {}).get("dm_percent")
    return (DRY_PERCENT if known is None else float(known)) / 100
